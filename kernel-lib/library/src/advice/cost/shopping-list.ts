import { fail, notNegative, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { Kitchen } from "../../trials/kitchen";
import { type BatchToMake, ingredientsNeeded } from "./ingredients-needed";
import { priceOf } from "./price-of";

/** What is to be made, and what is there. */
export interface ShoppingListOptions {
  readonly kitchen: Kitchen;
  readonly batches: readonly BatchToMake[];
  /** in stock (g), by ingredient id; as `pantry.csv` says unless given */
  readonly stockG?: Readonly<Record<string, number>>;
  /** sold in packs of (g), by ingredient id; as `pantry.csv` says, and else by the gram, unless given */
  readonly packG?: Readonly<Record<string, number>>;
  /** the day of the answer, for the doubt of prices; the last one that the kitchen's files name unless given */
  readonly asOf?: string;
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
  /** of one pack (g); null where it is sold by the gram */
  readonly packG: number | null;
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
  /** its standard uncertainty, from the age of the prices */
  readonly costSe: number;
  /** names of what is to be bought and has none */
  readonly unpriced: readonly string[];
}

/**
 * One shopping list for several batches: every ingredient of mixes and coatings together, what is in stock taken off, rounded
 * up to whole packs.
 *
 * @example
 * const list = shoppingList({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }], stockG: { "salt-fine": 0 }, packG: { "salt-fine": 500 } });
 * list.lines.find(({ ingredientId }) => ingredientId === "salt-fine").packs; // → 1
 */
export function shoppingList(options: ShoppingListOptions): ShoppingList {
  const { kitchen, batches, asOf } = options;
  const pantry = kitchen.pantry ?? [];
  const ofPantry = (field: "packG" | "stockG"): Record<string, number> =>
    Object.fromEntries(pantry.flatMap((item) => (item[field] === null ? [] : [[item.ingredientId, item[field]]])));
  const stockG = { ...ofPantry("stockG"), ...options.stockG };
  const packG = { ...ofPantry("packG"), ...options.packG };
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
  let variance = 0;
  const lines = kitchen.ingredients.flatMap((ingredient): ShoppingLine[] => {
    const { id, name } = ingredient;
    const neededG = needed.get(id);
    if (neededG === undefined) return [];
    const inStockG = Object.hasOwn(stockG, id) ? stockG[id] : 0;
    const missingG = Math.max(0, neededG - inStockG);
    const pack = Object.hasOwn(packG, id) ? positive(packG[id], `${where}: pack of ${id}`, "g") : null;
    const packs = pack === null ? null : Math.ceil(missingG / pack - 1e-9);
    const buyG = pack === null ? missingG : (packs as number) * pack;
    const price = priceOf(kitchen, ingredient, asOf);
    const cost = price === null ? null : (buyG * price.perKg) / 1000;
    variance += ((cost ?? 0) * (price?.doubtPercent ?? 0)) ** 2 / 1e4;
    return [
      {
        ingredientId: id,
        name,
        neededG,
        inStockG,
        buyG,
        packs,
        packG: pack,
        cost,
      },
    ];
  });
  return freezeDeep({
    kind: "shopping list" as const,
    lines: [...lines].sort((a, b) => b.buyG - a.buyG),
    cost: lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0),
    costSe: Math.sqrt(variance),
    unpriced: lines.filter(({ cost, buyG }) => cost === null && buyG > 0).map(({ name }) => name),
  });
}
