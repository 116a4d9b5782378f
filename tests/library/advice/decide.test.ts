import { describe, expect, it } from "vitest";
import { type Decision, decide } from "../../../kernel-lib/library/src/advice/decide";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { slabThickness } from "../../../kernel-lib/library/src/pan/slab-thickness";
import { panOf, variantOf } from "../../../kernel-lib/library/src/trials/kitchen-lookup";
import { decisionTable } from "../../../kernel-lib/library/src/views/advice/decision-table";
import { decisionText } from "../../../kernel-lib/library/src/views/advice/decision-text";

const kitchen = loadKitchen();
const decisions = decide(kitchen);
const of = (variantId: string, panId: string): Decision =>
  decisions.find((one) => one.variantId === variantId && one.panId === panId)!;
const withOutcome = decisions.filter((decision) => decision.outcome !== null);

describe("decide", () => {
  it("judges every variant on every pan once", () => {
    expect(decisions).toHaveLength(kitchen.variants.length * kitchen.pans.length);
    expect(new Set(decisions.map(({ variantId, panId }) => `${variantId} on ${panId}`)).size).toBe(decisions.length);
  });

  it("keeps each variant on the pan it was tuned on, or says how many reheats run late", () => {
    for (const variant of kitchen.variants) {
      const { advice, verdict, outcome } = of(variant.variantId, variant.panId);
      if (outcome!.chanceTooLong > 0.1) expect(verdict).toMatch(/^on the edge: \d+ % run past/);
      else expect(advice).toBe("keep");
    }
    expect(of("beet-lentil", "half-sheet").advice).toBe("keep");
    expect(of("corn-puff", "mini-wells").advice).toBe("on the edge");
  });

  it("never calls a reheat done before the core is safe, nor keeps one that takes too long", () => {
    for (const { outcome, core, advice, variantId } of withOutcome) {
      const { crisp, coreSafeMin, reheatMin } = outcome!;
      expect(core.limitC).toBeGreaterThanOrEqual(60);
      expect(core.caution).toContain("thermometer");
      expect(reheatMin).toBeGreaterThanOrEqual(Math.max(crisp.timeMin, coreSafeMin));
      if (advice === "keep") expect(reheatMin).toBeLessThanOrEqual(variantOf(kitchen, variantId).longestMin);
    }
  });

  it("calls nothing kept that was not tried", () => {
    for (const { outcome, advice, triedMm } of withOutcome)
      if (advice === "keep") {
        expect(outcome!.slab.thicknessMm).toBeGreaterThanOrEqual(triedMm[0]);
        expect(outcome!.slab.thicknessMm).toBeLessThanOrEqual(triedMm[1]);
        expect(outcome!.crisp.extrapolated).toBe(false);
      }
    expect(of("turkey-sage", "three-quarter-sheet")).toMatchObject({ advice: "outside what was tried" });
    expect(of("turkey-sage", "three-quarter-sheet").verdict).toMatch(
      /thinner than 9\.\d to 16\.\d mm; log a trial first/,
    );
  });

  it("offers a split that really lands on a tried thickness", () => {
    for (const { variantId, panId, verdict, triedMm } of decisions) {
      const pans = Number(/split over (\d+) /.exec(verdict)?.[1] ?? Number.NaN);
      if (Number.isNaN(pans)) continue;
      const { batchG, densityKgM3 } = variantOf(kitchen, variantId);
      const { thicknessMm } = slabThickness({ pan: panOf(kitchen, panId), batchG: batchG / pans, densityKgM3 });
      expect(thicknessMm).toBeGreaterThanOrEqual(triedMm[0]);
      expect(thicknessMm).toBeLessThanOrEqual(triedMm[1]);
    }
    expect(of("beet-lentil", "quarter-sheet").verdict).toMatch(/^too thick, .*: split over 2 quarter sheets$/);
    expect(of("beet-lentil", "eighth-sheet").verdict).toMatch(/^does not fit .*\(the kitchen has 2\)$/);
  });

  it("neither makes nor loses mix: pieces and trim add up to the batch", () => {
    for (const { outcome, variantId } of withOutcome) {
      const { pieces } = outcome!;
      const { batchG } = variantOf(kitchen, variantId);
      expect((pieces.pieces * pieces.pieceG) / batchG).toBeCloseTo(pieces.yieldFraction, 1);
    }
  });

  it("gives thicker slabs of one variant more food a piece of the same cut, and a longer time", () => {
    for (const variant of kitchen.variants.filter(({ form }) => form === "slab")) {
      const half = of(variant.variantId, "half-sheet").outcome!;
      const quarter = of(variant.variantId, "quarter-sheet").outcome!;
      expect(quarter.pieces.pieceG).toBeGreaterThan(half.pieces.pieceG);
      expect(quarter.crisp.timeMin).toBeGreaterThan(half.crisp.timeMin);
      expect(quarter.macros.perPiece.energyKcal.value).toBeGreaterThan(half.macros.perPiece.energyKcal.value);
    }
  });

  it("tells batters and slabs apart", () => {
    expect(of("corn-puff", "half-sheet").advice).toBe("other kind of pan");
    expect(of("beet-lentil", "mini-wells").outcome).toBeNull();
  });
});

describe("decisionTable and decisionText", () => {
  it("print every number of a decision with the core limit beside the time", () => {
    const table = decisionTable(decisions);
    for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    expect(
      new Set(table.rows.map((row) => row[table.columns.findIndex(({ heading }) => heading === "core")])).has(null),
    ).toBe(false);
    const text = decisionText(decisions);
    for (const { verdict, variantName, core } of decisions) {
      expect(text).toContain(verdict);
      expect(text).toContain(variantName);
      expect(text).toContain(core.caution);
    }
    expect(
      Math.max(
        ...text
          .split("\n")
          .slice(0, -8)
          .map((line) => line.length),
      ),
    ).toBeLessThanOrEqual(125);
  });
});
