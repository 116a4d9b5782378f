import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { tooLittle } from "../../check/too-little";
import { type StockPlan, stockPlan } from "../../safety/cold/stock-plan";
import { STORAGE_LIVES, type StorageLife, type StoredFood, storageLife } from "../../safety/cold/storage-life";
import { storedFoodOf } from "../../safety/cold/stored-food-of";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { dayAfter, daysBetween, lastDay } from "../../trials/last-day";
import type { FreezerPack } from "../../trials/stores/packs";

/** What `packStock` works from. */
export interface PackStockOptions {
  readonly kitchen: Kitchen;
  /** products to speak of; all unless given */
  readonly variantIds?: readonly string[];
  /** pieces of each product that are eaten a week; 20 unless given */
  readonly piecesPerWeek?: number;
  /** the day of the answer, `2026-03-14`; the last one that the kitchen's files name unless given */
  readonly asOf?: string;
}

/** A pack with what is left of its quality. */
export interface PackLife {
  readonly pack: FreezerPack;
  readonly ageDays: number;
  readonly life: StorageLife;
  /** day by which its quality is used up where it is kept now; null when it is used up already */
  readonly useBy: string | null;
}

/** A product's packs in the freezer, and the order in which they go. */
export interface ProductStock {
  readonly variantId: string;
  readonly variantName: string;
  readonly food: StoredFood;
  readonly packs: readonly PackLife[];
  readonly plan: StockPlan;
}

/** All packs in a kitchen's freezer. */
export interface PackStock {
  readonly kind: "pack stock";
  readonly asOf: string;
  readonly piecesPerWeek: number;
  /** by product */
  readonly products: readonly ProductStock[];
  readonly notes: readonly string[];
}

/** Quality in a loose or frosty pack is used up in so much of the time; common practice, no source. */
const LOOSE_FACTOR = 0.5;
const WEEKLY = 20;

/**
 * The packs in a kitchen's freezer (`packs.csv`): how much of each one's quality its days and its warm spells have used up
 * (`storageLife`), by when it should be eaten, in which order packs go and how long they last at so many pieces a week
 * (`stockPlan`): what ends first goes first, which is first in, first out where all are kept alike.
 *
 * @throws too little, in words, where no pack is noted
 * @example
 * const stock = packStock({ kitchen: loadKitchen(), piecesPerWeek: 30 });
 * stock.products.find(({ variantId }) => variantId === "turkey-sage").plan.turns.map(({ id }) => id); // → ["TS January", "TS March"]
 */
export function packStock({ kitchen, piecesPerWeek = WEEKLY, asOf, variantIds }: PackStockOptions): PackStock {
  const where = "packStock";
  positive(piecesPerWeek, `${where}: piecesPerWeek`, "");
  const asked = variantIds ?? kitchen.variants.map(({ variantId }) => variantId);
  const packs = (kitchen.packs ?? []).filter(({ variantId }) => asked.includes(variantId));
  const day = asOf ?? lastDay(kitchen);
  if (packs.length === 0 || day === null)
    tooLittle(
      where,
      "No pack is noted yet: put a line into packs.csv for each pack in the freezer, with its product, its day and its pieces.",
    );
  if (Number.isNaN(Date.parse(day))) fail(`${where}: asOf`, "must be a day such as 2026-03-14", day);
  const ids = [...new Set(packs.map(({ variantId }) => variantId))];
  const products = ids.map((variantId): ProductStock => {
    const variant = variantOf(kitchen, variantId);
    const food = storedFoodOf(variant.limit);
    const own = packs
      .filter((pack) => pack.variantId === variantId)
      .map((pack): PackLife => {
        const ageDays = Math.max(0, daysBetween(pack.packedOn, day));
        const life = lifeOf(pack, food, ageDays);
        return { pack, ageDays, life, useBy: life.leftDays === 0 ? null : dayAfter(day, Math.floor(life.leftDays)) };
      });
    const plan = stockPlan({
      packs: own.map(({ pack, life }) => ({ id: pack.packId, pieces: pack.pieces, leftDays: life.leftDays })),
      piecesPerWeek,
    });
    return { variantId, variantName: variant.name, food, packs: own, plan };
  });
  const foods = [...new Set(products.map(({ food }) => food))];
  return freezeDeep({
    kind: "pack stock" as const,
    asOf: day,
    piecesPerWeek,
    products,
    notes: [
      `As of ${day}${asOf === undefined ? ", the last day that the kitchen's files name" : ""}.`,
      ...foods.map((food) => `${food[0].toUpperCase()}${food.slice(1)}: ${STORAGE_LIVES[food].source}.`),
      "A loose or frosty pack keeps half as long (common practice, no source). The life is three times shorter 10 K warmer, between two and four times.",
      products[0].packs[0].life.caution,
    ],
  });
}

function lifeOf({ keptC, packing, warmC, warmDays }: FreezerPack, food: StoredFood, ageDays: number): StorageLife {
  const warm = warmC.map((temperatureC, at) => ({ temperatureC, days: warmDays[at] }));
  const calmDays = Math.max(0, ageDays - warmDays.reduce((sum, days) => sum + days, 0));
  return storageLife({
    food,
    steps: [{ temperatureC: keptC, days: calmDays }, ...warm],
    keptAtC: keptC,
    packagingFactor: packing === "loose" ? LOOSE_FACTOR : 1,
  });
}
