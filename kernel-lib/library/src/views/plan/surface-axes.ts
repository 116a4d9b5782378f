import { fail } from "../../check/check";
import type { SurfaceFit } from "../../fit/surface/fit-surface";
import { checkFactors, type Factor } from "../../plan/factor/factor";

/** The factors of a surface as a person reads them. */
export interface SurfaceAxes {
  /** heading of each factor: its name, and "(coded)" where no real values are known */
  readonly names: readonly string[];
  /** a coded number of the factor at this place, as its real value */
  readonly real: (at: number, coded: number) => number;
}

/** Axes in the factors' own units where those are given, else in coded ones. */
export function surfaceAxes(where: string, fit: SurfaceFit, factors?: readonly Factor[]): SurfaceAxes {
  if (factors === undefined) return { names: fit.factors.map((name) => `${name} (coded)`), real: (_, coded) => coded };
  checkFactors(where, factors);
  if (factors.map(({ name }) => name).join() !== fit.factors.join())
    fail(
      `${where}: factors`,
      `must be ${fit.factors.join(", ")}, in this order`,
      factors.map(({ name }) => name),
    );
  return {
    names: fit.factors,
    real: (at, coded) => {
      const { low, high } = factors[at];
      return (low + high) / 2 + (coded * (high - low)) / 2;
    },
  };
}
