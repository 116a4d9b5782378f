import { describe, expect, test } from "vitest";
import { seriesSolution } from "../../../../kernel-lib/library/src/heat/formulas/series-solution";

describe("seriesSolution", () => {
  test("too early for the series is refused", () => {
    expect(() => seriesSolution({ biot: 1, fourier: 1e-5 })).toThrow("semiInfiniteSolution");
    expect(() => seriesSolution({ biot: -1, fourier: 1 })).toThrow("biot must be > 0");
  });
});
