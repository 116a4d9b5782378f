import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { trialOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { sidesOfTrial } from "../../../../kernel-lib/library/src/trials/pieces/sides-of-trial";

const kitchen = loadKitchen();
const trial = trialOf(kitchen, "BL-01");

describe("sidesOfTrial", () => {
  it("takes the sides that were logged, both of them", () => {
    expect(sidesOfTrial(kitchen, { ...trial, pieceLengthMm: 55, pieceWidthMm: 20 })).toEqual([55, 20]);
  });

  it("cuts the pan's inside, less trim, in the variant's rows and columns, midway up its leaning wall", () => {
    // half sheet 420 × 293, walls 6° from vertical; 7 × 10 with 4 mm off each edge
    const lean = trial.thicknessMm * Math.tan((6 * Math.PI) / 180);
    const [along, across] = [(420 + lean - 8) / 10, (293 + lean - 8) / 7];
    const [lengthMm, widthMm] = sidesOfTrial(kitchen, trial);
    expect(lengthMm).toBeCloseTo(Math.max(along, across), 6);
    expect(widthMm).toBeCloseTo(Math.min(along, across), 6);
  });

  it("takes a slab thicker than its pan is deep for a full pan", () => {
    const deep = sidesOfTrial(kitchen, { ...trial, thicknessMm: 25 });
    expect(sidesOfTrial(kitchen, { ...trial, thicknessMm: 40 })).toEqual(deep);
  });
});
