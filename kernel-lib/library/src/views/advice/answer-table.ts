import type { Answer, Answers } from "../../advice/answer/answers";
import { chanceText } from "../../crisp/window/window-words";
import { bothLimits } from "../../safety/limit-text";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { thicknessText } from "../../units/thickness-text";
import type { Table } from "../table/table";
import { cautionLines } from "./caution-lines";

/** The settings of a kitchen, a row a product on its own pan: what to set, when its core is safe, how sure, what is missing. */
export function answerTable({ products, notices }: Answers): Table {
  return {
    kind: "table",
    title: "The setting for each product",
    columns: [
      { heading: "product" },
      { heading: "pan and batch" },
      { heading: "thickness" },
      { heading: "appliance and setting" },
      { heading: "card" },
      { heading: "core by" },
      { heading: "chance" },
      { heading: "state" },
    ],
    rows: products.map(rowOf),
    notes: [
      ...(products.some(isBracketed) ? ["In brackets: a time for trials, not for a card yet."] : []),
      "Card: minutes to take out after. Core by: from then on every core of 99 of 100 loads is at that temperature, as calculated from the logged cores: never take out before, and probe the thickest piece. Chance: how often a piece is then safe, crisp and not overdone.",
      ...notices.map((notice) => `Look at: ${notice}`),
      ...cautionLines(products),
    ],
  };
}

/** Whether a time stands in brackets: it is there, and for no card yet. */
export function isBracketed({ cardMin, state }: Answer): boolean {
  return cardMin !== null && state !== "ready";
}

function rowOf(answer: Answer): (string | null)[] {
  const { variantName, panName, batchG, thicknessMm, applianceName, setpointC, units } = answer;
  const { cardMin, coreByMin, success, state, missing, limit } = answer;
  const time = `${cardMin} min`;
  const core = bothLimits(limit, units);
  return [
    variantName,
    `${panName}, ${massText(batchG, units)}`,
    thicknessMm === null ? null : thicknessText(thicknessMm, units),
    `${applianceName}, ${settingText(setpointC, units)}`,
    cardMin === null ? null : isBracketed(answer) ? `(${time})` : time,
    coreByMin === null ? `at least ${core}` : `${coreByMin.toFixed(1)} min: ${core}`,
    success === null ? null : chanceText(success),
    missing === null ? state : `${state}: ${missing}`,
  ];
}
