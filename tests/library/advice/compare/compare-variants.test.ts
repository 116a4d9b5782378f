import { describe, expect, it } from "vitest";
import { compareVariants, VARIANT_METRICS } from "../../../../kernel-lib/library/src/advice/compare/compare-variants";
import { decide } from "../../../../kernel-lib/library/src/advice/window/decide";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { slabThickness } from "../../../../kernel-lib/library/src/pan/slab-thickness";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";
import { panOf } from "../../../../kernel-lib/library/src/trials/kitchen-lookup";
import {
  compareVariantsFigure,
  variantDifferencesFigure,
} from "../../../../kernel-lib/library/src/views/advice/compare-variants-figure";
import {
  compareVariantsTable,
  variantDifferencesTable,
} from "../../../../kernel-lib/library/src/views/advice/compare-variants-table";
import { comparisonText } from "../../../../kernel-lib/library/src/views/advice/comparison-text";
import { pieceSpread } from "../../../../kernel-lib/library/src/yield/piece-spread";

const kitchen = loadKitchen(new URL("../../../../data", import.meta.url).pathname);
const decisions = decide({ kitchen });
const comparison = compareVariants({ kitchen, decisions });

/** The kitchen with a second variant that is the first under another name, with the same trials. */
function withTwin(id: string): Kitchen {
  const twin = { ...kitchen.variants.find((variant) => variant.variantId === id)!, variantId: "twin", name: "twin" };
  const trials = kitchen.trials
    .filter((trial) => trial.variantId === id)
    .map((trial) => ({ ...trial, variantId: "twin" }));
  return { ...kitchen, variants: [...kitchen.variants, twin], trials: [...kitchen.trials, ...trials] };
}

describe("compareVariants", () => {
  it("takes its values from the decisions on each variant's own pan", () => {
    for (const { variantId, metrics } of comparison.variants) {
      const { panId } = kitchen.variants.find((variant) => variant.variantId === variantId)!;
      const { outcome } = decisions.find((one) => one.variantId === variantId && one.panId === panId)!;
      expect(metrics.thicknessMm!.value).toBeCloseTo(outcome!.slab.thicknessMm, 10);
      expect(metrics.crispMin!.value).toBeCloseTo(outcome!.window.crisp.min, 10);
      expect(metrics.energyKcal!.value).toBeCloseTo(outcome!.macros.perServing.energyKcal.value, 6);
      const [low, high] = outcome!.window.crisp.interval95;
      expect(metrics.crispMin!.interval95[1] - metrics.crispMin!.interval95[0]).toBeCloseTo(high - low, 2);
      expect(metrics.costPerServing).toBeNull();
    }
  });

  it("compares every pair by every metric that is known", () => {
    const count = comparison.variants.length;
    const known = VARIANT_METRICS.filter((metric) => comparison.variants[0].metrics[metric] !== null);
    expect(comparison.differences).toHaveLength((known.length * count * (count - 1)) / 2);
  });

  it("finds no difference between a variant and its twin, and lets the shared food table cancel", () => {
    const { variants, differences } = compareVariants({
      kitchen: withTwin("beet-lentil"),
      variantIds: ["beet-lentil", "twin"],
    });
    for (const one of differences) {
      expect(one.difference).toBe(0);
      expect(one.real).toBe(false);
      expect(one.adjustedPValue).toBe(1);
    }
    const fat = differences.find((one) => one.metric === "fatG")!;
    const protein = differences.find((one) => one.metric === "proteinG")!;
    const seOf = (metric: "fatG" | "proteinG"): number => variants[0].metrics[metric]!.standardError;
    expect(protein.standardError).toBeLessThan(0.75 * Math.SQRT2 * seOf("proteinG"));
    expect(fat.standardError).toBeLessThan(Math.SQRT2 * seOf("fatG"));
    const crisp = differences.find((one) => one.metric === "crispMin")!;
    expect(crisp.standardError).toBeCloseTo(Math.SQRT2 * variants[0].metrics.crispMin!.standardError, 10);
  });

  it("adjusts p values as Holm does, by hand for three pairs", () => {
    const three = compareVariants({
      kitchen,
      variantIds: ["beet-lentil", "turkey-sage", "chickpea-carrot"],
      decisions,
    });
    for (const metric of ["yieldPercent", "crispMin"] as const) {
      const pairs = three.differences.filter((one) => one.metric === metric).sort((a, b) => a.pValue - b.pValue);
      const first = Math.min(1, 3 * pairs[0].pValue);
      const second = Math.max(first, Math.min(1, 2 * pairs[1].pValue));
      const third = Math.max(second, pairs[2].pValue);
      expect(pairs.map((one) => one.adjustedPValue)).toEqual([first, second, third]);
    }
  });

  it("turns round with the order of the pair", () => {
    const one = compareVariants({ kitchen, variantIds: ["beet-lentil", "turkey-sage"], decisions }).differences[2];
    const other = compareVariants({ kitchen, variantIds: ["turkey-sage", "beet-lentil"], decisions }).differences[2];
    expect(other.difference).toBeCloseTo(-one.difference, 12);
    expect(other.pValue).toBeCloseTo(one.pValue, 12);
  });

  it("prices a serving when every ingredient has a price", () => {
    const priced = { ...kitchen, ingredients: kitchen.ingredients.map((one) => ({ ...one, costPerKg: 4 })) };
    const { variants } = compareVariants({ kitchen: priced, variantIds: ["beet-lentil", "corn-puff"], decisions });
    const { pieceG, costPerServing } = variants[0].metrics;
    expect(costPerServing!.value).toBeCloseTo((4 * 4 * pieceG!.value) / 1000, 9);
  });

  it("refuses one variant, and one that does not exist", () => {
    expect(() => compareVariants({ kitchen, variantIds: ["beet-lentil", "beet-lentil"] })).toThrow(
      "two variants or more",
    );
    expect(() => compareVariants({ kitchen, variantIds: ["beet-lentil", "beet"], decisions })).toThrow("beet");
  });

  it("spreads pieces by the unevenness of the window's calibration, the usual 3 % where nobody probed twice", () => {
    const once = kitchen.trials.map((trial) => ({ ...trial, thicknessSdMm: null }));
    const ids = ["beet-lentil", "chickpea-carrot"];
    const variants = kitchen.variants.filter(({ variantId }) => ids.includes(variantId));
    const unprobed = { ...kitchen, trials: once, variants };
    for (const [own, made] of [
      [kitchen, decisions],
      [unprobed, decide({ kitchen: unprobed })],
    ] as const) {
      const { metrics } = compareVariants({ kitchen: own, variantIds: ids, decisions: made }).variants[0];
      const { pieces, window } = made.find((one) => one.variantId === ids[0] && one.panId === "half-sheet")!.outcome!;
      const { unevenness } = window.calibration;
      if (own === unprobed) expect(unevenness).toBeCloseTo(0.03, 12);
      const { meanStandardErrorG } = pieceSpread({ ...pieces, thicknessCvPercent: 100 * unevenness });
      expect(metrics.pieceG!.standardError).toBeCloseTo(meanStandardErrorG, 12);
    }
  });
});

describe("compareVariants on probes that read high", () => {
  /** The kitchen with every trial's probes set to its mass thickness times a factor, each trial so often. */
  function probing(factorOf: (variantId: string, index: number) => number, repeats = 1): Kitchen {
    let index = 0;
    const trials = kitchen.trials.flatMap((trial) => {
      if (trial.batchG === null || trial.probesMm.length === 0) return [trial];
      const variant = kitchen.variants.find((one) => one.variantId === trial.variantId)!;
      const { thicknessMm } = slabThickness({
        pan: panOf(kitchen, trial.panId),
        batchG: trial.batchG,
        densityKgM3: variant.densityKgM3,
      });
      return Array.from({ length: repeats }, (_, copy) => ({
        ...trial,
        trialId: `${trial.trialId}-${copy}`,
        probesMm: [thicknessMm * factorOf(trial.variantId, index++)],
      }));
    });
    return { ...kitchen, trials };
  }
  const thicknesses = (given: Kitchen) => {
    const { variants, differences } = compareVariants({
      kitchen: given,
      variantIds: ["beet-lentil", "turkey-sage"],
      decisions,
    });
    const [beet, turkey] = variants.map(({ metrics }) => metrics.thicknessMm!);
    return { beet, turkey, difference: differences.find((one) => one.metric === "thicknessMm")! };
  };

  it("keeps a bias that every probe shares, however many there are", () => {
    for (const repeats of [1, 4]) {
      const { beet } = thicknesses(probing(() => 1.08, repeats));
      expect(beet.standardError / beet.value).toBeGreaterThan(0.08);
      expect(beet.standardError / beet.value).toBeLessThan(0.085);
      expect(beet.interval95[1]).toBeGreaterThan(1.08 * beet.value);
    }
  });
  it("lets that bias cancel in a difference but for the thickness it is a share of", () => {
    const { beet, turkey, difference } = thicknesses(probing(() => 1.08));
    expect(difference.standardError).toBeGreaterThan(0.08 * Math.abs(beet.value - turkey.value));
    expect(difference.standardError).toBeLessThan(0.08 * Math.abs(beet.value - turkey.value) + 0.01 * beet.value);
  });
  it("does not let a bias cancel that one variant has alone, such as a wrong density", () => {
    const { difference, beet } = thicknesses(probing((id) => (id === "beet-lentil" ? 1.1 : 1)));
    expect(difference.standardError / beet.value).toBeGreaterThan(0.078);
  });
  it("divides scatter, and scatter alone, by the root of the number of trials", () => {
    const scattered = (_: string, index: number): number => (index % 2 === 0 ? 1.06 : 0.94);
    const share = (given: Kitchen): number => {
      const { beet } = thicknesses(given);
      return beet.standardError / beet.value;
    };
    const trials = kitchen.trials.filter(
      (one) => one.variantId === "beet-lentil" && one.batchG !== null && one.probesMm.length > 0,
    ).length;
    expect(share(probing(scattered)) / (0.06 / Math.sqrt(trials))).toBeCloseTo(1, 1);
    expect(share(probing(scattered, 4)) / (0.06 / Math.sqrt(4 * trials))).toBeCloseTo(1, 1);
  });
});

describe("the figures and tables of a comparison", () => {
  it("shows every variant with its interval, markers that differ, and the unit on the axis", () => {
    const figure = compareVariantsFigure(comparison, "energyKcal");
    const traces = figure.data as { marker: { symbol: string; color: string }; x: number[] }[];
    expect(new Set(traces.map((trace) => trace.marker.symbol)).size).toBe(comparison.variants.length);
    expect(traces.map((trace) => trace.x[0])).toEqual(comparison.variants.map((one) => one.metrics.energyKcal!.value));
    expect(JSON.stringify(figure.layout)).toContain("energy (kcal per serving)");
    for (const { variantName } of comparison.variants) expect(figure.summary).toContain(variantName);
    expect(() => compareVariantsFigure(comparison, "costPerServing")).toThrow("must be known");
  });

  it("splits differences in real and not shown, every pair once", () => {
    const figure = variantDifferencesFigure(comparison, "yieldPercent");
    const traces = figure.data as { name: string; x: number[] }[];
    const pairs = comparison.differences.filter((one) => one.metric === "yieldPercent");
    expect(traces[0].x).toHaveLength(pairs.filter((pair) => pair.real).length);
    expect(traces[0].x.length + traces[1].x.length).toBe(pairs.length);
    expect(() => variantDifferencesFigure(comparison, "costPerServing")).toThrow("must be known for two variants");
  });

  it("says in words who is lowest and highest, and whether that is real", () => {
    const lines = comparisonText(comparison).split("\n");
    expect(lines).toHaveLength(VARIANT_METRICS.length - 1);
    const crisp = lines.find((line) => line.startsWith("crisp time"))!;
    const times = comparison.variants.map((variant) => variant.metrics.crispMin!.value);
    const name = (time: number): string => comparison.variants[times.indexOf(time)].variantName;
    expect(crisp).toContain(
      `${name(Math.min(...times))} ${Number(Math.min(...times).toPrecision(3))} to ${name(Math.max(...times))}`,
    );
    expect(crisp).toContain("a real difference");
    const twins = compareVariants({ kitchen: withTwin("beet-lentil"), variantIds: ["beet-lentil", "twin"] });
    expect(comparisonText(twins)).toContain("not shown to differ; 0 of 1 pairs differ");
  });

  it("prints a column a variant, and leaves out what nobody knows", () => {
    const table = compareVariantsTable(comparison);
    expect(table.columns).toHaveLength(1 + comparison.variants.length);
    expect(table.rows.map((row) => row[0])).not.toContain("cost of the mix (per serving)");
    expect(variantDifferencesTable(comparison).rows).toHaveLength(comparison.differences.length);
  });
});
