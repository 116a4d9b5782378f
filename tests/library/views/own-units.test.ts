import { describe, expect, it } from "vitest";
import { packCard } from "../../../kernel-lib/library/src/advice/card/pack-card";
import { reheatCard } from "../../../kernel-lib/library/src/advice/card/reheat-card";
import { compareVariants } from "../../../kernel-lib/library/src/advice/compare/compare-variants";
import { shoppingList } from "../../../kernel-lib/library/src/advice/cost/shopping-list";
import { reheatYield } from "../../../kernel-lib/library/src/advice/curve/reheat-yield";
import { variantCrispTime } from "../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { batchDay } from "../../../kernel-lib/library/src/advice/day/batch-day";
import { loadChoices } from "../../../kernel-lib/library/src/advice/load/load-choices";
import { matchPlan } from "../../../kernel-lib/library/src/advice/run-sheet/match-plan";
import { runSheet } from "../../../kernel-lib/library/src/advice/run-sheet/run-sheet";
import { trialPlan } from "../../../kernel-lib/library/src/advice/run-sheet/trial-plan";
import { packStock } from "../../../kernel-lib/library/src/advice/stock/pack-stock";
import { benchSheet } from "../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { explainTrial } from "../../../kernel-lib/library/src/advice/trial/explain-trial";
import { firstMorning } from "../../../kernel-lib/library/src/advice/trial/first-morning";
import { forecastRecord } from "../../../kernel-lib/library/src/advice/trial/forecast-record";
import { nextTrial } from "../../../kernel-lib/library/src/advice/trial/next-trial";
import { planMorning } from "../../../kernel-lib/library/src/advice/trial/plan-morning";
import { whatNext } from "../../../kernel-lib/library/src/advice/trial/what-next";
import { crispWindow } from "../../../kernel-lib/library/src/advice/window/crisp-window";
import { decide } from "../../../kernel-lib/library/src/advice/window/decide";
import { otherPans } from "../../../kernel-lib/library/src/advice/window/other-pans";
import { windowCalibration } from "../../../kernel-lib/library/src/advice/window/window-calibration";
import { windowMapOverSetpoint, windowMapOverTime } from "../../../kernel-lib/library/src/crisp/window/window-map";
import { formulaTotals } from "../../../kernel-lib/library/src/food/formula/formula-totals";
import { freezeToCut } from "../../../kernel-lib/library/src/heat/freezing/freeze-to-cut";
import { coreTime } from "../../../kernel-lib/library/src/heat/solver/core-time";
import { simulateSlab } from "../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../kernel-lib/library/src/trials/kitchen";
import { variantOf } from "../../../kernel-lib/library/src/trials/kitchen-lookup";
import { panelOf } from "../../../kernel-lib/library/src/trials/questions/panel-of";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import type { KitchenUnits } from "../../../kernel-lib/library/src/units/unit-table";
import {
  compareVariantsFigure,
  variantDifferencesFigure,
} from "../../../kernel-lib/library/src/views/advice/compare-variants-figure";
import {
  compareVariantsTable,
  variantDifferencesTable,
} from "../../../kernel-lib/library/src/views/advice/compare-variants-table";
import { comparisonText } from "../../../kernel-lib/library/src/views/advice/comparison-text";
import { decisionTable } from "../../../kernel-lib/library/src/views/advice/decision-table";
import { decisionText } from "../../../kernel-lib/library/src/views/advice/decision-text";
import { gainAheadFigure } from "../../../kernel-lib/library/src/views/advice/gain-ahead-figure";
import { morningTable } from "../../../kernel-lib/library/src/views/advice/morning-table";
import { nextTrialTable } from "../../../kernel-lib/library/src/views/advice/next-trial-table";
import { thicknessByPanFigure } from "../../../kernel-lib/library/src/views/advice/thickness-by-pan-figure";
import { trialGainFigure } from "../../../kernel-lib/library/src/views/advice/trial-gain-figure";
import { windowPansTable } from "../../../kernel-lib/library/src/views/advice/window-pans-table";
import { shoppingTable } from "../../../kernel-lib/library/src/views/cost/shopping-table";
import { stockTable } from "../../../kernel-lib/library/src/views/cost/stock-table";
import { clockFigure } from "../../../kernel-lib/library/src/views/crisp/clock-figure";
import { crispTimeFigure } from "../../../kernel-lib/library/src/views/crisp/crisp-time-figure";
import { crispTimeTable } from "../../../kernel-lib/library/src/views/crisp/crisp-time-table";
import { forecastFigure } from "../../../kernel-lib/library/src/views/crisp/forecast-figure";
import { forecastTable } from "../../../kernel-lib/library/src/views/crisp/forecast-table";
import { successFigure } from "../../../kernel-lib/library/src/views/crisp/success-figure";
import { windowFigure } from "../../../kernel-lib/library/src/views/crisp/window-figure";
import { windowMapFigure } from "../../../kernel-lib/library/src/views/crisp/window-map-figure";
import { windowTable } from "../../../kernel-lib/library/src/views/crisp/window-table";
import { coolingFigure } from "../../../kernel-lib/library/src/views/day/cooling-figure";
import { dayFigure } from "../../../kernel-lib/library/src/views/day/day-figure";
import { dayLimitsTable } from "../../../kernel-lib/library/src/views/day/day-limits-table";
import { dayNote } from "../../../kernel-lib/library/src/views/day/day-note";
import { dayTable } from "../../../kernel-lib/library/src/views/day/day-table";
import type { Figure } from "../../../kernel-lib/library/src/views/figure/figure";
import { formulaTable } from "../../../kernel-lib/library/src/views/food/formula-table";
import { freezeToCutFigure } from "../../../kernel-lib/library/src/views/heat/freeze-to-cut-figure";
import { freezeToCutTable } from "../../../kernel-lib/library/src/views/heat/freeze-to-cut-table";
import { profileFigure } from "../../../kernel-lib/library/src/views/heat/profile-figure";
import { temperatureCoreTable } from "../../../kernel-lib/library/src/views/heat/temperature-core-table";
import { temperatureTimeFigure } from "../../../kernel-lib/library/src/views/heat/temperature-time-figure";
import { loadChoicesTable } from "../../../kernel-lib/library/src/views/load/load-choices-table";
import { benchSheetText } from "../../../kernel-lib/library/src/views/log/bench-sheet-text";
import { coverageFigure } from "../../../kernel-lib/library/src/views/log/coverage-figure";
import { logTimelineFigure } from "../../../kernel-lib/library/src/views/log/log-timeline-figure";
import { panelScoresFigure } from "../../../kernel-lib/library/src/views/log/panel-scores-figure";
import { photosTable } from "../../../kernel-lib/library/src/views/log/photos-table";
import { pieceBalanceFigure } from "../../../kernel-lib/library/src/views/log/piece-balance-figure";
import { thicknessBalanceFigure } from "../../../kernel-lib/library/src/views/log/thickness-balance-figure";
import { trialGroupsTable } from "../../../kernel-lib/library/src/views/log/trial-groups-table";
import { designFigure } from "../../../kernel-lib/library/src/views/plan/design-figure";
import { planMatchTable } from "../../../kernel-lib/library/src/views/plan/plan-match-table";
import { runSheetTable } from "../../../kernel-lib/library/src/views/plan/run-sheet-table";
import type { Table } from "../../../kernel-lib/library/src/views/table/table";
import { tableText } from "../../../kernel-lib/library/src/views/table/table-text";
import { batchFlowFigure } from "../../../kernel-lib/library/src/views/yield/batch-flow-figure";
import { batchFlowTable } from "../../../kernel-lib/library/src/views/yield/batch-flow-table";
import { coatingPlanTable } from "../../../kernel-lib/library/src/views/yield/coating-plan-table";
import { coatingThicknessFigure } from "../../../kernel-lib/library/src/views/yield/coating-thickness-figure";
import { reheatYieldFigure } from "../../../kernel-lib/library/src/views/yield/reheat-yield-figure";
import { yieldLossFigure } from "../../../kernel-lib/library/src/views/yield/yield-loss-figure";
import { batchFlow } from "../../../kernel-lib/library/src/yield/batch-flow";
import { coatingPlan } from "../../../kernel-lib/library/src/yield/coating-plan";
import { fitLoss } from "../../../kernel-lib/library/src/yield/fit-loss";
import { foods } from "../heat/foods";

const demo = loadKitchen();
const variantId = demo.variants[0].variantId;

/** The first variant of the demo alone, as a kitchen with dials in fives of °F has it: its own setpoint is 390 °F. */
function kitchenIn(units: KitchenUnits, settingC: number): Kitchen {
  const variant = variantOf(demo, variantId);
  const other = demo.variants[1];
  const near = (setpointC: number): number => settingC + (setpointC - variant.setpointC);
  return {
    ...demo,
    units,
    pans: demo.pans.slice(0, 3),
    variants: [{ ...variant, setpointC: settingC }, other],
    trials: demo.trials.flatMap((trial) =>
      trial.variantId === variantId
        ? [{ ...trial, setpointC: near(trial.setpointC) }]
        : trial.variantId === other.variantId
          ? [trial]
          : [],
    ),
  };
}

/** Every view of the library that speaks of sizes, weights or temperatures, each as the texts that a person reads. */
function textsOf(kitchen: Kitchen): ReadonlyMap<string, readonly string[]> {
  const { units } = kitchen;
  const calibration = windowCalibration({ kitchen, variantId });
  const window = crispWindow({ kitchen, variantId, calibration, draws: 200 });
  const far = crispWindow({ kitchen, variantId, calibration, draws: 200, setpointC: 225, startC: 4, thicknessMm: 22 });
  const pans = otherPans({ kitchen, variantId, calibration, draws: 100 });
  const decisions = decide({ kitchen });
  const crispTime = variantCrispTime({ kitchen, variantId });
  const comparison = compareVariants({ kitchen, decisions });
  const record = forecastRecord({ kitchen, variantId });
  const food = foods.reference;
  const rows = [8, 12].map((thicknessMm) => ({
    label: "rack",
    thicknessMm,
    freezing: freezeToCut({ food, thicknessMm, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 }),
  }));
  const run = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
  const core = coreTime({ food, thicknessMm: 12.7, airC: 204, coefficientWm2K: 40 });
  const few = { kitchen, variantId, calibration, setpointsC: [variantOf(kitchen, variantId).setpointC] };
  const next = nextTrial({ ...few, question: { kind: "pan" } });
  const morning = planMorning({ ...few, trials: 2 });
  // as the last trial of the log, but for all that can be otherwise
  const last = kitchen.trials.filter((trial) => trial.variantId === variantId).at(-1);
  const planned = trialPlan({
    kitchen: { ...kitchen, trials: [] },
    name: "monday",
    today: "2000-01-01",
    trials: [
      { variantId, trialId: last?.trialId, batchG: 300, thicknessMm: 30, setpointC: 150, loadFraction: 1, timeMin: 2 },
    ],
  });
  const variant = variantOf(kitchen, variantId);
  const totals = formulaTotals(variant.formula, kitchen.ingredients);
  const coated = kitchen.variants.find(({ formula }) => formula.coating[0]?.atSurfaceCm2PerG !== undefined) ?? variant;
  const flow = batchFlow({ mixG: 1200, cutYieldFraction: 0.95, pieces: 60, reheat: { percent: 85, sePercent: 2 } });
  const plan = coatingPlan({
    totals: formulaTotals(coated.formula, kitchen.ingredients),
    pieces: 60,
    pieceG: 24,
    surfaceMm2: 5200,
  });
  const weighed = kitchen.trials.flatMap((trial) =>
    trial.massBeforeG === null || trial.massAfterG === null || trial.variantId !== variantId
      ? []
      : [{ ...trial, massBeforeG: trial.massBeforeG, massAfterG: trial.massAfterG }],
  );
  const card = reheatCard({ kitchen, variantId, calibration, draws: 200, startC: 4 });
  const map = { ...window.setting, calibration, thicknessesMm: [8, 11], draws: 40 };
  const products = kitchen.variants.map((one) => ({ variantId: one.variantId }));
  // nothing said of the day, one place in the freezer: what stands in and what is stacked is told too
  const bare = { ...kitchen, day: { freezerPlaces: 1, airflow: "fan" as const } };
  const days = [kitchen, bare].map((one) => batchDay({ kitchen: one, batches: products, tries: 30 }));
  const choices = loadChoices({ kitchen, variantId, draws: 100 });
  const notes = days.map(dayNote);
  const views: Readonly<Record<string, Figure | Table | readonly string[]>> = {
    window: [window.sentence, far.sentence, ...far.extrapolation],
    card: [card.title, ...card.lines, ...card.why, ...card.missing, ...card.evidence.map(({ found }) => found)],
    packCard: packCard({ kitchen, variantId, calibration, draws: 200 }).lines,
    pans: pans.pans.flatMap(({ verdict, remedies }) => [verdict, ...remedies.map(({ sentence }) => sentence)]),
    decisions: decisions.flatMap(({ verdict, outcome }) => [verdict, outcome?.witness.sentence ?? ""]),
    explained: kitchen.trials
      .filter((trial) => trial.variantId === variantId)
      .slice(-2)
      .map(({ trialId }) => explainTrial({ kitchen, trialId }).sentence),
    next: [next.sentence, ...next.candidates.flatMap(({ reason }) => reason ?? [])],
    nextTrialTable: nextTrialTable(next),
    trialGainFigure: trialGainFigure(next),
    gainAheadFigure: gainAheadFigure(next),
    morning: morning.sentence.split("\n"),
    morningTable: morningTable(morning),
    runSheetTable: runSheetTable(runSheet({ kitchen, plan: planned })),
    planMatchTable: planMatchTable(matchPlan({ kitchen, plan: planned })),
    designFigure: designFigure({
      factors: [
        { name: "slab thickness (mm)", low: 8, high: 12 },
        { name: "setpoint (°C)", low: 190, high: 210 },
      ],
      points: [[0.5, -0.3]],
      units,
    }),
    whatNext: whatNext({ kitchen, variantId }).sentence.split("\n"),
    firstMorning: firstMorning({ kitchen, variantId }).sentence.split("\n"),
    calibration: [
      ...calibration.contradictions.map(({ sentence }) => sentence),
      ...calibration.constants.map(({ informedBy }) => informedBy),
    ],
    decisionTable: decisionTable(decisions),
    decisionText: decisionText(decisions)
      .replace(/\n {4}/g, " ")
      .split("\n"),
    thicknessByPanFigure: thicknessByPanFigure(decisions),
    windowPansTable: windowPansTable(pans),
    compareVariantsFigure: compareVariantsFigure(comparison, "thicknessMm"),
    comparePieces: compareVariantsFigure(comparison, "pieceG"),
    variantDifferencesFigure: variantDifferencesFigure(comparison, "thicknessMm"),
    compareVariantsTable: compareVariantsTable(comparison),
    variantDifferencesTable: variantDifferencesTable(comparison),
    comparisonText: comparisonText(comparison).split("\n"),
    clockFigure: clockFigure(window),
    crispTimeFigure: crispTimeFigure(crispTime.times, crispTime.fit),
    crispTimeTable: crispTimeTable(crispTime.times, crispTime.fit),
    forecastFigure: forecastFigure(record),
    forecastTable: forecastTable(record),
    successFigure: successFigure(window),
    windowFigure: windowFigure({ window, trials: kitchen.trials, pans }),
    windowMapFigure: windowMapFigure(windowMapOverTime({ ...map, timesMin: [8, 12] }), pans),
    setpointMapFigure: windowMapFigure(windowMapOverSetpoint({ ...map, setpointsC: [190, 200] }), pans),
    windowTable: windowTable(window),
    farTable: windowTable(far),
    formulaTable: formulaTable(totals, null, units),
    freezeToCutFigure: freezeToCutFigure(rows, units),
    freezeToCutTable: freezeToCutTable(rows, units),
    profileFigure: profileFigure(run, { title: "slab", timesMin: [2, 5], units }),
    temperatureCoreTable: temperatureCoreTable([{ label: "slab", core }], units),
    temperatureTimeFigure: temperatureTimeFigure(run, {
      title: "slab",
      marks: [{ label: "core limit", temperatureC: 74 }],
      units,
    }),
    batchFlowFigure: batchFlowFigure(flow, units),
    batchFlowTable: batchFlowTable(flow, units),
    coatingPlanTable: coatingPlanTable(plan, units),
    coatingThicknessFigure: coatingThicknessFigure({
      formula: { ...coated.formula, coating: coated.formula.coating },
      pieceLengthMm: 48,
      pieceWidthMm: 40,
      densityKgM3: 1060,
      fromMm: 6,
      toMm: 16,
      units,
    }),
    reheatYieldFigure: reheatYieldFigure({ [variant.name]: reheatYield({ kitchen, variantId, crispTime }) }),
    logTimelineFigure: logTimelineFigure(kitchen),
    coverageFigure: coverageFigure({ kitchen, variantId, card }),
    panelScoresFigure: panelScoresFigure({ panel: panelOf(kitchen.trials), trials: kitchen.trials, units }),
    thicknessBalanceFigure: thicknessBalanceFigure(kitchen),
    pieceBalanceFigure: pieceBalanceFigure(kitchen),
    groupedThickness: trialGroupsTable({
      trials: kitchen.trials,
      units,
      by: ["setpoint", "thickness band"],
      of: "thicknessMm",
    }),
    groupedPieces: trialGroupsTable({ trials: kitchen.trials, units, by: ["variant"], of: "pieceG" }),
    photosTable: photosTable({
      kitchen: { ...kitchen, trials: kitchen.trials.map((trial) => ({ ...trial, photos: ["a.jpg"] })) },
      present: ["a.jpg"],
    }),
    benchSheet: benchSheetText(
      benchSheet({ kitchen, trials: [{ variantId, thicknessMm: 9, timeMin: 10, loadFraction: 0.6 }] }),
    ).split("\n"),
    dayNote: notes.flatMap(({ title, parts }) => [
      title,
      ...parts.flatMap((part) => (typeof part === "string" ? [part] : part.items)),
    ]),
    dayTable: dayTable(days[0]),
    dayFigure: dayFigure(days[0]),
    dayLimitsTable: dayLimitsTable(days[0]),
    coolingFigure: coolingFigure(days[0]),
    loadChoices: [choices.sentence],
    loadChoicesTable: loadChoicesTable(choices),
    shoppingTable: shoppingTable(shoppingList({ kitchen, batches: products }), units),
    stockTable: stockTable(packStock({ kitchen }), units),
    yieldLossFigure: yieldLossFigure(fitLoss(weighed), { timeMin: 12, setpointC: variant.setpointC, units }),
  };
  return new Map(Object.entries(views).map(([name, view]) => [name, read(view)]));
}

function read(view: Figure | Table | readonly string[]): readonly string[] {
  if (!("kind" in view)) return view;
  if (view.kind === "table") return [...view.columns.map(({ heading }) => heading), ...tableText(view).split("\n")];
  return [view.summary, ...stringsIn(view.data), ...stringsIn(view.layout)];
}

function stringsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (value === null || typeof value !== "object") return [];
  return Object.values(value).flatMap(stringsIn);
}

/** Nutrients are counted in grams on every label; `K` is a difference, and `(mm)` alone stands beside a column in inches. */
const EVERYWHERE =
  /protein|carbohydrate|fat \(g|carb \(g|^\(mm\)$|Kirchhoff|Food Code|FDA|USDA|kcal|P \/ F \/ C|in \(mm\)|\(in\) +\(mm\)/;
const METRIC = /(?:\d |\()(?:mm|°C|g|kg)(?![\w/²³])/;
const US = /(?:\d |\()(?:in|°F|oz|lb)(?![\w/²³])|\d\/\d+/;

const US_TEXTS = textsOf(kitchenIn("us", celsius("390 °F")));
const METRIC_TEXTS = textsOf(kitchenIn("metric", 200));
const sentencesOf = (text: string): string[] => text.split(/(?<=[.;]) (?=[A-Z])/);

describe("views of a kitchen in US units", () => {
  it.each([...US_TEXTS.keys()])("%s says no metric size, weight or temperature without the US one", (name) => {
    const texts = US_TEXTS.get(name) as readonly string[];
    expect(texts.length).toBeGreaterThan(0);
    const foreign = texts
      .flatMap(sentencesOf)
      .filter((text) => METRIC.test(text) && !US.test(text) && !EVERYWHERE.test(text));
    expect(foreign).toEqual([]);
  });

  it.each([...US_TEXTS.keys()])("%s prints no number with more than six digits that matter", (name) => {
    const long = (US_TEXTS.get(name) as readonly string[]).filter((text) =>
      (text.match(/\d+\.\d+/g) ?? []).some((number) => number.replace(/^0?\.0*|\./g, "").length > 6),
    );
    expect(long).toEqual([]);
  });

  it("prints a setting of 390 °F as that wherever it is named", () => {
    for (const name of [
      "window",
      "card",
      "decisionText",
      "windowPansTable",
      "windowTable",
      "clockFigure",
      "successFigure",
    ])
      expect((US_TEXTS.get(name) as readonly string[]).join("\n")).toContain("390 °F");
    expect([...US_TEXTS.values()].flat().join("\n")).not.toMatch(/38[89](\.\d+)? °F|391(\.\d+)? °F/);
  });
});

describe("views of a kitchen in metric units", () => {
  it.each([...METRIC_TEXTS.keys()])("%s says no inch, ounce or °F without the metric one", (name) => {
    const foreign = (METRIC_TEXTS.get(name) as readonly string[])
      .flatMap(sentencesOf)
      .filter((text) => US.test(text) && !METRIC.test(text) && !/consumer minimum|Food Code/.test(text));
    expect(foreign.filter((text) => !/\d\/\d+/.test(text) && text !== "(in)" && !/slab mm \(in\)/.test(text))).toEqual(
      [],
    );
  });
});
