import { fail, notNegative, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Kitchen } from "../../trials/kitchen";
import { type BatchToMake, ingredientsNeeded } from "./ingredients-needed";

/** What is to be made, and what is there. */
export interface ShoppingListOptions {
  readonly kitchen: Kitchen;
  readonly batches: readonly BatchToMake[];
  /** in stock (g), by ingredient id; none unless given */
  readonly stockG?: Readonly<Record<string, number>>;
  /** sold in packs of (g), by ingredient id; by the gram unless given */
  readonly packG?: Readonly<Record<string, number>>;
}

/** One ingredient to buy, or to have. */
export interface ShoppingLine {
  readonly ingredientId: string;
  readonly name: string;
  readonly neededG: number;
  readonly inStockG: number;
  /** whole packs where it is sold so (g); 0 when there is enough */
  readonly buyG: number;
  /** null where it is sold by the gram */
  readonly packs: number | null;
  /** in the kitchen's own currency; null without a price */
  readonly cost: number | null;
}

/** One list for all batches. */
export interface ShoppingList {
  readonly kind: "shopping list";
  /** what is to be bought first, by mass */
  readonly lines: readonly ShoppingLine[];
  /** of what has a price */
  readonly cost: number;
  /** names of what is to be bought and has none */
  readonly unpriced: readonly string[];
}

/**
 * One shopping list for several batches: every ingredient of mixes and coatings together, what is in stock taken off, rounded
 * up to whole packs.
 *
 * @example
 * const list = shoppingList({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }], packG: { "salt-fine": 500 } });
 * list.lines.find(({ ingredientId }) => ingredientId === "salt-fine").packs; // → 1
 */
export function shoppingList({ kitchen, batches, stockG = {}, packG = {} }: ShoppingListOptions): ShoppingList {
  const where = "shoppingList";
  if (batches.length < 1) fail(`${where}: batches`, "must hold at least one", batches.length);
  for (const [id, grams] of [...Object.entries(stockG), ...Object.entries(packG)]) {
    if (!kitchen.ingredients.some((one) => one.id === id))
      fail(`${where}: stockG and packG`, "must name ingredients of the kitchen", id);
    notNegative(grams, `${where}: ${id}`, "g");
  }
  const needed = new Map<string, number>();
  for (const batch of batches)
    for (const { ingredient, mixG, coatingG } of ingredientsNeeded(kitchen, batch).ingredients)
      needed.set(ingredient.id, (needed.get(ingredient.id) ?? 0) + mixG + coatingG);
  const lines = kitchen.ingredients.flatMap(({ id, name, costPerKg }): ShoppingLine[] => {
    const neededG = needed.get(id);
    if (neededG === undefined) return [];
    const inStockG = Object.hasOwn(stockG, id) ? stockG[id] : 0;
    const missingG = Math.max(0, neededG - inStockG);
    const pack = Object.hasOwn(packG, id) ? positive(packG[id], `${where}: pack of ${id}`, "g") : null;
    const packs = pack === null ? null : Math.ceil(missingG / pack - 1e-9);
    const buyG = pack === null ? missingG : (packs as number) * pack;
    return [
      {
        ingredientId: id,
        name,
        neededG,
        inStockG,
        buyG,
        packs,
        cost: costPerKg === null ? null : (buyG * costPerKg) / 1000,
      },
    ];
  });
  return freezeDeep({
    kind: "shopping list" as const,
    lines: [...lines].sort((a, b) => b.buyG - a.buyG),
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    unpriced: lines.filter(({ cost, buyG }) => cost === null && buyG > 0).map(({ name }) => name),
  });
}
