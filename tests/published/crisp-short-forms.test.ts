import { describe, expect, it } from "vitest";
import { browningOf } from "../../kernel-lib/library/src/crisp/clocks/browning-clock";
import { browningRate } from "../../kernel-lib/library/src/crisp/clocks/browning-table";
import { clockBasis } from "../../kernel-lib/library/src/crisp/clocks/clock-basis";
import { coreMin } from "../../kernel-lib/library/src/crisp/clocks/core-clock";
import {
  crustDepthAfter,
  crustDryingMin,
  crustMmAt,
  crustStartMin,
  lossPercentOf,
} from "../../kernel-lib/library/src/crisp/clocks/crust-clock";
import { crustSurfaceC } from "../../kernel-lib/library/src/heat/formulas/crust-depth";
import { bareSlab, food, ZANONI_PER_S } from "../library/crisp/sample-food";
import { comparison } from "./comparison";
import reference from "./crisp-short-forms/reference.json";

const clock = (what: string, against: string, source: string) =>
  comparison({ page: "crisp-window", what, against, source });
const FRONT = "Farkas, Singh & Rumsey (1996), Journal of Food Engineering 29:211-226";
const ZANONI = "Zanoni, Peri & Bruno (1995), LWT 28:604-609";
const MOVING = "the full moving front on 60 cells, computed apart from the library";
const closed = clock("depth, time and surface of the crust clock", "its closed form, evaluated apart", FRONT);
const browning = clock("rate and integral of the browning clock", "its integral, computed apart", ZANONI);
const depthRms = clock("crust depth of the clock, rms over 46 points", MOVING, FRONT);
const depthWorst = clock("crust depth of the clock, worst of 46 points", MOVING, FRONT);
const surfaceTime = clock("time until the surface boils, worst of 46 points", MOVING, FRONT);
const timeRms = clock("time to a depth, rms over 46 points", MOVING, FRONT);
const loss = clock("loss in % of the mass, worst of 46 points", MOVING, FRONT);
const coreRms = clock(
  "core clock over 24 runs from each start, rms",
  "the enthalpy solver, computed apart from the library",
  "Plank R. (1913) for the form",
);
const coreWorst = clock(
  "core clock over 24 runs from each start, worst",
  "the enthalpy solver, computed apart from the library",
  "Plank R. (1913) for the form",
);

const basisAt = (airC: number, startC = -18) => clockBasis({ food, startC, airC, limitC: 74 });
const rms = (misses: readonly number[]): number =>
  Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / misses.length);
const worst = (misses: readonly number[]): number => Math.max(...misses.map(Math.abs));

describe("crust short form in closed form", () => {
  const basis = basisAt(204);

  it.each(reference.crustDepth)("is $depthMm mm after $dryingS s", ({ dryingS, depthMm }) => {
    closed.relative(crustDepthAfter(basis, bareSlab, dryingS / 60), depthMm, 1e-6);
  });

  it.each(reference.crustTime)("takes $dryingS s for $depthMm mm", ({ dryingS, depthMm }) => {
    closed.relative(60 * crustDryingMin(basis, bareSlab, depthMm), dryingS, 1e-6);
  });

  it.each(reference.surface)("has its surface at $surfaceC °C at $depthMm mm", ({ depthMm, surfaceC }) => {
    const found = crustSurfaceC({ coefficientWm2K: 40, airC: 204, crustWaterKgM3: 771.75, crustMm: depthMm });
    closed.absolute(found, surfaceC, 0.5e-6, "K");
  });
});

describe("browning clock", () => {
  it.each(reference.browningRate)("has Zanoni's rate at $surfaceC °C", ({ surfaceC, perS }) => {
    browning.relative(ZANONI_PER_S * browningRate(surfaceC + 273.15, 64.151), perS, 1e-5);
  });

  it.each(reference.browning)("at $airC °C after $dryingS s of crust", ({ airC, dryingS, integral, crustMm }) => {
    const basis = basisAt(airC);
    const depthMm = crustDepthAfter(basis, bareSlab, dryingS / 60);
    expect(Math.abs(depthMm / crustMm - 1)).toBeLessThan(1e-6);
    browning.relative(browningOf(basis, bareSlab, 10, depthMm), integral, 3e-4);
  });
});

describe("against the full moving front, 46 points", () => {
  const rows = reference.movingFront;

  it("has the crust depth within 1.84 % rms and 7.67 % worst when the surface time is the front's own", () => {
    const misses = rows.map(({ airC, coefficientWm2K, thicknessMm, timeS, surfaceS, crustMm }) => {
      const basis = basisAt(airC);
      const slab = { ...bareSlab, coefficientWm2K };
      const soakMin = basis.soak * thicknessMm ** 2;
      return crustDepthAfter(basis, slab, (timeS - surfaceS) / 60 - soakMin) / crustMm - 1;
    });
    expect(rows.length).toBe(46);
    depthRms.miss(rms(misses), 0.0184, "relative");
    depthWorst.miss(worst(misses), 0.0767, "relative");
  });

  it("has the time at which the surface reaches 100 °C within 1.3 %", () => {
    const misses = rows.map(({ airC, coefficientWm2K, thicknessMm, surfaceS }) => {
      const basis = basisAt(airC);
      const startMin = crustStartMin(basis, { ...bareSlab, coefficientWm2K }, thicknessMm);
      return (60 * (startMin - basis.soak * thicknessMm ** 2)) / surfaceS - 1;
    });
    surfaceTime.miss(worst(misses), 0.013, "relative");
  });

  it("has the time to a depth, start and growth together, within 1.8 % rms of the run", () => {
    const misses = rows.map(({ airC, coefficientWm2K, thicknessMm, timeS, crustMm }) => {
      const basis = basisAt(airC);
      const slab = { ...bareSlab, coefficientWm2K };
      const found = crustStartMin(basis, slab, thicknessMm) + crustDryingMin(basis, slab, crustMm);
      return (60 * found) / timeS - 1;
    });
    timeRms.miss(rms(misses), 0.018, "relative");
    expect(worst(misses)).toBeLessThan(0.0767);
  });

  it("has the loss within 1 % of the mass", () => {
    const misses = rows.map(({ airC, coefficientWm2K, thicknessMm, timeS, lossPercent }) => {
      const basis = basisAt(airC);
      const slab = { ...bareSlab, coefficientWm2K };
      return lossPercentOf(basis, slab, thicknessMm, crustMmAt(basis, slab, thicknessMm, timeS / 60)) - lossPercent;
    });
    loss.miss(worst(misses), 1, "% of the mass");
  });
});

describe("core short form against the enthalpy solver", () => {
  it.each([
    { startC: -18, rmsBound: 0.0185, worstBound: 0.0603 },
    { startC: 4, rmsBound: 0.0302, worstBound: 0.0902 },
  ])("from $startC °C over 24 runs", ({ startC, rmsBound, worstBound }) => {
    const misses = reference.core
      .filter((row) => row.startC === startC)
      .map(({ airC, coefficientWm2K, thicknessMm, timeS }) => {
        const found = coreMin(basisAt(airC, startC), { ...bareSlab, coefficientWm2K }, thicknessMm);
        return (60 * found) / timeS - 1;
      });
    expect(misses.length).toBe(24);
    coreRms.miss(rms(misses), rmsBound, "relative");
    coreWorst.miss(worst(misses), worstBound, "relative");
  });
});

describe("panel score", () => {
  it("has the Fermi form's width from 10 to 90 %", () => {
    expect(2 * Math.log(9)).toBeCloseTo(reference.fermi.width10to90OverB, 9);
  });
});
