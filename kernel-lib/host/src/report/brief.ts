import { type Cell, type Notebook, tagsOf, textOf } from "../notebook/notebook";
import { figureOf } from "./figure-of";

/** What of a notebook stands in the printed summary. */
export interface Brief {
  /** places of its cells in the notebook */
  readonly cells: ReadonlySet<number>;
  /** of the cell whose first figure stands for the notebook, where no cell is tagged; null */
  readonly figureCell: number | null;
}

/** Whether a cell's outputs open the report. */
export function isAnswer(cell: Cell): boolean {
  return cell.cell_type === "code" && tagsOf(cell).includes("answer");
}

/**
 * What stands in the printed summary: the opening, every caution (a text that begins as a quotation), and what cells tagged
 * `summary` show, or where none is tagged the first figure. A notebook that shows neither is left out.
 */
export function briefOf({ cells }: Notebook): Brief {
  const at = (match: (cell: Cell) => boolean): number[] => cells.flatMap((cell, index) => (match(cell) ? index : []));
  const tagged = at((cell) => tagsOf(cell).includes("summary"));
  const figureCell = tagged.length > 0 ? -1 : cells.findIndex((cell) => !isAnswer(cell) && hasFigure(cell));
  if (tagged.length === 0 && figureCell < 0) return { cells: new Set(), figureCell: null };
  const opening = at(({ cell_type }) => cell_type === "markdown").slice(0, 1);
  const cautions = at((cell) => cell.cell_type === "markdown" && /^\s*>/.test(textOf(cell.source)));
  return {
    cells: new Set([...opening, ...tagged, ...(figureCell < 0 ? [] : [figureCell]), ...cautions]),
    figureCell: figureCell < 0 ? null : figureCell,
  };
}

function hasFigure(cell: Cell): boolean {
  return (cell.outputs ?? []).some((output) => "data" in output && figureOf(output.data) !== null);
}
