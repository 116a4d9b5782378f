import { describe, expect, it } from "vitest";
import { loadPlan } from "../../../../kernel-lib/library/src/advice/window/load-plan";

const appliance = { applianceId: "b", name: "b", kind: "air fryer", floorCm2: 420, powerW: 1500, note: null } as const;

describe("loadPlan", () => {
  it("counts plan area, loose loads and watts for each kilogram", () => {
    const load = loadPlan({ appliance, lengthMm: 60, widthMm: 35, pieceG: 20, pieces: 12 });
    expect(load.loadFraction).toBeCloseTo(0.6, 12);
    expect(load).toMatchObject({ loosePieces: 12, loads: 1 });
    expect(load.wattsPerKg).toBeCloseTo(6250, 9);
    expect(
      loadPlan({ appliance: { ...appliance, powerW: null }, lengthMm: 60, widthMm: 35, pieceG: 20, pieces: 13 }),
    ).toMatchObject({ loads: 2, wattsPerKg: null });
  });

  it("refuses a piece larger than the floor and parts of pieces", () => {
    expect(() => loadPlan({ appliance, lengthMm: 300, widthMm: 200, pieceG: 20, pieces: 1 })).toThrow(
      "must fit on 0.6 of the floor",
    );
    expect(() => loadPlan({ appliance, lengthMm: 30, widthMm: 20, pieceG: 20, pieces: 1.5 })).toThrow(
      "must be a whole number >= 1",
    );
  });
});
