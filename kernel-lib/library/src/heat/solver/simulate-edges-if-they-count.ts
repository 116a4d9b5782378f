import { fail, positive } from "../../check/check";
import type { ThermalModel } from "../../food/thermal/thermal-properties";
import type { HeatRun } from "./heat-run";
import { simulatePiece } from "./simulate-piece";
import { type SimulateSlabOptions, simulateSlab } from "./simulate-slab";

/** A slab, or a piece when its sides are given. */
export interface EdgesIfTheyCountOptions extends SimulateSlabOptions {
  /** leave both sides out for a whole slab */
  readonly lengthMm?: number;
  readonly widthMm?: number;
  /** at the four sides of a piece [W/(m²·K)]; default as above */
  readonly coefficientSidesWm2K?: number;
}

/** How much the edges may shorten a core time before the piece is solved in three dimensions [-]. */
const SLAB_IS_RIGHT_WITHIN = 0.005;

/**
 * Upper estimate of the share by which the edges shorten a core time: 1.9·exp(−β·Bi^0.35) for each pair of sides, β the
 * side over the thickness, Bi = h·(thickness/2)/k with the frozen conductivity where the food freezes. Made to lie above
 * the differences that the two solvers show for Bi 0.02 to 4 and β 2 to 8.
 */
export function edgeShare(options: {
  readonly food: ThermalModel;
  readonly thicknessMm: number;
  readonly sidesMm: readonly [number, number];
  readonly coefficientWm2K: number;
  readonly cooling: boolean;
}): number {
  const { food, thicknessMm, sidesMm, coefficientWm2K, cooling } = options;
  const conductivity = cooling ? food.frozenConductivityWmK : food.thawedConductivityWmK;
  const biot = (coefficientWm2K * thicknessMm) / 2000 / conductivity;
  return sidesMm.reduce((sum, side) => sum + 1.9 * Math.exp(-(side / thicknessMm) * biot ** 0.35), 0);
}

/**
 * Runs the slab where its edges do not count, the piece where they do; `run.body` says which.
 *
 * The slab is taken when no sides are given, or when they shorten its core time by less than 0.5 % (`edgeShare`): the slab is then late by so much.
 */
export function simulateEdgesIfTheyCount(options: EdgesIfTheyCountOptions): HeatRun {
  const { lengthMm, widthMm, coefficientSidesWm2K, ...slab } = options;
  if (lengthMm === undefined && widthMm === undefined) return simulateSlab(slab);
  if (lengthMm === undefined || widthMm === undefined)
    fail("simulateEdgesIfTheyCount: lengthMm and widthMm", "must both be given for a piece", { lengthMm, widthMm });
  positive(lengthMm as number, "simulateEdgesIfTheyCount: lengthMm", "mm");
  positive(widthMm as number, "simulateEdgesIfTheyCount: widthMm", "mm");
  const firstAirC = typeof options.airC === "number" ? options.airC : options.airC[0].airC;
  const edges = edgeShare({
    food: options.food,
    thicknessMm: options.thicknessMm,
    sidesMm: [lengthMm as number, widthMm as number],
    coefficientWm2K: Math.min(options.coefficientWm2K, options.coefficientBelowWm2K ?? options.coefficientWm2K),
    cooling: firstAirC < options.startC,
  });
  if (edges < SLAB_IS_RIGHT_WITHIN) return simulateSlab(slab);
  return simulatePiece({ ...slab, lengthMm: lengthMm as number, widthMm: widthMm as number, coefficientSidesWm2K });
}
