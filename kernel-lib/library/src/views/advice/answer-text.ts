import type { Answer, Answers } from "../../advice/answer/answers";
import { chanceText } from "../../crisp/window/window-words";
import { limitText } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { thicknessText } from "../../units/thickness-text";
import { noteText } from "../note/note-text";
import { wrapText } from "../note/wrap-text";
import { answerNotes } from "./answer-notes";
import { isBracketed } from "./answer-table";
import { cautionLines } from "./caution-lines";

/** A terminal's usual width. */
const WIDTH = 80;
/** Columns, and two spaces between them, in that width. */
const COLUMNS: readonly { readonly heading: readonly string[]; readonly width: number }[] = [
  { heading: ["product"], width: 19 },
  { heading: ["on its pan"], width: 18 },
  { heading: ["set"], width: 15 },
  { heading: ["card", "min"], width: 7 },
  { heading: ["core by", "min"], width: 7 },
  { heading: ["sure"], width: 4 },
];

/**
 * The answers of a kitchen for a terminal of 80 columns: a table of one row a product, then what to do with each, with its
 * notices and steps as lists, then the cautions, each once.
 */
export function answerText(answers: Answers): string {
  const { kitchenName, products, notices } = answers;
  const ready = products.filter(({ state }) => state === "ready").length;
  const bracketed = products.some(isBracketed) ? ["(time): for trials, not for a card yet. "] : [];
  const key = `${bracketed.join("")}Core by: from then on every core of 99 of 100 loads has reached that temperature, as calculated from the logged cores: never take out before, and probe the thickest piece. Sure: how often a piece is then safe, crisp and not overdone.`;
  return [
    ...wrapText(`${kitchenName}: ${ready} of ${products.length} ready`, WIDTH),
    "",
    ...lines(COLUMNS.map(({ heading }) => heading)),
    COLUMNS.map(({ width }) => "-".repeat(width)).join("  "),
    ...products.flatMap((answer) => [...lines(cellsOf(answer)), ""]),
    ...wrapText(key, WIDTH),
    "",
    ...answerNotes(answers).flatMap((note) => [noteText(note, WIDTH), ""]),
    ...[...notices.map((notice) => `Look at: ${notice}`), ...cautionLines(products)].flatMap((line) =>
      wrapText(line, WIDTH),
    ),
  ].join("\n");
}

function cellsOf(answer: Answer): string[][] {
  const { variantName, panName, batchG, thicknessMm, applianceName, setpointC, units } = answer;
  const { cardMin, coreByMin, success, state, missing, limit } = answer;
  const other = units === "us" ? "metric" : "us";
  const time = cardMin === null ? "-" : String(cardMin);
  return [
    [variantName, missing === null ? state.toUpperCase() : `${state.toUpperCase()}: ${missing}`],
    [panName, massText(batchG, units), ...(thicknessMm === null ? [] : [thicknessText(thicknessMm, units)])],
    [applianceName, settingText(setpointC, units)],
    [isBracketed(answer) ? `(${time})` : time],
    [coreByMin === null ? "-" : coreByMin.toFixed(1), limitText(limit, units), limitText(limit, other)],
    success === null ? ["-"] : [shortChance(success)],
  ];
}

/** A chance in five characters or fewer. */
function shortChance(chance: number): string {
  return chanceText(chance).replace("over ", ">").replace("under ", "<").replace(" %", "%");
}

/** A row of cells, each of one or more texts, in as many lines as the longest cell needs. */
function lines(cells: readonly (readonly string[])[]): string[] {
  const wrapped = cells.map((texts, at) => texts.flatMap((text) => wrapText(text, COLUMNS[at].width)));
  return Array.from({ length: largestOf(wrapped.map((cell) => cell.length)) }, (_, line) =>
    wrapped
      .map((cell, at) => (cell[line] ?? "").padEnd(COLUMNS[at].width))
      .join("  ")
      .trimEnd(),
  );
}
