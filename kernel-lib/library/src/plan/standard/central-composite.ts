import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import type { CodedPoint } from "../factor/factor";
import { fractionalFactorial } from "./fractional-factorial";
import { fullFactorial } from "./full-factorial";

/** Which central composite plan. */
export interface CentralCompositeOptions {
  /** 2 to 8 */
  readonly factors: number;
  /**
   * distance of the axial points from the centre: "rotatable" (unless given) for a doubt that depends on the distance from the
   * centre alone, "face" for three levels a factor, "blocks" for two blocks that do not touch the coefficients, or a number
   */
  readonly alpha?: "rotatable" | "face" | "blocks" | number;
  /** centre points beside the cube, and beside the axial points; [3, 3] unless given */
  readonly centres?: readonly [number, number];
  /** a fraction of the cube, as `fractionalFactorial` takes them; of resolution 5 or more */
  readonly generators?: readonly string[];
  /** all shrunk by 1/alpha, where alpha is above 1, so that no run leaves −1 to 1; false unless given */
  readonly inscribed?: boolean;
}

/** A central composite plan. */
export interface CentralComposite {
  /** cube, its centres, axial points, their centres */
  readonly points: readonly CodedPoint[];
  /** 1 for the cube and its centres, 2 for the axial points and theirs */
  readonly blocks: readonly number[];
  /** the axial distance before it is inscribed */
  readonly alpha: number;
}

/**
 * A central composite plan for a full quadratic (Box & Wilson 1951): a two-level cube of F = 2^(k−p) runs, 2k axial runs at ±α,
 * and centre points.
 *
 * Rotatable: α = F^(1/4). Face-centred: α = 1. Orthogonal blocks: α² = k (1 + s₀/2k)/(1 + c₀/F), with c₀ centres beside the
 * cube and s₀ beside the axial points (Box & Hunter 1957).
 *
 * @param options factors, axial distance, centres
 * @returns F + c₀ + 2k + s₀ points in coded units, their blocks, α
 * @example
 * const plan = centralComposite({ factors: 3, centres: [4, 2] });
 * plan.points.length; // → 20
 * plan.alpha; // → 1.68179
 *
 * Reference: Box & Draper, Response Surfaces, Mixtures, and Ridge Analyses, 2nd ed. 2007 (from memory).
 */
export function centralComposite(options: CentralCompositeOptions): CentralComposite {
  const where = "centralComposite";
  const { factors, centres = [3, 3], generators = [], inscribed = false } = options;
  if (!(Number.isInteger(factors) && factors >= 2 && factors <= 8))
    fail(`${where}: factors`, "must be a whole number from 2 to 8", factors);
  if (centres.length !== 2 || centres.some((count) => !(Number.isInteger(count) && count >= 0 && count <= 1000)))
    fail(`${where}: centres`, "must be two whole numbers from 0 to 1000", centres);
  const cube = cubeOf(where, factors, generators);
  const alpha = alphaOf(where, options.alpha ?? "rotatable", factors, cube.length, centres);
  const centre = (count: number): number[][] =>
    Array.from({ length: count }, () => Array.from({ length: factors }, () => 0));
  const axial = Array.from({ length: 2 * factors }, (_, run) =>
    Array.from({ length: factors }, (_, at) => (at === run >> 1 ? (run % 2 === 0 ? -alpha : alpha) : 0)),
  );
  const parts = [cube, centre(centres[0]), axial, centre(centres[1])];
  const scale = inscribed ? Math.max(1, alpha) : 1;
  return freezeDeep({
    points: parts.flat().map((point) => point.map((code) => code / scale)),
    blocks: parts.flatMap((part, at) => part.map(() => (at < 2 ? 1 : 2))),
    alpha,
  });
}

function cubeOf(where: string, factors: number, generators: readonly string[]): readonly CodedPoint[] {
  if (generators.length === 0) return fullFactorial({ levels: Array.from({ length: factors }, () => 2) });
  const { points, resolution } = fractionalFactorial({ factors, generators });
  if (resolution < 5)
    fail(
      `${where}: generators`,
      "must give resolution 5 or more, so that no two products of factors are the same",
      resolution,
    );
  return points;
}

function alphaOf(
  where: string,
  asked: "rotatable" | "face" | "blocks" | number,
  factors: number,
  cube: number,
  [beside, around]: readonly [number, number],
): number {
  if (asked === "rotatable") return cube ** 0.25;
  if (asked === "face") return 1;
  if (asked === "blocks") return Math.sqrt((factors * (1 + around / (2 * factors))) / (1 + beside / cube));
  if (typeof asked !== "number") fail(`${where}: alpha`, 'must be "rotatable", "face", "blocks" or a number', asked);
  return positive(asked, `${where}: alpha`, "");
}
