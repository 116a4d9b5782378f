import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Pan } from "../../../kernel-lib/library/src/pan/pan";
import { PAN_PRESETS, panPreset } from "../../../kernel-lib/library/src/pan/pan-preset";
import { faceAreaMm2, panVolumeMl } from "../../../kernel-lib/library/src/pan/pan-volume";
import { scaleBatch } from "../../../kernel-lib/library/src/pan/scale-batch";
import { slabMassG } from "../../../kernel-lib/library/src/pan/slab-mass";
import { slabThickness } from "../../../kernel-lib/library/src/pan/slab-thickness";

const anyPan = fc.constantFrom(...PAN_PRESETS);
const anyDensity = fc.double({ min: 300, max: 1300, noNaN: true });
const box: Pan = {
  shape: "rectangle",
  id: "box",
  name: "box",
  bottomLengthMm: 400,
  bottomWidthMm: 250,
  depthMm: 30,
  cornerRadiusMm: 0,
  wallTaperDeg: 0,
  count: 1,
  standing: "measured",
};

describe("slabThickness", () => {
  it("takes what fills a pan to the brim, whatever the rounding on the way", () => {
    fc.assert(
      fc.property(anyPan, anyDensity, fc.double({ min: 5, max: 70, noNaN: true }), (preset, densityKgM3, depthMm) => {
        const pan = { ...preset, depthMm };
        const batchG = slabMassG({ pan, thicknessMm: depthMm, densityKgM3 });
        expect(slabThickness({ pan, batchG, densityKgM3 }).thicknessMm).toBeCloseTo(depthMm, 9);
      }),
      { numRuns: 2000 },
    );
  });

  it("is mass over density and area in a straight-walled box", () => {
    const slab = slabThickness({ pan: box, batchG: 1000, densityKgM3: 1000 });
    expect(slab.thicknessMm).toBeCloseTo(10, 9);
    expect(slab.massPerAreaGCm2).toBeCloseTo(1, 9);
  });

  it("is thinner than mass over bottom area where the walls lean out", () => {
    const pan = panPreset("half sheet");
    const flat = (1200 / 1.05 / faceAreaMm2(pan, 0)) * 1000;
    expect(slabThickness({ pan, batchG: 1200, densityKgM3: 1050 }).thicknessMm).toBeLessThan(flat);
  });

  it("matches the frustum of a cone in a round pan", () => {
    const pan: Pan = {
      shape: "round",
      id: "r",
      name: "r",
      bottomDiameterMm: 200,
      depthMm: 50,
      wallTaperDeg: 10,
      count: 1,
      standing: "measured",
    };
    const top = 100 + 50 * Math.tan((10 * Math.PI) / 180);
    expect(panVolumeMl(pan, 50)).toBeCloseTo(((Math.PI * 50) / 3) * (100 ** 2 + 100 * top + top ** 2) * 1e-3, 6);
  });

  it("is undone by slabMassG for every preset and depth", () => {
    fc.assert(
      fc.property(anyPan, fc.double({ min: 0.02, max: 1, noNaN: true }), anyDensity, (pan, fill, densityKgM3) => {
        const thicknessMm = fill * pan.depthMm;
        const batchG = slabMassG({ pan, thicknessMm, densityKgM3 });
        expect(slabThickness({ pan, batchG: batchG * (1 - 1e-12), densityKgM3 }).thicknessMm).toBeCloseTo(
          thicknessMm,
          7,
        );
      }),
    );
  });

  it("rises with the batch and falls with density", () => {
    fc.assert(
      fc.property(anyPan, fc.double({ min: 0.05, max: 0.8, noNaN: true }), (pan, fill) => {
        const batchG = slabMassG({ pan, thicknessMm: fill * pan.depthMm, densityKgM3: 1000 });
        const at = (g: number, densityKgM3: number): number =>
          slabThickness({ pan, batchG: g, densityKgM3 }).thicknessMm;
        expect(at(batchG * 1.1, 1000)).toBeGreaterThan(at(batchG, 1000));
        expect(at(batchG, 1100)).toBeLessThan(at(batchG, 1000));
      }),
    );
  });

  it("says what the pan holds when the batch does not fit", () => {
    expect(() => slabThickness({ pan: panPreset("eighth sheet"), batchG: 1200, densityKgM3: 1000 })).toThrow(
      /slabThickness: batchG must fit the pan: eighth-sheet holds at most 66\d g of this mix, got 1200/,
    );
  });

  it.each([0, -12, Number.NaN, Number.POSITIVE_INFINITY])("refuses a batch of %s g", (batchG) => {
    expect(() => slabThickness({ pan: box, batchG, densityKgM3: 1000 })).toThrow(
      "slabThickness: batchG must be > 0 g, got",
    );
  });
});

describe("scaleBatch", () => {
  it("keeps the thickness on the new pan", () => {
    const toPan = panPreset("quarter sheet");
    const scaled = scaleBatch({ fromPan: panPreset("half sheet"), toPan, batchG: 1200, densityKgM3: 1050 });
    expect(slabThickness({ pan: toPan, batchG: scaled.batchG, densityKgM3: 1050 }).thicknessMm).toBeCloseTo(
      scaled.thicknessMm,
      8,
    );
  });
});
