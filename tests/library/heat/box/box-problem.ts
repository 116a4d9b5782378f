import type { BoxProblem } from "../../../../kernel-lib/library/src/heat/box/box-problem";
import { foods } from "../foods";

const air = { timeS: [0], airC: [204], coefficientWm2K: 40 };

/** A frozen slab of 10 mm in hot air, or what is changed of it. */
export function boxProblem(change: Partial<BoxProblem>): BoxProblem {
  return {
    food: foods.reference,
    startC: -18,
    thicknessM: 0.01,
    above: air,
    below: air,
    sides: change.sidesM ? air : undefined,
    flipsS: [],
    drying: {
      law: "none",
      evaporationC: 100,
      crustWmK: 0.12,
      vapourPa: 1200,
      convectionShare: 1,
      crustVapourKgMs: 5e-6,
    },
    crustWaterKgM3: 771.75,
    cells: 8,
    tolerance: 1e-3,
    endS: 600,
    ...change,
  };
}
