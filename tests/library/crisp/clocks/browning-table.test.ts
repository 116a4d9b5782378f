import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BROWNING_REFERENCE_K,
  browningReach,
  browningSum,
  browningTable,
} from "../../../../kernel-lib/library/src/crisp/clocks/browning-table";

/** ∫₁^U exp[−E/R·(1/Ts − 1/423 K)]·u du by the midpoint rule on 20 000 slices. */
function fineSum(airC: number, u: number, kJmol: number): number {
  const step = (u - 1) / 20_000;
  let sum = 0;
  for (let slice = 0; slice < 20_000; slice++) {
    const at = 1 + (slice + 0.5) * step;
    sum +=
      Math.exp((kJmol / 0.008314462618) * (1 / BROWNING_REFERENCE_K - 1 / (airC + 273.15 - (airC - 100) / at))) *
      at *
      step;
  }
  return sum;
}

describe("browningTable", () => {
  it.each([150, 180, 204, 230])("agrees with a fine sum at %d °C", (airC) => {
    for (const kJmol of [64, 78, 95]) {
      const table = browningTable(airC, 100, kJmol);
      for (const u of [1.01, 1.2, 1.7, 3, 9])
        expect(Math.abs(browningSum(table, u) / fineSum(airC, u, kJmol) - 1)).toBeLessThan(2e-4);
    }
  });

  it("is nothing at a crust of none, and grows by the rate at the last node beyond it", () => {
    const table = browningTable(200, 100, 78);
    expect(browningSum(table, 1)).toBe(0);
    expect(browningSum(table, 0.5)).toBe(0);
    expect(browningReach(table, 0)).toBe(1);
    expect(browningReach(table, -1)).toBe(1);
    // at U = 25 the surface is 4 K below the air
    const rate = Math.exp((78 / 0.008314462618) * (1 / BROWNING_REFERENCE_K - 1 / (196 + 273.15)));
    const slope = (browningSum(table, 30.001) - browningSum(table, 29.999)) / 0.002;
    expect(slope / (rate * 30)).toBeCloseTo(1, 6);
    expect(browningSum(table, 25.000001) - browningSum(table, 24.999999)).toBeCloseTo(2e-6 * rate * 25, 6);
  });

  it("is undone by browningReach, beyond its last node too", () => {
    const table = browningTable(200, 100, 78);
    fc.assert(
      fc.property(fc.double({ min: 1.001, max: 60, noNaN: true }), (u) => {
        expect(Math.abs(browningReach(table, browningSum(table, u)) / u - 1)).toBeLessThan(1e-9);
      }),
    );
  });
});
