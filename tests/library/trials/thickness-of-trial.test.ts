import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { slabMassG } from "../../../kernel-lib/library/src/pan/slab-mass";
import { panOf, trialOf } from "../../../kernel-lib/library/src/trials/kitchen-lookup";
import { thicknessOfTrial } from "../../../kernel-lib/library/src/trials/thickness-of-trial";
import type { Trial } from "../../../kernel-lib/library/src/trials/trial";

const kitchen = loadKitchen();
const pan = panOf(kitchen, "half-sheet");
const densityKgM3 = 1050;
const trial = (batchG: number | null, ...probesMm: number[]): Trial => ({
  ...trialOf(kitchen, "BL-01"),
  batchG,
  probesMm,
});
const massFor = (thicknessMm: number): number => slabMassG({ pan, thicknessMm, densityKgM3 });

describe("thicknessOfTrial", () => {
  it("takes the mean probe reading, and the mass where no probe was used", () => {
    expect(thicknessOfTrial({ trial: trial(null, 8, 9), pan, densityKgM3 })).toMatchObject({
      thicknessMm: 8.5,
      from: "probes",
      massMm: null,
      disagreement: null,
    });
    const byMass = thicknessOfTrial({ trial: trial(massFor(9)), pan, densityKgM3 });
    expect(byMass).toMatchObject({ from: "mass", probesMm: null, sdMm: null, notice: null });
    expect(byMass.thicknessMm).toBeCloseTo(9, 9);
  });

  it("notices a disagreement over 10 % that the readings' own spread cannot explain", () => {
    const { disagreement, notice } = thicknessOfTrial({
      trial: trial(massFor(10), 8, 8.1, 7.9, 8, 8),
      pan,
      densityKgM3,
    });
    expect(disagreement).toBeCloseTo(-0.2, 6);
    expect(notice).toMatch(/probes say 8\.0 mm, but \d+(\.\d+)? g on half-sheet make 10\.0 mm \(-20 %\)/);
  });

  it("takes one reading for the mean, its spread unknown, and gives the spread of several", () => {
    expect(thicknessOfTrial({ trial: trial(null, 8.4), pan, densityKgM3 })).toMatchObject({
      thicknessMm: 8.4,
      from: "probes",
      probesMm: 8.4,
      sdMm: null,
    });
    const { sdMm } = thicknessOfTrial({ trial: trial(null, 8, 9, 10), pan, densityKgM3 });
    expect(sdMm).toBeCloseTo(1, 12);
  });

  it("notices from 10 % of the mass's thickness and three standard errors on, either way", () => {
    const notice = (massMm: number, ...probesMm: number[]) =>
      thicknessOfTrial({ trial: trial(massFor(massMm), ...probesMm), pan, densityKgM3 }).notice;
    expect(notice(10, 11.01)).toMatch(/the probes say 11\.0 mm, .* make 10\.0 mm \(\+10 %\)/);
    expect(notice(10, 10.99)).toBeNull();
    expect(notice(10, 8.99)).toMatch(/\(-10 %\)/);
    expect(notice(10, 9.01)).toBeNull();
    // 8 ± 0.5 and 8 ± 0.8 of two readings each: standard errors of the mean 0.5 and 0.8
    expect(notice(10, 7.5, 8.5)).not.toBeNull();
    expect(notice(10, 7.2, 8.8)).toBeNull();
  });

  it("keeps still where the two agree within 10 %, or the slab is so uneven that they may", () => {
    expect(thicknessOfTrial({ trial: trial(massFor(10), 9.2, 9.3), pan, densityKgM3 }).notice).toBeNull();
    expect(thicknessOfTrial({ trial: trial(massFor(10), 6, 11), pan, densityKgM3 }).notice).toBeNull();
  });
});
