import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertPickup, pickup } from "../../../kernel-lib/library/src/yield/pickup";

describe("pickup", () => {
  it("agrees with its own conversion on any weights", () => {
    const mass = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(mass, mass, (beforeG, layerG) => {
        const afterG = beforeG + layerG;
        const substrate = pickup({ beforeG, afterG, basis: "substrate" }).percent;
        const finished = pickup({ beforeG, afterG, basis: "finished" }).percent;
        fc.pre(substrate <= 1000 && finished <= 99.9);
        expect(convertPickup({ percent: substrate, from: "substrate", to: "finished" })).toBeCloseTo(finished, 8);
        expect(finished).toBeLessThan(substrate);
      }),
    );
  });

  it("leaves a pickup alone on its own basis", () => {
    expect(convertPickup({ percent: 12, from: "finished", to: "finished" })).toBe(12);
  });

  it("refuses a lost layer, 100 % of the finished weight, and no basis", () => {
    expect(() => pickup({ beforeG: 20, afterG: 19, basis: "substrate" })).toThrow(
      "must be at least beforeG 20 g, got 19",
    );
    expect(() => convertPickup({ percent: 100, from: "finished", to: "substrate" })).toThrow("between 0 and 99.9");
    expect(() => pickup({ beforeG: 20, afterG: 26, basis: "raw" as "finished" })).toThrow('"substrate" or "finished"');
  });
});
