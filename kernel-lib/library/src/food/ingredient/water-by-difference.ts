import type { Nutrients } from "./nutrients";

/** Water that no label prints, from what it does; or what must be written instead. */
export type WaterByDifference = { readonly waterG: number; readonly doubtG: number } | { readonly must: string };

/** What `waterByDifference` works from. */
export interface WaterByDifferenceOptions {
  /** per 100 g */
  readonly nutrients: Pick<Nutrients, "proteinG" | "fatG" | "carbohydrateG" | "sodiumMg" | "ashG">;
  /** mass that the label's values are of (g) */
  readonly perG: number;
}

/** Half of the last place that a US label prints of a serving (g): 21 CFR 101.9(c), from memory. */
const HALF_G = 0.5;
const HALF_FAT_BELOW_5_G = 0.25;
/**
 * Minerals other than salt, which no label tells, as a share of protein and carbohydrate: their mean over 8,084 foods of USDA
 * SR28 (2015) is 0.042, and it is between 0 and 0.16 for 95 in 100 of them.
 */
const OTHER_ASH_SHARE = 0.04;
const OTHER_ASH_DOUBT = 0.04;
/** How much of a food may be salt before the difference says nothing (g per 100 g): our judgement. */
const MOST_SALT_G = 5;
/** From which doubt on the difference is not taken (g per 100 g): our judgement. */
const MOST_DOUBT_G = 15;

/**
 * Water by difference, w = 100 − protein − fat − carbohydrate − ash; where ash is not stated, it is the salt (2.5 · sodium) and
 * other minerals, 4 ± 4 % of protein and carbohydrate. The doubt is the rounding of the label and that of the minerals in quadrature. It is not taken where salt
 * is over 5 g (leavening, bouillon: their ash is more than salt), nor where a serving is so small that the doubt is over 15 g.
 *
 * @returns g per 100 g; `null` where protein, fat or carbohydrate is not known
 * @example
 * waterByDifference({ nutrients: { proteinG: 10, fatG: 5, carbohydrateG: 20, sodiumMg: 400, ashG: null }, perG: 100 }).waterG; // → 62.8
 */
export function waterByDifference({ nutrients, perG }: WaterByDifferenceOptions): WaterByDifference | null {
  const { proteinG, fatG, carbohydrateG, sodiumMg, ashG } = nutrients;
  if (proteinG === null || fatG === null || carbohydrateG === null) return null;
  const saltG = (2.5 * (sodiumMg ?? 0)) / 1000;
  if (ashG === null && saltG > MOST_SALT_G)
    return { must: `water_g, as ${saltG.toFixed(0)} g of 100 g are salt and its ash is not known (0 for a dry salt)` };
  const per100 = 100 / perG;
  const fatHalf = (fatG / per100 < 5 ? HALF_FAT_BELOW_5_G : HALF_G) * per100;
  const lean = ashG === null ? proteinG + carbohydrateG : 0;
  const doubtG = Math.hypot(fatHalf, HALF_G * per100, HALF_G * per100, OTHER_ASH_DOUBT * lean);
  if (doubtG > MOST_DOUBT_G)
    return {
      must: `water_g, as a serving of ${short(perG)} g is too small to tell it (± ${doubtG.toFixed(0)} g in 100 g)`,
    };
  const waterG = 100 - proteinG - fatG - carbohydrateG - (ashG ?? saltG + OTHER_ASH_SHARE * lean);
  return { waterG: Math.max(0, waterG), doubtG };
}

function short(value: number): string {
  return String(Number(value.toPrecision(3)));
}
