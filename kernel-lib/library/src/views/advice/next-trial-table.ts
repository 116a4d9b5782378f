import type { NextTrial } from "../../advice/trial/next-trial";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * The five trials that are worth most to the open question, a row each, with what they cost and what they settle; the core limit
 * and its cautions below.
 *
 * @example
 * nextTrialTable(nextTrial({ kitchen: loadKitchen(), variantId: "beet-lentil" })).rows.length; // → 5
 */
export function nextTrialTable(next: NextTrial): Table {
  const { candidates, window, question, decision, stopping, cautions } = next;
  const ofCard = question.kind === "card";
  const table: Table = {
    kind: "table",
    title: `${window.variantName}: the trials that are worth most`,
    columns: [
      { heading: "pan" },
      { heading: "mix (g)", decimals: 0 },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: "setting (°C)", decimals: 0 },
      { heading: "floor (%)", decimals: 0 },
      { heading: "look at (min)" },
      { heading: "out (min)" },
      { heading: "probe" },
      { heading: ofCard ? "card ready (%)" : "gain (points)", decimals: ofCard ? 0 : 1 },
      { heading: "±", decimals: 1 },
      { heading: "changes the decision (%)", decimals: 0 },
      { heading: "cook's time (min)", decimals: 0 },
      { heading: "why" },
    ],
    rows: candidates
      .filter(({ reason }) => reason !== null)
      .map((one) => [
        one.panName,
        one.batchG,
        one.thicknessMm,
        one.setpointC,
        100 * one.loadFraction,
        one.looksMin.join(", "),
        one.timeMin,
        one.probe ? "yes" : "no",
        100 * one.gain,
        196 * one.gainSe,
        100 * one.chanceOfChange,
        one.minutes,
        one.why,
      ]),
    notes: [
      next.questionSentence,
      ...(decision === null
        ? ["As it stands no time is safe within the accepted one."]
        : [
            `As it stands: ${[decision.name, decision.timeMin === null ? "" : `${decision.timeMin.toFixed(1)} min`].filter(Boolean).join(", ")}, with a chance of success of ${Math.round(100 * decision.success)} %.`,
          ]),
      "Gain: how many more pieces of a hundred should be safe, crisp and not overdone by the decision after the trial; ± from the number of outcomes worked through. Nobody tastes what was not probed.",
      stopping.sentence,
      ...cautions,
    ],
  };
  return tableIn(table, window.setting.units);
}
