import { fail } from "../../check/check";
import { ownValue } from "../../check/own-value";
import { tooLittle } from "../../check/too-little";
import { formulaTotals } from "../../food/formula/formula-totals";
import type { NutrientName } from "../../food/ingredient/nutrients";
import { type PieceMacros, pieceMacros } from "../../macros/piece-macros";
import { slabThickness } from "../../pan/slab-thickness";
import { studentTPValue, studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { panOf, variantOf } from "../../trials/kitchen-lookup";
import type { KitchenUnits } from "../../units/unit-table";
import { pieceSpread } from "../../yield/piece-spread";
import { type Decision, decideOwnPan } from "../window/decide";

/** What variants are compared by: means over the batch, a serving as eaten. */
export type VariantMetric =
  | "thicknessMm"
  | "pieceG"
  | "crispMin"
  | "yieldPercent"
  | "servingG"
  | "energyKcal"
  | "proteinG"
  | "fatG"
  | "carbohydrateG"
  | "sodiumMg"
  | "costPerServing";

/** The metrics in the order that tables and figures show them. */
export const VARIANT_METRICS: readonly VariantMetric[] = Object.freeze([
  "thicknessMm",
  "pieceG",
  "crispMin",
  "yieldPercent",
  "servingG",
  "energyKcal",
  "proteinG",
  "fatG",
  "carbohydrateG",
  "sodiumMg",
  "costPerServing",
] as const);

/** How a person reads each metric, with its unit. */
export const VARIANT_METRIC_LABELS: Readonly<Record<VariantMetric, string>> = Object.freeze({
  thicknessMm: "slab thickness (mm)",
  pieceG: "bare piece (g)",
  crispMin: "crisp time (min)",
  yieldPercent: "reheat yield (%)",
  servingG: "serving as eaten (g)",
  energyKcal: "energy (kcal per serving)",
  proteinG: "protein (g per serving)",
  fatG: "fat (g per serving)",
  carbohydrateG: "carbohydrate (g per serving)",
  sodiumMg: "sodium (mg per serving)",
  costPerServing: "cost of the mix (per serving)",
});

/** One variant's mean of one metric. */
export interface MetricEstimate {
  readonly value: number;
  /** of the mean over the batch or of the fitted curve, not of one piece or one reheat */
  readonly standardError: number;
  /** Infinity where the doubt is judged, not counted from trials */
  readonly degreesOfFreedom: number;
  readonly interval95: readonly [number, number];
}

/** One variant on its own pan, appliance and setpoint. */
export interface ComparedVariant {
  readonly variantId: string;
  readonly variantName: string;
  /** `null` where it is not known */
  readonly metrics: Readonly<Record<VariantMetric, MetricEstimate | null>>;
  /** core limit and caution that stand beside the crisp time */
  readonly core: Decision["core"];
}

/** The difference between two variants by one metric. */
export interface VariantDifference {
  readonly metric: VariantMetric;
  readonly variantId: string;
  readonly otherId: string;
  /** first less other */
  readonly difference: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
  /** of this difference alone */
  readonly interval95: readonly [number, number];
  readonly pValue: number;
  /** Holm's: allows for all pairs compared by this metric */
  readonly adjustedPValue: number;
  /** adjusted p below 0.05 */
  readonly real: boolean;
}

/** Variants side by side. */
export interface VariantComparison {
  readonly variants: readonly ComparedVariant[];
  /** every pair by every metric that both have */
  readonly differences: readonly VariantDifference[];
  readonly notes: readonly string[];
  /** the kitchen's own */
  readonly units: KitchenUnits;
}

/** What `compareVariants` takes. */
export interface CompareVariantsOptions {
  /** from `loadKitchen` */
  readonly kitchen: Kitchen;
  /** two or more; all of the kitchen's unless given */
  readonly variantIds?: readonly string[];
  /** from `decide`, where it has been worked out already */
  readonly decisions?: readonly Decision[];
}

/** Standard error of the mean thickness where no trial has both probes and batch mass: our judgement (% of thickness). */
const THICKNESS_SE_PERCENT = 3;

/**
 * Puts variants side by side, each on its own pan, appliance and setpoint: thickness, piece, crisp time, reheat yield,
 * serving and macros, cost; and says which differences are real.
 *
 * A difference's standard error is √(se² + se²_other − 2·cov). What two mixes share is the food table: an ingredient
 * that both hold is off by the same share in both, and cancels in the difference. So does a share by which all variants'
 * probes stray from the thickness of the batch mass: a probe, a scale or a pan that is off is off for all, and no number of
 * trials makes that smaller. Trials are separate and count as independent. Degrees of freedom by Welch–Satterthwaite;
 * p values of the pairs of one metric by Holm (1979).
 *
 * @param options the kitchen, and which variants of it
 * @returns metrics with intervals, and differences with p values
 * @example
 * const comparison = compareVariants({ kitchen: loadKitchen(), variantIds: ["beet-lentil", "chickpea-carrot"] });
 * const protein = comparison.differences.find((one) => one.metric === "proteinG");
 * protein?.real; // → true
 * protein?.difference; // → -4.28
 */
export function compareVariants(options: CompareVariantsOptions): VariantComparison {
  const { kitchen } = options;
  const ids = options.variantIds ?? kitchen.variants.map((variant) => variant.variantId);
  if (options.variantIds === undefined && ids.length < 2)
    tooLittle("compareVariants", alone(kitchen.variants.map(({ name }) => name)));
  if (new Set(ids).size < 2) fail("compareVariants: variantIds", "must name two variants or more", ids);
  const decisions = options.decisions ?? [...new Set(ids)].map((id) => decideOwnPan({ kitchen, variantId: id }));
  const probes = probeDoubt(kitchen);
  const cases = [...new Set(ids)].map((id) => caseOf(kitchen, variantOf(kitchen, id), decisions, probes));
  const differences = VARIANT_METRICS.flatMap((metric) => differencesBy(metric, cases, probes));
  return Object.freeze({
    variants: Object.freeze(cases.map(({ compared }) => compared)),
    differences: Object.freeze(differences),
    notes: Object.freeze([
      "Means: of all pieces of a batch, of crisp time and yield as the clocks have them. One piece or one reheat varies more.",
      "Real: chance alone would make such a difference in fewer than 5 of 100 comparisons, all pairs of a quantity taken together. Not real means not shown, not equal.",
      "Macros are estimates from a food table; what two mixes share of its doubt cancels in their difference.",
      ...new Set(cases.map(({ compared }) => `${compared.variantName}: ${compared.core.caution}`)),
    ]),
    units: kitchen.units,
  });
}

function alone(names: readonly string[]): string {
  const held = names.length === 0 ? "no variant" : `one variant, ${names[0]}`;
  return `The kitchen has ${held}: a second one, with trials of its own, gives something to compare.`;
}

interface Case {
  readonly compared: ComparedVariant;
  readonly macros: PieceMacros;
}

function caseOf(kitchen: Kitchen, variant: KitchenVariant, decisions: readonly Decision[], probes: ProbeDoubt): Case {
  const { variantId } = variant;
  const decision = decisions.find((one) => one.variantId === variantId && one.panId === variant.panId);
  const outcome = decision?.outcome;
  if (!decision || !outcome) return fail("compareVariants: variant", "must fit its own pan", variantId);
  const { slab, pieces, window } = outcome;
  const { crisp, recommended } = window;
  const thickness = probes.ofVariant(variantId);
  const spread = pieceSpread({
    pieceG: pieces.pieceG,
    pieces: pieces.pieces,
    thicknessCvPercent: 100 * window.calibration.unevenness,
    pieceLengthMm: pieces.pieceLengthMm,
    pieceWidthMm: pieces.pieceWidthMm,
  });
  const totals = formulaTotals(variant.formula, kitchen.ingredients);
  const macros = pieceMacros({
    totals,
    pieceG: pieces.pieceG,
    pieceSeG: spread.meanStandardErrorG,
    surfaceMm2: pieces.surfaceMm2,
    reheat: { yieldPercent: 100 - recommended.lossPercent, yieldSePercent: recommended.lossSdPercent },
  });
  const { perServing, piecesPerServing } = macros;
  const endless = Number.POSITIVE_INFINITY;
  const serving = (name: NutrientName): MetricEstimate =>
    estimate(perServing[name].value, perServing[name].standardError, endless);
  const cost = totals.costPerKg;
  const servingMixG = piecesPerServing * pieces.pieceG;
  return {
    macros,
    compared: Object.freeze({
      variantId,
      variantName: variant.name,
      core: decision.core,
      metrics: Object.freeze({
        thicknessMm: estimate(slab.thicknessMm, thickness.share * slab.thicknessMm, thickness.degreesOfFreedom),
        pieceG: estimate(pieces.pieceG, spread.meanStandardErrorG, pieces.pieces - 1),
        crispMin: estimate(crisp.min, (crisp.interval95[1] - crisp.interval95[0]) / 3.92, endless),
        yieldPercent: estimate(100 - recommended.lossPercent, recommended.lossSdPercent, endless),
        servingG: estimate(
          piecesPerServing * macros.eatenG.value,
          piecesPerServing * macros.eatenG.standardError,
          endless,
        ),
        energyKcal: serving("energyKcal"),
        proteinG: serving("proteinG"),
        fatG: serving("fatG"),
        carbohydrateG: serving("carbohydrateG"),
        sodiumMg: serving("sodiumMg"),
        costPerServing:
          cost === null
            ? null
            : estimate(
                (cost * servingMixG) / 1000,
                (cost * piecesPerServing * spread.meanStandardErrorG) / 1000,
                pieces.pieces - 1,
              ),
      }),
    }),
  };
}

/** How far probed thickness strays from that of the batch mass, as shares of it. */
interface ProbeDoubt {
  /** by which all variants' probes are off together */
  readonly shared: number;
  /** standard error of one variant's mean thickness, the shared part included */
  readonly ofVariant: (variantId: string) => { readonly share: number; readonly degreesOfFreedom: number };
}

/**
 * Parts a variant's strays into what all variants share, what the variant has alone (its density, say) and the scatter of its
 * trials. Only the scatter shrinks with the root of their number; of it and the variant's own part the larger counts.
 */
function probeDoubt(kitchen: Kitchen): ProbeDoubt {
  const strays = new Map(kitchen.variants.map((variant) => [variant.variantId, straysOf(kitchen, variant)]));
  const means = [...strays.values()].filter((own) => own.length > 0).map(meanOf);
  const shared = means.length > 1 ? meanOf(means) : 0;
  return {
    shared,
    ofVariant: (variantId) => {
      const own = strays.get(variantId) ?? [];
      if (own.length < 2)
        return {
          share: Math.hypot(shared, THICKNESS_SE_PERCENT / 100),
          degreesOfFreedom: Number.POSITIVE_INFINITY,
        };
      const mean = meanOf(own);
      const square = own.reduce((sum, stray) => sum + (stray - mean) ** 2, 0) / (own.length - 1);
      const alone = Math.max(Math.abs(mean - shared), Math.sqrt(square / own.length));
      return { share: Math.hypot(shared, alone), degreesOfFreedom: own.length - 1 };
    },
  };
}

/** Each trial's mean probed thickness over that of its batch mass, less 1. */
function straysOf(kitchen: Kitchen, variant: KitchenVariant): number[] {
  return kitchen.trials
    .filter((trial) => trial.variantId === variant.variantId && trial.batchG !== null && trial.probesMm.length > 0)
    .map((trial) => {
      const pan = panOf(kitchen, trial.panId);
      const { thicknessMm } = slabThickness({ pan, batchG: trial.batchG as number, densityKgM3: variant.densityKgM3 });
      return meanOf(trial.probesMm) / thicknessMm - 1;
    });
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function estimate(value: number, standardError: number, degreesOfFreedom: number): MetricEstimate {
  const half = standardError * studentTQuantile(0.975, degreesOfFreedom);
  return Object.freeze({
    value,
    standardError,
    degreesOfFreedom,
    interval95: Object.freeze([value - half, value + half] as const),
  });
}

function differencesBy(metric: VariantMetric, cases: readonly Case[], probes: ProbeDoubt): VariantDifference[] {
  const pairs: Omit<VariantDifference, "adjustedPValue" | "real">[] = [];
  for (let first = 0; first < cases.length; first++) {
    for (let other = first + 1; other < cases.length; other++) {
      const a = cases[first].compared.metrics[metric];
      const b = cases[other].compared.metrics[metric];
      if (a === null || b === null) continue;
      const shared =
        metric === "thicknessMm"
          ? probes.shared ** 2 * a.value * b.value
          : sharedVariance(metric, cases[first].macros, cases[other].macros);
      const standardError = Math.sqrt(Math.max(0, a.standardError ** 2 + b.standardError ** 2 - 2 * shared));
      const degreesOfFreedom = welchSatterthwaite(a, b);
      const difference = a.value - b.value;
      const half = studentTQuantile(0.975, degreesOfFreedom) * standardError;
      pairs.push({
        metric,
        variantId: cases[first].compared.variantId,
        otherId: cases[other].compared.variantId,
        difference,
        standardError,
        degreesOfFreedom,
        interval95: Object.freeze([difference - half, difference + half] as const),
        pValue:
          standardError === 0 ? Number(difference === 0) : studentTPValue(difference / standardError, degreesOfFreedom),
      });
    }
  }
  return withHolm(pairs);
}

function welchSatterthwaite(a: MetricEstimate, b: MetricEstimate): number {
  const variance = a.standardError ** 2 + b.standardError ** 2;
  const sum = a.standardError ** 4 / a.degreesOfFreedom + b.standardError ** 4 / b.degreesOfFreedom;
  return sum > 0 ? variance ** 2 / sum : Number.POSITIVE_INFINITY;
}

/** Covariance of two servings' nutrient through the ingredients that both mixes hold; 0 for what is no nutrient. */
function sharedVariance(metric: VariantMetric, a: PieceMacros, b: PieceMacros): number {
  const first = a.tableDoubt[metric as NutrientName];
  const other = b.tableDoubt[metric as NutrientName];
  if (!first || !other) return 0;
  const sum = Object.entries(first).reduce((total, [id, part]) => total + part * (ownValue(other, id) ?? 0), 0);
  return sum * a.piecesPerServing * b.piecesPerServing;
}

/** Holm's step-down: the smallest p value times the number of pairs, the next times one less, never falling. */
function withHolm(pairs: readonly Omit<VariantDifference, "adjustedPValue" | "real">[]): VariantDifference[] {
  const order = pairs.map((_, at) => at).sort((x, y) => pairs[x].pValue - pairs[y].pValue);
  const adjusted = new Array<number>(pairs.length);
  let least = 0;
  order.forEach((at, rank) => {
    least = Math.max(least, Math.min(1, pairs[at].pValue * (pairs.length - rank)));
    adjusted[at] = least;
  });
  return pairs.map((pair, at) => Object.freeze({ ...pair, adjustedPValue: adjusted[at], real: adjusted[at] < 0.05 }));
}
