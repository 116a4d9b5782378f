import { expect, test } from "vitest";
import { dryingConstants, flipsS } from "../../../../kernel-lib/library/src/heat/solver/surroundings";
import { foods } from "../foods";

test("flips come to seconds", () => {
  expect(flipsS(undefined, "test")).toEqual([]);
  expect(flipsS(8, "test")).toEqual([480]);
  expect(flipsS([0, 4], "test")).toEqual([0, 240]);
  expect(() => flipsS([-1], "test")).toThrow("test: flipMin must be >= 0 min, got -1");
});

test("drying constants keep to their ranges, whose ends are inside, and have their defaults", () => {
  expect(dryingConstants({}, foods.reference, "test").constants).toEqual({
    law: "receding-front",
    evaporationC: 100,
    crustWmK: 0.12,
    vapourPa: 1200,
    convectionShare: 1,
    crustVapourKgMs: 5e-6,
  });
  const ranges = [
    ["evaporationC", "evaporationC", 20, 130],
    ["crustConductivityWmK", "crustWmK", 0.01, 2],
    ["vapourPa", "vapourPa", 0, 90000],
    ["convectionShare", "convectionShare", 0.05, 1],
    ["crustVapourKgMs", "crustVapourKgMs", 1e-8, 1e-3],
  ] as const;
  for (const [given, kept, low, high] of ranges) {
    for (const end of [low, high])
      expect(dryingConstants({ [given]: end }, foods.reference, "test").constants[kept]).toBe(end);
    for (const past of [low - 0.01 * high, 1.01 * high])
      expect(() => dryingConstants({ [given]: past }, foods.reference, "test")).toThrow(
        `test: drying.${given} must be between`,
      );
  }
  const water =
    (crustWaterKgM3: number, law: "none" | "receding-front" = "receding-front") =>
    () =>
      dryingConstants({ law, crustWaterKgM3 }, foods.reference, "test").crustWaterKgM3;
  expect(water(771.75)()).toBe(771.75);
  expect(water(300)()).toBe(300);
  for (const none of [0, -1, 772]) expect(water(none)).toThrow("must be > 0 and at most the food's own 772 kg/m³");
  expect(water(900, "none")()).toBe(900);
});

test("drying takes its water from the food; dry food does not dry", () => {
  expect(dryingConstants(undefined, foods.reference, "test").crustWaterKgM3).toBeCloseTo(771.75, 9);
  expect(dryingConstants(undefined, foods.reference, "test").constants.law).toBe("receding-front");
  expect(dryingConstants("wet-front", foods.withoutIce, "test").constants.law).toBe("none");
  expect(() => dryingConstants("damp" as "none", foods.reference, "test")).toThrow(
    "test: drying must be none, boiling-surface",
  );
});
