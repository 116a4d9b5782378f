import type { MorningPlan } from "../../advice/trial/plan-morning";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * The trials of a morning in the order to run them, a row each; which of them to leave out first, and the cautions below.
 *
 * @example
 * morningTable(planMorning({ kitchen: loadKitchen(), variantId: "beet-lentil", trials: 3 })).rows.length; // → 3
 */
export function morningTable(morning: MorningPlan): Table {
  const { trials, slabs, variantName, question, gain, minutes, units, cautions } = morning;
  const worth =
    question.kind === "card"
      ? `They make the card ready with a chance of ${Math.round(100 * gain)} %`
      : `Together they should gain ${(100 * Math.max(0, gain)).toFixed(1)} points of success`;
  const table: Table = {
    kind: "table",
    title: `${variantName}: a morning of ${trials.length === 1 ? "one trial" : `${trials.length} trials`}`,
    columns: [
      { heading: "load", decimals: 0 },
      { heading: "pan" },
      { heading: "mix (g)", decimals: 0 },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: "pieces", decimals: 0 },
      { heading: "setting (°C)", decimals: 0 },
      { heading: "floor (%)", decimals: 0 },
      { heading: "look at (min)" },
      { heading: "out (min)" },
      { heading: "probe" },
      { heading: "chosen", decimals: 0 },
      { heading: "why" },
    ],
    rows: trials.map((one, at) => [
      at + 1,
      slabs[one.slab].panName,
      one.batchG,
      one.thicknessMm,
      one.pieces,
      one.setpointC,
      100 * one.loadFraction,
      one.looksMin.join(", "),
      one.timeMin,
      one.probe ? "yes" : "no",
      one.chosen,
      one.purpose,
    ]),
    notes: [
      morning.questionSentence,
      `${worth}, and take some ${Math.round(minutes)} min of a cook's time. When time runs short, leave out the ones that were chosen last.`,
      ...cautions,
    ],
  };
  return tableIn(table, units);
}
