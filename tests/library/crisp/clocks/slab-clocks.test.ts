import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { brownDryingMin, browningOf } from "../../../../kernel-lib/library/src/crisp/clocks/browning-clock";
import { clockBasis } from "../../../../kernel-lib/library/src/crisp/clocks/clock-basis";
import { coreAtC, coreMin } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import {
  crispMin,
  crustDepthAfter,
  crustDryingMin,
  crustMmAt,
  crustStartMin,
  dryDryingMin,
  lossPercentOf,
} from "../../../../kernel-lib/library/src/crisp/clocks/crust-clock";
import { coreTimeClosedForm } from "../../../../kernel-lib/library/src/heat/formulas/core-time-closed-form";
import { crustDepthMm, crustMin } from "../../../../kernel-lib/library/src/heat/formulas/crust-depth";
import { crustStart } from "../../../../kernel-lib/library/src/heat/formulas/crust-start";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { bareSlab, food } from "../sample-food";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const coated = { ...bareSlab, coatingMm: 0.4, crustWaterKgM3: 300 };

describe("clocks of an uncut slab", () => {
  it("are the closed forms of heat/, worked out once for each air temperature", () => {
    fc.assert(
      fc.property(
        between(150, 230),
        between(15, 100),
        between(3, 25),
        between(0.7, 1.4),
        between(-30, 20),
        (airC, h, mm, k, startC) => {
          const basis = clockBasis({ food, startC, airC, limitC: 74 });
          const slab = { ...bareSlab, coefficientWm2K: h, conductivityFactor: k };
          const own = { ...food, thawedConductivityWmK: food.thawedConductivityWmK * k };
          const common = { food: own, thicknessMm: mm, coefficientWm2K: h, airC, startC };
          const core = coreTimeClosedForm({ ...common, limitC: 74 }).timeMin;
          expect(Math.abs(coreMin(basis, slab, mm) / core - 1)).toBeLessThan(1e-9);
          const start = crustStart(common).startMin;
          expect(Math.abs(crustStartMin(basis, slab, mm) / start - 1)).toBeLessThan(1e-9);
          const crust = { coefficientWm2K: h, airC, crustWaterKgM3: 771.75 };
          expect(crustDryingMin(basis, slab, 0.7)).toBeCloseTo(crustMin({ ...crust, crustMm: 0.7 }), 9);
          expect(crustDepthAfter(basis, slab, 4)).toBeCloseTo(crustDepthMm({ ...crust, dryingMin: 4 }), 9);
        },
      ),
    );
  });

  it("reach depth, browning and loss at the times that they name, through the coating and below it", () => {
    fc.assert(
      fc.property(between(0.05, 2.5), between(150, 230), between(15, 90), (depthMm, airC, h) => {
        const basis = clockBasis({ food, startC: -18, airC, limitC: 74 });
        const slab = { ...coated, coefficientWm2K: h };
        const minutes = crustDryingMin(basis, slab, depthMm);
        expect(crustDepthAfter(basis, slab, minutes)).toBeCloseTo(depthMm, 9);
        expect(brownDryingMin(basis, slab, 9, browningOf(basis, slab, 9, depthMm)) / minutes).toBeCloseTo(1, 6);
        expect(dryDryingMin(basis, slab, 20, lossPercentOf(basis, slab, 20, depthMm))).toBeCloseTo(minutes, 9);
      }),
    );
  });

  it("make a coating that holds less water dry sooner, and only while the front is inside it", () => {
    const basis = clockBasis({ food, startC: -18, airC: 204, limitC: 74 });
    const shallow = crustDryingMin(basis, coated, 0.4) / crustDryingMin(basis, bareSlab, 0.4);
    expect(shallow).toBeCloseTo(300 / 771.75, 9);
    const below = crustDryingMin(basis, coated, 1.4) - crustDryingMin(basis, coated, 0.4);
    expect(below).toBeCloseTo(crustDryingMin(basis, bareSlab, 1.4) - crustDryingMin(basis, bareSlab, 0.4), 9);
  });

  it("are monotone where physics is: thicker, cooler or gentler is never faster", () => {
    fc.assert(
      fc.property(between(150, 225), between(15, 90), between(3, 30), between(1, 1.5), (airC, h, mm, more) => {
        const basis = clockBasis({ food, startC: -18, airC, limitC: 74 });
        const hotter = clockBasis({ food, startC: -18, airC: airC + 10 * (more - 1), limitC: 74 });
        const slab = { ...bareSlab, coefficientWm2K: h };
        for (const clock of [coreMin, crispMin, crustStartMin]) {
          const now = clock(basis, slab, mm) * (1 + 1e-12);
          expect(clock(basis, slab, mm * more) * (1 + 1e-12)).toBeGreaterThanOrEqual(clock(basis, slab, mm));
          expect(clock(hotter, slab, mm)).toBeLessThanOrEqual(now);
          expect(clock(basis, { ...slab, coefficientWm2K: h * more }, mm)).toBeLessThanOrEqual(now);
        }
        expect(coreAtC(basis, slab, mm, 6 * more)).toBeGreaterThanOrEqual(coreAtC(basis, slab, mm, 6) - 1e-9);
      }),
    );
  });

  it("never dry deeper than the piece, and never call a piece crisp that is dry through", () => {
    const basis = clockBasis({ food, startC: -18, airC: 204, limitC: 74 });
    expect(crustMmAt(basis, bareSlab, 3, 600)).toBe(1.5);
    expect(crispMin(basis, { ...bareSlab, crustMm: 1.6 }, 3)).toBe(Number.POSITIVE_INFINITY);
  });

  it("put the core within 6 K of the slab solver from 55 °C on", () => {
    const misses: number[] = [];
    for (const airC of [180, 204])
      for (const coefficientWm2K of [30, 60])
        for (const mm of [6.35, 10, 16]) {
          const basis = clockBasis({ food, startC: -18, airC, limitC: 74 });
          const slab = { ...bareSlab, coefficientWm2K };
          const run = simulateSlab({
            food,
            thicknessMm: mm,
            startC: -18,
            airC,
            coefficientWm2K,
            drying: "receding-front",
            endMin: 20,
          });
          for (let minute = 1; minute < 20; minute += 0.5) {
            const solved = valueAt(run, "coreC", minute);
            if (solved > 55) misses.push(coreAtC(basis, slab, mm, minute) - solved);
          }
        }
    expect(misses.length).toBeGreaterThan(150);
    expect(Math.max(...misses.map(Math.abs))).toBeLessThan(6);
    expect(Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length)).toBeLessThan(2);
  });
});
