import { describe, expect, it } from "vitest";
import { materialOf } from "./moist-food";
import { type Around, heatPiece } from "./simulate-piece";

function even(airC: number, coefficientWm2K: number, radiantShare: number): Around {
  return {
    topWm2K: coefficientWm2K,
    bottomWm2K: coefficientWm2K,
    sideWm2K: coefficientWm2K,
    radiantShare,
    airC: () => airC,
    vapourPa: () => 2000,
    turnS: null,
  };
}

describe("two beef bricks in a 175 °C oven", () => {
  // Public experiment: repository waffelroffel/BeefSimulator, Beef_experiment.py (2022). 93 × 50 × 26 mm from 14 °C, centre at
  // 65 °C after 780 s, 143 → 128 g; 100 × 46 × 27 mm from 16 °C, 840 s, 140 → 118 g; scale ±1 g; place of the probe not stated.
  // Composition of lean beef, drip, vapour and radiation from memory, chosen here; only the coefficient is fitted.
  const beef = materialOf(
    { water: 0.715, protein: 0.21, fat: 0.06, carbohydrate: 0, fibre: 0, ash: 0.015 },
    { airFraction: 0, freezingC: -1.2, krischer: 0.2, dryWmK: 0.2, vapourKgMsPa: 3e-12, liquidM2s: 1e-10 },
  );
  const heat = (
    [lengthMm, widthMm, thicknessMm]: readonly [number, number, number],
    startC: number,
    weighedS: number,
  ): { readonly timeS: number; readonly lossPercent: number } => {
    const piece = heatPiece(
      {
        lengthM: lengthMm / 1000,
        widthM: widthMm / 1000,
        thicknessM: thicknessMm / 1000,
        mix: beef,
        coating: null,
        startC,
        drip: { fraction: 0.06, middleC: 62, widthK: 6 },
        activationJmol: 80_000,
      },
      even(175, 52, 0.5),
    );
    let hotS = Number.POSITIVE_INFINITY;
    let lossPercent = Number.NaN;
    for (let timeS = 6; timeS <= 1200; timeS += 6) {
      piece.advance(timeS);
      const { coreC, loss } = piece.read();
      if (coreC >= 65) hotS = Math.min(hotS, timeS);
      if (timeS === weighedS) lossPercent = 100 * loss;
    }
    return { timeS: hotS, lossPercent };
  };
  const first = heat([93, 50, 26], 14, 780);
  const second = heat([100, 46, 27], 16, 840);

  it("reach 65 °C within 10 % of the time, both with one coefficient", () => {
    expect(Math.abs(first.timeS / 780 - 1)).toBeLessThan(0.1);
    expect(Math.abs(second.timeS / 840 - 1)).toBeLessThan(0.1);
  });

  it("lose 13.1 % between them as measured, and 10.5 and 15.7 % each to 2.6 points, not to 2", () => {
    // The two lost 5.2 points apart, nearly alike in size, start and time; one coefficient makes 0.9 points of that, so no
    // choice of it holds both to 2 points. The scale's ±1 g on each weight is 1 point of loss.
    expect(Math.abs((first.lossPercent + second.lossPercent) / 2 - 13.1)).toBeLessThan(1);
    expect(Math.abs(first.lossPercent - 10.5)).toBeLessThan(2.6);
    expect(Math.abs(second.lossPercent - 15.7)).toBeLessThan(2.6);
    expect(second.lossPercent).toBeGreaterThan(first.lossPercent);
  });
});

describe("bread", () => {
  it("passes 100 °C at its surface while its middle is below", () => {
    // Direction only. Zhang & Datta 2006, doi 10.1002/aic.10518: cylinder of radius 36 and height 35 mm, air 190 °C,
    // coefficient 10: surface 105.5 and centre 95.4 °C at 10 min, 114.6 and 97.5 at 13.3 min. Their crumb carries heat inwards as
    // vapour, which ours does not: our centre is much colder, and the times are not compared.
    const dough = materialOf(
      { water: 0.42, protein: 0.08, fat: 0.02, carbohydrate: 0.45, fibre: 0.015, ash: 0.015 },
      { airFraction: 0.5, freezingC: -3, krischer: 0.4, dryWmK: 0.07, vapourKgMsPa: 1.5e-11, liquidM2s: 2e-10 },
    );
    // a square of the same section
    const sideM = 0.036 * Math.sqrt(Math.PI);
    const piece = heatPiece(
      {
        lengthM: sideM,
        widthM: sideM,
        thicknessM: 0.035,
        mix: dough,
        coating: null,
        startC: 25,
        drip: { fraction: 0, middleC: 62, widthK: 6 },
        activationJmol: 80_000,
      },
      even(190, 20, 0.5),
    );
    piece.advance(13.3 * 60);
    const { surfaceC, coreC } = piece.read();
    expect(surfaceC).toBeGreaterThan(100);
    expect(coreC).toBeLessThan(97.5);
    piece.advance(60 * 60);
    // and the middle, while it is moist, stays below boiling
    expect(piece.read().coreC).toBeLessThan(101);
    expect(piece.read().coreC).toBeGreaterThan(60);
  });
});
