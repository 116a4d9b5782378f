import { describe, expect, it } from "vitest";
import { reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { type Decision, decide } from "../../../../kernel-lib/library/src/advice/window/decide";
import { judgeWindow } from "../../../../kernel-lib/library/src/advice/window/judge-window";
import { otherPans } from "../../../../kernel-lib/library/src/advice/window/other-pans";
import { GOOD_CHANCE } from "../../../../kernel-lib/library/src/crisp/window/card-time";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { variantOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import { decisionTable } from "../../../../kernel-lib/library/src/views/advice/decision-table";
import { decisionText } from "../../../../kernel-lib/library/src/views/advice/decision-text";

const kitchen = loadKitchen();
const decisions = decide({ kitchen });
const of = (variantId: string, panId: string): Decision =>
  decisions.find((one) => one.variantId === variantId && one.panId === panId)!;
const withOutcome = decisions.filter((decision) => decision.outcome !== null);

describe("decide", () => {
  it("judges every variant on every pan once", () => {
    expect(decisions).toHaveLength(kitchen.variants.length * kitchen.pans.length);
    expect(new Set(decisions.map(({ variantId, panId }) => `${variantId} on ${panId}`)).size).toBe(decisions.length);
  });

  it("holds every time to the limit that the variant has by what is in it", () => {
    for (const { variantId, core, outcome } of decisions) {
      expect(core).toEqual(variantOf(kitchen, variantId).limit);
      if (outcome !== null) expect(outcome.window.limit).toEqual(core);
    }
    const limit = { ...variantOf(kitchen, "corn-puff").limit, limitC: 80 };
    const variants = kitchen.variants
      .filter(({ variantId }) => variantId === "corn-puff")
      .map((variant) => ({ ...variant, limit }));
    const stricter = { ...kitchen, variants };
    expect(decide({ kitchen: stricter }).map(({ core }) => core.limitC)).toEqual(kitchen.pans.map(() => 80));
    expect(otherPans({ kitchen: stricter, variantId: "corn-puff" }).limit.limitC).toBe(80);
  });

  it("says what the window says, which keeps the pan that a variant was tuned on or names what stands against it", () => {
    for (const variant of kitchen.variants) {
      const { advice, verdict, outcome } = of(variant.variantId, variant.panId);
      expect(verdict).toContain(judgeWindow(outcome!.window).verdict);
      if (advice === "keep") expect(outcome!.window.recommended.success).toBeGreaterThanOrEqual(GOOD_CHANCE);
    }
    expect(of("beet-lentil", "half-sheet").advice).toBe("keep");
  });

  it("gives a setting the time and the chance that its card has, on every pan", () => {
    for (const { variantId, panId, outcome } of withOutcome) {
      const { calibration, recommended } = outcome!.window;
      const card = reheatCard({ kitchen, variantId, panId, calibration });
      expect(card.window.recommended.cardMin, `${variantId} on ${panId}`).toBe(outcome!.reheatMin);
      expect(card.window.recommended.success).toBe(recommended.success);
    }
  });

  it("lists what could be changed, of which the verdict names the first", () => {
    for (const { advice, verdict, remedies } of decisions) {
      expect(remedies.length > 0).toBe(verdict.includes("Try: "));
      if (remedies.length > 0) expect(verdict).toContain(remedies[0].sentence);
      if (advice === "keep") expect(remedies).toEqual([]);
    }
  });

  it("holds the curve through the log beside the window, as a witness that decides nothing", () => {
    const { witness, window } = of("beet-lentil", "half-sheet").outcome!;
    expect(witness.agrees).toBe(true);
    expect(Math.abs((witness.timeMin as number) / window.crisp.min - 1)).toBeLessThan(0.1);
    expect(witness.sentence).toMatch(/^the curve says crisp at [\d.]+ min, the clocks [\d.]+: they agree/);
  });

  it("never calls a reheat done before the core is safe, nor keeps one that takes too long", () => {
    for (const { outcome, core, advice, variantId } of withOutcome) {
      const { coreSafeMin, reheatMin } = outcome!;
      expect(core.limitC).toBeGreaterThanOrEqual(60);
      expect(core.caution).toContain("thermometer");
      expect(reheatMin).toBeGreaterThanOrEqual(coreSafeMin);
      if (advice === "keep") expect(reheatMin).toBeLessThanOrEqual(variantOf(kitchen, variantId).longestMin);
    }
  });

  it("calls nothing kept that was not tried", () => {
    for (const { outcome, advice, triedMm } of withOutcome)
      if (advice === "keep") {
        expect(outcome!.slab.thicknessMm).toBeGreaterThanOrEqual(0.95 * triedMm![0]);
        expect(outcome!.slab.thicknessMm).toBeLessThanOrEqual(1.06 * triedMm![1]);
        expect(outcome!.window.standing).toBe("tried");
      }
    expect(of("turkey-sage", "three-quarter-sheet").advice).not.toBe("keep");
    expect(of("turkey-sage", "three-quarter-sheet").outcome!.window.extrapolation.join()).toMatch(
      /mm is outside the trials/,
    );
  });

  it("gives the first thing to change beside what does not do", () => {
    expect(of("beet-lentil", "quarter-sheet").verdict).toMatch(/^too thick: .*\. Try: reduce the batch to \d+ g/);
    expect(of("beet-lentil", "eighth-sheet").verdict).toMatch(/^does not fit: it holds \d+ g\. Try: /);
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
      expect(quarter.window.crisp.min).toBeGreaterThan(half.window.crisp.min);
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
      expect(text.replace(/\s+/g, " ")).toContain(verdict);
      expect(text).toContain(variantName);
      expect(text.replace(/\s+/g, " ")).toContain(core.caution);
    }
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });
});
