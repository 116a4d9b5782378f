import { fail, positive } from "../check/check";
import type { Nutrients } from "../food/ingredient/nutrients";

/** What is taken to stay in the food while water, and in some cases fat, leaves. */
export type YieldBalance = "non-fat solids" | "protein" | "solids";

/** What `yieldFromComposition` works from. */
export interface YieldFromCompositionOptions {
  /** per 100 g before */
  readonly before: Pick<Nutrients, "waterG" | "proteinG" | "fatG">;
  /** per 100 g after */
  readonly after: Pick<Nutrients, "waterG" | "proteinG" | "fatG">;
  /** `"solids"` when fat stays too (grain, pulses); the others when fat may drip */
  readonly balance: YieldBalance;
}

/**
 * Yield worked back from two analyses when nothing was weighed: whatever stays is a larger share of a smaller mass.
 *
 * yield % = 100 · s_before / s_after, with s the solids (100 − water), the non-fat solids, or the protein
 *
 * On tables of averages the two analyses are of different samples: trust it to about ± 5 % points. Above 100 for what
 * takes up water.
 *
 * @param options two compositions (g per 100 g) and what is balanced
 * @returns mass after on mass before (%)
 * @example
 * yieldFromComposition({ before: { waterG: 65.66, proteinG: 18.59, fatG: 15 }, after: { waterG: 57.98, proteinG: 25.93, fatG: 15.41 }, balance: "protein" }); // → 71.693
 */
export function yieldFromComposition(options: YieldFromCompositionOptions): number {
  const kept = (side: "before" | "after"): number => {
    const { waterG, proteinG, fatG } = options[side];
    const where = `yieldFromComposition: ${side}`;
    if (options.balance === "protein") return positive(proteinG ?? Number.NaN, `${where}.proteinG`, "g");
    const solidsG = 100 - positive(waterG ?? Number.NaN, `${where}.waterG`, "g");
    if (options.balance === "solids") return positive(solidsG, `${where}: solids`, "g");
    if (options.balance === "non-fat solids")
      return positive(solidsG - (fatG ?? Number.NaN), `${where}: non-fat solids`, "g");
    return fail("yieldFromComposition: balance", "must be non-fat solids, protein or solids", options.balance);
  };
  return (100 * kept("before")) / kept("after");
}
