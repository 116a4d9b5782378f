import { describe, expect, it } from "vitest";
import { crispPriors } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-priors";
import { drawConstants, modePiece, pieceOfDraw } from "../../../../kernel-lib/library/src/crisp/window/draw-pieces";
import { settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { calibrationAt, food, MIDDLE } from "../sample-food";

const known = calibrationAt(MIDDLE, 0.1);
const place = settle({ thicknessMm: 9, applianceId: "basket", setpointC: 195, sidesMm: [40, 25] }, "test");

describe("drawConstants", () => {
  it("has the mode as its mean and the covariance that it is given, correlations too", () => {
    const size = MIDDLE.length;
    const covariance: number[][] = MIDDLE.map((_, row) => MIDDLE.map((__, column) => (row === column ? 0.04 : 0)));
    covariance[0][1] = 0.03;
    covariance[1][0] = 0.03;
    covariance[2][2] = 0.25;
    const mode = MIDDLE.map((_, at) => 0.1 * at);
    const draws = drawConstants({ ...known, mode, covariance }, { count: 20_000, seed: 3 });
    expect(draws).toHaveLength(20_000);
    const mean = (of: (z: readonly number[]) => number): number =>
      draws.reduce((sum, z) => sum + of(z), 0) / draws.length;
    for (let at = 0; at < size; at++) expect(Math.abs(mean((z) => z[at]) - mode[at])).toBeLessThan(0.016);
    const spread = (i: number, j: number): number => mean((z) => (z[i] - mode[i]) * (z[j] - mode[j]));
    // within four standard errors of 20,000 draws
    expect(Math.abs(spread(0, 0) - 0.04)).toBeLessThan(0.0016);
    expect(Math.abs(spread(0, 1) - 0.03)).toBeLessThan(0.0016);
    expect(Math.abs(spread(2, 2) - 0.25)).toBeLessThan(0.01);
    expect(Math.abs(spread(3, 4))).toBeLessThan(0.0012);
  });

  it("repeats with a seed, and stays put where nothing is uncertain, rounding below zero included", () => {
    const options = { count: 5, seed: 8 };
    expect(drawConstants(known, options)).toEqual(drawConstants(known, options));
    expect(drawConstants(known, { ...options, seed: 9 })).not.toEqual(drawConstants(known, options));
    const covariance = MIDDLE.map((_, row) => MIDDLE.map((__, column) => (row === column ? -1e-18 : 0)));
    for (const z of drawConstants({ ...known, covariance }, options)) expect(z).toEqual([...MIDDLE]);
  });
});

describe("pieceOfDraw", () => {
  it("is the piece of the priors' middles at 0, with the mix's water below a coating, and modePiece that of the mode", () => {
    const middles = crispPriors({ applianceIds: ["basket"], crustWaterKgM3: 400, coated: false }).map((p) => p.middle);
    const piece = pieceOfDraw(
      known,
      place,
      MIDDLE.map(() => 0),
    );
    expect(piece.coefficientWm2K).toBeCloseTo(middles[0], 9);
    expect(piece.crustWaterKgM3).toBeCloseTo(400, 9);
    expect(piece.innerWaterKgM3).toBeCloseTo(food.densityKgM3 * food.waterFraction, 9);
    expect(piece.coatingMm).toBe(Number.POSITIVE_INFINITY);
    expect(pieceOfDraw({ ...known, coatingMm: 0.4 }, place, MIDDLE).coatingMm).toBe(0.4);
    const mode = MIDDLE.map((_, at) => (at === 0 ? 1 : 0));
    expect(modePiece({ ...known, mode }, place).coefficientWm2K).toBeCloseTo(64, 9);
  });
});
