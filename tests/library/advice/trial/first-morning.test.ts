import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstMorning } from "../../../../kernel-lib/library/src/advice/trial/first-morning";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { slabMassG } from "../../../../kernel-lib/library/src/pan/slab-mass";
import { limitText } from "../../../../kernel-lib/library/src/safety/limit-text";
import { panOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { generatedKitchen } from "./generated-kitchen";

const demo = loadKitchen();

describe("firstMorning", () => {
  it("plans, in any kitchen, masses that fit their pans, loads that fit the slab, and times that rise", () => {
    fc.assert(
      fc.property(generatedKitchen(0), ({ kitchen, variant }) => {
        const { slabs, loads, setpointC } = firstMorning({ kitchen, variantId: variant.variantId });
        expect(slabs.length).toBeGreaterThan(0);
        for (const { panId, batchG, thicknessMm } of slabs) {
          const pan = panOf(kitchen, panId);
          const holdsG = slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3: variant.densityKgM3 });
          expect(batchG).toBeGreaterThan(0);
          expect(batchG).toBeLessThanOrEqual(holdsG);
          expect(thicknessMm).toBeLessThanOrEqual(pan.depthMm);
        }
        if (slabs.length === 2) {
          const ratio = slabs[1].thicknessMm / slabs[0].thicknessMm;
          expect(Math.max(ratio, 1 / ratio)).toBeGreaterThan(1.15);
        }
        for (const [at, { pieces }] of slabs.entries()) {
          const own = loads.filter((load) => load.slab === at);
          expect(own.some((load) => load.purpose === "watched")).toBe(true);
          expect(own.reduce((sum, load) => sum + load.pieces, 0)).toBeLessThanOrEqual(pieces);
        }
        for (const { looksMin, takeOutMin, pieces, loadFraction } of loads) {
          expect(takeOutMin).toBeGreaterThanOrEqual(1);
          expect(pieces).toBeGreaterThanOrEqual(1);
          if (pieces > 1) expect(loadFraction).toBeLessThanOrEqual(0.6);
          expect(looksMin.length).toBeLessThanOrEqual(6);
          for (const [step, look] of looksMin.entries()) expect(look).toBeGreaterThan(looksMin[step - 1] ?? 0);
        }
        const own = kitchen.units === "us" ? setpointC * 1.8 + 32 : setpointC;
        if (setpointC > 130) expect(Math.abs(own - 5 * Math.round(own / 5))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it("says it in whole sentences, names pan and appliance, and probes the core in every plan", () => {
    fc.assert(
      fc.property(generatedKitchen(0), ({ kitchen, variant }) => {
        const { steps, cautions, slabs, applianceName, sentence, limit } = firstMorning({
          kitchen,
          variantId: variant.variantId,
        });
        for (const { sentence: step } of steps) {
          expect(step).toMatch(/^[A-Z].*\.$/);
          expect(step).not.toMatch(/NaN|Infinity|undefined|null| {2}|\d{7}|\d\.\d{3}/);
        }
        for (const { panName } of slabs) expect(sentence).toContain(panName);
        expect(sentence).toContain(applianceName);
        const loads = steps.filter((step) => step.of === "load").map((step) => step.sentence);
        expect(loads[0]).toContain("read the core");
        expect(loads[0]).toContain(`below ${limitText(limit, kitchen.units)} put them back or throw them away`);
        expect(cautions[0]).toContain("Core at least");
        expect(cautions.some((caution) => caution.startsWith("The pieces are raw"))).toBe(limit.raw);
      }),
      { numRuns: 60 },
    );
  });

  it("takes two of one pan, or another pan of its kind, or the same one again", () => {
    const at = (pans: typeof demo.pans): readonly string[] =>
      firstMorning({ kitchen: { ...demo, trials: [], pans }, variantId: "beet-lentil" }).slabs.map(
        ({ panId }) => panId,
      );
    const half = demo.pans.find(({ id }) => id === "half-sheet")!;
    const quarter = demo.pans.find(({ id }) => id === "quarter-sheet")!;
    const wells = demo.pans.find(({ shape }) => shape === "wells")!;
    expect(at([half, quarter])).toEqual(["half-sheet", "half-sheet"]);
    expect(at([{ ...half, count: 1 }, wells, quarter])).toEqual(["half-sheet", "quarter-sheet"]);
    expect(at([{ ...half, count: 1 }, wells])).toEqual(["half-sheet", "half-sheet"]);
  });

  it("fills wells lower rather than over three quarters, as a batter rises", () => {
    const { slabs, steps } = firstMorning({ kitchen: { ...demo, trials: [] }, variantId: "corn-puff" });
    expect(slabs[1].thicknessMm).toBeLessThan(slabs[0].thicknessMm);
    expect(steps[0].sentence).toMatch(/^Fill the 24 wells of a mini-well pan with 330 g/);
    expect(steps.some((step) => step.of === "cut")).toBe(false);
  });

  it("forgets the trials that are there: it is the plan of the first morning", () => {
    expect(firstMorning({ kitchen: demo, variantId: "beet-lentil" }).loads).toEqual(
      firstMorning({ kitchen: { ...demo, trials: [] }, variantId: "beet-lentil" }).loads,
    );
  });

  it("refuses a variant of which nothing is left to cut, and says where to look", () => {
    const [first, ...others] = demo.variants;
    const variants = [{ ...first, trimMm: 400 }, ...others];
    expect(() => firstMorning({ kitchen: { ...demo, trials: [], variants }, variantId: first.variantId })).toThrow(
      "must leave pieces to cut on its pan: look at its batch, rows, columns and trim",
    );
  });
});
