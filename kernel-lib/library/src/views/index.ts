// advice: answers, cards, decisions, pans, compared variants

export { answerNotes } from "./advice/answer-notes";
export { answerTable } from "./advice/answer-table";
export { answerText } from "./advice/answer-text";
export { cardNote } from "./advice/card-note";
export { compareVariantsFigure, variantDifferencesFigure } from "./advice/compare-variants-figure";
export { compareVariantsTable, variantDifferencesTable } from "./advice/compare-variants-table";
export { comparisonText } from "./advice/comparison-text";
export { decisionTable } from "./advice/decision-table";
export { decisionText } from "./advice/decision-text";
export { gainAheadFigure } from "./advice/gain-ahead-figure";
export { morningTable } from "./advice/morning-table";
export { nextTrialTable } from "./advice/next-trial-table";
export { thicknessByPanFigure } from "./advice/thickness-by-pan-figure";
export { trialGainFigure } from "./advice/trial-gain-figure";
export { windowPansTable } from "./advice/window-pans-table";

// card: the reheat card and what is in the pack, to print

export { type CardPageOptions, cardPage } from "./card/card-page";
export { labelPage } from "./card/label-page";

// cost: what a batch costs, what to buy

export { costFigure } from "./cost/cost-figure";
export { costTable } from "./cost/cost-table";
export { shoppingTable } from "./cost/shopping-table";
export { stockTable } from "./cost/stock-table";

// crisp: time against thickness, window, chance of success

export { clockFigure } from "./crisp/clock-figure";
export { coreFigure } from "./crisp/core-figure";
export { crispTimeFigure } from "./crisp/crisp-time-figure";
export { crispTimeTable } from "./crisp/crisp-time-table";
export { forecastFigure } from "./crisp/forecast-figure";
export { forecastTable } from "./crisp/forecast-table";
export { successFigure } from "./crisp/success-figure";
export { windowConstantsTable } from "./crisp/window-constants-table";
export { type WindowFigureOptions, windowFigure } from "./crisp/window-figure";
export { windowMapFigure } from "./crisp/window-map-figure";
export { windowTable } from "./crisp/window-table";

// loads: one oven tray against ten basket loads

export { loadChoicesTable } from "./load/load-choices-table";

// day: what to do when on a batch day

export { coolingFigure } from "./day/cooling-figure";
export { dayFigure } from "./day/day-figure";
export { dayLimitsTable } from "./day/day-limits-table";
export { dayNote } from "./day/day-note";
export { dayPage } from "./day/day-page";
export { dayTable } from "./day/day-table";

// fit: reports, residuals, influence

export { fitComparisonTable } from "./fit/fit-comparison-table";
export { fitInfluenceFigure } from "./fit/fit-influence-figure";
export { fitNormalFigure } from "./fit/fit-normal-figure";
export { fitReport } from "./fit/fit-report";
export { fitResidualFigure } from "./fit/fit-residual-figure";
export { fitTable } from "./fit/fit-table";

// food: formulas, macros, labels, allergens

export { allergenTable } from "./food/allergen-table";
export { foodTable } from "./food/food-table";
export { formulaTable } from "./food/formula-table";
export { labelTable } from "./food/label-table";
export { macroDoubtFigure } from "./food/macro-doubt-figure";
export { macroTable } from "./food/macro-table";
export { macrosByVariantFigure } from "./food/macros-by-variant-figure";

// heat: freezing, core temperature, profiles through the thickness

export { freezeToCutFigure } from "./heat/freeze-to-cut-figure";
export { freezeToCutTable } from "./heat/freeze-to-cut-table";
export { type ProfileFigureOptions, profileFigure } from "./heat/profile-figure";
export { type CoreTimeRow, temperatureCoreTable } from "./heat/temperature-core-table";
export {
  type LoggedReadings,
  type TemperatureMark,
  type TemperatureTimeOptions,
  temperatureTimeFigure,
} from "./heat/temperature-time-figure";

// log: what was tried, tasters, balances, groups, the sheet for the bench

export { benchSheetHtml } from "./log/bench-sheet-html";
export { benchSheetPage } from "./log/bench-sheet-page";
export { benchSheetText } from "./log/bench-sheet-text";
export { type CoverageFigureOptions, coverageFigure } from "./log/coverage-figure";
export { logTimelineFigure } from "./log/log-timeline-figure";
export { type PanelScoresFigureOptions, panelScoresFigure } from "./log/panel-scores-figure";
export { panelText } from "./log/panel-text";
export { type PhotosTableOptions, photosTable } from "./log/photos-table";
export { pieceBalanceFigure } from "./log/piece-balance-figure";
export { readingsTable } from "./log/readings-table";
export { tasterHabitsFigure } from "./log/taster-habits-figure";
export { thicknessBalanceFigure } from "./log/thickness-balance-figure";
export { type TrialGroupsTableOptions, trialGroupsTable } from "./log/trial-groups-table";

// yield: batch flow, coating, loss

export { batchFlowFigure } from "./yield/batch-flow-figure";
export { batchFlowTable } from "./yield/batch-flow-table";
export { coatingPlanTable } from "./yield/coating-plan-table";
export { type CoatingThicknessFigureOptions, coatingThicknessFigure } from "./yield/coating-thickness-figure";
export { reheatYieldFigure } from "./yield/reheat-yield-figure";
export { type YieldLossFigureOptions, yieldLossFigure } from "./yield/yield-loss-figure";

// notes: titles, sentences and lists, as text and page

export type { Note, NoteList } from "./note/note";
export { noteHtml } from "./note/note-html";
export { noteText } from "./note/note-text";

// plan: how many trials, response surfaces, run sheets and what came of them

export { compromiseFigure } from "./plan/compromise-figure";
export { compromiseTable } from "./plan/compromise-table";
export { type DesignFigureOptions, designFigure } from "./plan/design-figure";
export { planMatchTable } from "./plan/plan-match-table";
export { ridgeFigure } from "./plan/ridge-figure";
export { type RidgeViewOptions, ridgeTable } from "./plan/ridge-table";
export { runSheetCsv } from "./plan/run-sheet-csv";
export { runSheetPage } from "./plan/run-sheet-page";
export { runSheetTable } from "./plan/run-sheet-table";
export { type SurfaceFigureOptions, surfaceFigure } from "./plan/surface-figure";
export { surfaceTable } from "./plan/surface-table";
export { trialsToTellFigure } from "./plan/trials-to-tell-figure";
export { trialsToTellTable } from "./plan/trials-to-tell-table";

// tables: as text, page or frame, and back

export { frameOf } from "./table/frame-of";
export type { Column, Table } from "./table/table";
export { tableHtml } from "./table/table-html";
export { tableOf } from "./table/table-of";
export { tableText } from "./table/table-text";

// figures: colours, and a figure as a picture

export type { Figure } from "./figure/figure";
export { PALETTE } from "./figure/palette";
export { type NamedFigure, smallMultiples } from "./figure/small-multiples";
export { svgOf } from "./figure/svg-of";
