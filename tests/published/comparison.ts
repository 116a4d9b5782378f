import { expect, TestRunner } from "vitest";

/** A page of the reference that explains a model. */
export type ModelPage =
  | "thickness-and-crisp-time"
  | "heating-and-freezing"
  | "crisp-window"
  | "safe-core-and-lethality"
  | "calibration-and-doubt"
  | "yield-and-macros"
  | "next-trial"
  | "batch-day"
  | "storage";

/** What a check compares, with what, and on which page of the reference that stands. */
export interface Compared {
  readonly page: ModelPage;
  readonly what: string;
  readonly against: string;
  /** who published it, and where; several as sentences of their own, parted by "; " */
  readonly source: string;
}

/** How close one comparison came, beside what it is held to. */
export interface Closeness extends Compared {
  /** "relative", "digits" (the more, the closer), "equal", or the unit of the distance */
  readonly measure: string;
  readonly found: number;
  readonly heldTo: number;
}

declare module "vitest" {
  interface TaskMeta {
    compared?: Closeness[];
  }
}

/** Checks that assert, and leave in the test's result how close they came. */
export interface Comparison {
  /** found within a share of what is wanted [-] */
  readonly relative: (found: number, wanted: number, within: number) => void;
  /** found within a distance of what is wanted, in its unit */
  readonly absolute: (found: number, wanted: number, within: number, unit: string) => void;
  /** a distance that the test worked out itself, in its unit or "relative" */
  readonly miss: (distance: number, within: number, unit: string) => void;
  /** so many digits alike on the worst of several numbers, 15 at most */
  readonly digits: (found: readonly number[], wanted: readonly number[], atLeast: number) => void;
  readonly equal: (found: unknown, wanted: unknown) => void;
}

/**
 * The checks of one comparison. `npm run reference` runs the tests and makes its tables of what they leave behind, so that no figure of
 * theirs is typed twice.
 */
export function comparison(about: Compared): Comparison {
  const note = (measure: string, found: number, heldTo: number): void => {
    const { meta } = TestRunner.getCurrentTest()!;
    meta.compared ??= [];
    meta.compared.push({ ...about, measure, found, heldTo });
  };
  const miss: Comparison["miss"] = (distance, within, unit) => {
    note(unit, Math.abs(distance), within);
    expect(Math.abs(distance), about.what).toBeLessThanOrEqual(within);
  };
  return {
    miss,
    relative: (found, wanted, within) => miss(found / wanted - 1, within, "relative"),
    absolute: (found, wanted, within, unit) => miss(found - wanted, within, unit),
    digits: (found, wanted, atLeast) => {
      expect(found.length, about.what).toBe(wanted.length);
      const alike = Math.min(...found.map((value, at) => digitsAlike(value, wanted[at])));
      note("digits", alike, atLeast);
      expect(alike, about.what).toBeGreaterThanOrEqual(atLeast);
    },
    equal: (found, wanted) => {
      note("equal", 0, 0);
      expect(found, about.what).toEqual(wanted);
    },
  };
}

/** −log10 of the relative error, of the error itself where zero is wanted; 15 at most. */
function digitsAlike(found: number, wanted: number): number {
  const error = wanted === 0 ? Math.abs(found) : Math.abs(found - wanted) / Math.abs(wanted);
  return error === 0 ? 15 : Math.min(15, -Math.log10(error));
}
