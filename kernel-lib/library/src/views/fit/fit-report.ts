import type { Estimates } from "../../fit/fit";
import { tableText } from "../table/table-text";
import { fitTable } from "./fit-table";

/**
 * A fit as plain text for a terminal or a report: the table of its parameters, what it rests on, the strongest
 * correlations, how the search ended, and every notice.
 *
 * @param fit any fit: of a curve, of times seen at checks, of yes/no outcomes, of scores
 */
export function fitReport(fit: Estimates): string {
  const pairs: { readonly text: string; readonly size: number }[] = [];
  fit.names.forEach((one, i) => {
    fit.names.slice(i + 1).forEach((other, k) => {
      const value = fit.correlation[i][i + 1 + k];
      if (value !== 0) pairs.push({ text: `${one} ~ ${other} ${value.toFixed(3)}`, size: Math.abs(value) });
    });
  });
  pairs.sort((one, other) => other.size - one.size);
  const strongest = pairs.slice(0, 3).map((pair) => pair.text);
  const table = fitTable(fit);
  const notes =
    strongest.length > 0 ? [...table.notes, `Correlations of estimates: ${strongest.join(", ")}.`] : table.notes;
  return tableText({ ...table, notes });
}
