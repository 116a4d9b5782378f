import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brownDryingMin, browningOf } from "../../../../kernel-lib/library/src/crisp/clocks/browning-clock";
import { clockBasis } from "../../../../kernel-lib/library/src/crisp/clocks/clock-basis";
import {
  crispMin,
  crustDepthAfter,
  crustDryingMin,
  crustMmAt,
  crustPace,
  crustStartMin,
  dryDryingMin,
  lossPercentOf,
} from "../../../../kernel-lib/library/src/crisp/clocks/crust-clock";
import { bareSlab, food } from "../sample-food";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const basis = clockBasis({ food, startC: -18, airC: 200, limitC: 74 });
const bite = { ...bareSlab, sides: { lengthMm: 40, widthMm: 25 }, sideShare: 0.8, edgeCrust: 0.7, dripFraction: 0.02 };
const coated = { ...bite, coatingMm: 0.4, crustWaterKgM3: 300 };

describe("crustPace", () => {
  it("is the factor at 10 mm and a surface of 1.3 times the faces, and follows its powers from there", () => {
    // 0.65·(10/l + 10/w) = 0.3 with l = w
    const even = { ...bite, sideShare: 0.65, sides: { lengthMm: 13 / 0.3, widthMm: 13 / 0.3 } };
    expect(crustPace({ ...even, crustFactor: 1.2 }, 10)).toBeCloseTo(1.2, 12);
    expect(crustPace({ ...bareSlab, crustByThickness: 0.5 }, 40)).toBeCloseTo(2, 12);
    expect(crustPace({ ...bareSlab, edgeCrust: 1 }, 10)).toBeCloseTo(1.3, 12);
    expect(crustPace(bite, 10)).toBeLessThan(crustPace({ ...bite, sides: { lengthMm: 80, widthMm: 50 } }, 10));
  });
});

describe("the crust of a piece", () => {
  it("starts sooner by the share that waits for the whole piece", () => {
    expect(crustStartMin(basis, { ...bite, warmShare: 0.6 }, 11)).toBeCloseTo(0.6 * crustStartMin(basis, bite, 11), 12);
  });

  it("is as deep at the time it is called crisp as a check asks, through the coating or below it", () => {
    fc.assert(
      fc.property(between(0.05, 1.5), between(6, 20), (crustMm, mm) => {
        for (const kind of [bite, coated]) {
          const piece = { ...kind, crustMm };
          const time = crispMin(basis, piece, mm);
          expect(crustMmAt(basis, piece, mm, time)).toBeCloseTo(crustMm, 8);
          expect(time).toBeCloseTo(
            crustPace(piece, mm) * (crustStartMin(basis, piece, mm) + crustDryingMin(basis, piece, crustMm)),
            9,
          );
        }
      }),
    );
  });

  it("has none before it starts, nor at the start itself", () => {
    expect(crustDepthAfter(basis, bite, -1)).toBe(0);
    expect(crustDepthAfter(basis, bite, 0)).toBe(0);
    expect(crustMmAt(basis, bite, 9, 0.1)).toBe(0);
  });

  it("may dry to the middle of the piece and no further", () => {
    expect(crispMin(basis, { ...bite, crustMm: 5 }, 10)).toBeLessThan(Number.POSITIVE_INFINITY);
    expect(crispMin(basis, { ...bite, crustMm: 5.01 }, 10)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("the loss of a piece", () => {
  it("is the water of the dried layer on all faces over the mass, and the drip, by hand", () => {
    // faces 2·40·25, sides 2·10·(40 + 25) counted at 0.8: surface share 1.52
    const share = 1 + 0.8 * (10 / 40 + 10 / 25);
    expect(lossPercentOf(basis, bite, 10, 0.5)).toBeCloseTo(100 * ((2 * share * 771.75 * 0.5) / (1050 * 10) + 0.02), 9);
    expect(lossPercentOf(basis, coated, 10, 0.5)).toBeCloseTo(
      100 * ((2 * share * (300 * 0.4 + 771.75 * 0.1)) / (1050 * 10) + 0.02),
      9,
    );
    expect(lossPercentOf(basis, bite, 10, 0)).toBeCloseTo(2, 12);
  });

  it("is undone by the minutes until it is reached; drip alone reaches less than itself at once", () => {
    fc.assert(
      fc.property(between(0.02, 1.5), (depthMm) => {
        for (const piece of [bite, coated])
          expect(dryDryingMin(basis, piece, 12, lossPercentOf(basis, piece, 12, depthMm))).toBeCloseTo(
            crustDryingMin(basis, piece, depthMm),
            8,
          );
      }),
    );
    expect(dryDryingMin(basis, bite, 12, 2)).toBe(Number.NEGATIVE_INFINITY);
    expect(dryDryingMin(basis, bite, 12, 1)).toBe(Number.NEGATIVE_INFINITY);
    // dry through before it has lost so much
    expect(dryDryingMin(basis, bite, 12, 500)).toBeCloseTo(crustDryingMin(basis, bite, 6), 9);
  });
});

describe("the browning of a piece", () => {
  it("goes at the rate and by the power of the thickness that it is given", () => {
    const one = browningOf(basis, coated, 10, 0.9);
    expect(browningOf(basis, { ...coated, browningPerS: 3 * coated.browningPerS }, 10, 0.9) / one).toBeCloseTo(3, 9);
    expect(browningOf(basis, { ...coated, brownByThickness: 0.5 }, 40, 0.9) / one).toBeCloseTo(2, 9);
    expect(browningOf(basis, coated, 10, 0)).toBe(0);
  });

  it("is the rate at the surface over the time of drying, summed in small steps through the coating and below", () => {
    let sum = 0;
    const steps = 4000;
    for (let step = 0; step < steps; step++) {
      const [from, to] = [(0.9 * step) / steps, (0.9 * (step + 1)) / steps];
      const surfaceC = 200 - 100 / (1 + (40 * (from + to)) / 2 / 1000 / 0.12);
      const rate = Math.exp((64.151 / 0.008314462618) * (1 / 423.15 - 1 / (surfaceC + 273.15)));
      sum += 60 * (crustDryingMin(basis, coated, to) - crustDryingMin(basis, coated, from)) * rate;
    }
    expect(browningOf(basis, coated, 10, 0.9) / (coated.browningPerS * sum)).toBeCloseTo(1, 3);
    // the coating's end belongs to the coating
    expect(browningOf(basis, coated, 10, 0.4 + 1e-9) / browningOf(basis, coated, 10, 0.4)).toBeCloseTo(1, 6);
  });

  it("reaches a limit that lies at the coating's end, above and below it, when it says", () => {
    for (const depthMm of [0.1, 0.3999, 0.4, 0.4001, 1.2])
      expect(brownDryingMin(basis, coated, 10, browningOf(basis, coated, 10, depthMm))).toBeCloseTo(
        crustDryingMin(basis, coated, depthMm),
        5,
      );
  });
});
