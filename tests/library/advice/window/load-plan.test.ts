import { describe, expect, it } from "vitest";
import { loadPlan, piecesOnFloor } from "../../../../kernel-lib/library/src/advice/window/load-plan";

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

  it("counts whole pieces where the floor's shape is known: 19 squares and not 25 on a round of 228 mm", () => {
    const round = { ...appliance, floorCm2: 408.3, floorShape: { shape: "round", diameterMm: 228 } } as const;
    const squares = { lengthMm: 40, widthMm: 40, pieceG: 20, pieces: 38 };
    expect(loadPlan({ appliance: round, ...squares })).toMatchObject({ wholePieces: 19, loosePieces: 15 });
    expect(piecesOnFloor(round, 1.2, [40, 40])).toBe(19);
    expect(piecesOnFloor({ ...round, floorShape: null }, 1, [40, 40])).toBe(25);
    expect(loadPlan({ appliance, ...squares }).wholePieces).toBeNull();
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
