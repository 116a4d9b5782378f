import { answers } from "../advice/answer/answers";
import { kitchenDifferences } from "../trials/kitchen-differences";
import { answerTable } from "../views/advice/answer-table";
import { formatCell } from "../views/table/format-cell";
import type { Table } from "../views/table/table";
import { tableHtml } from "../views/table/table-html";
import { tableText } from "../views/table/table-text";
import { loadKitchen } from "./load-kitchen";

/** What two kitchens hold and answer otherwise. */
export interface ComparedKitchens {
  readonly same: boolean;
  /** settings first, then data; as text and as HTML */
  readonly tables: readonly { readonly title: string; readonly text: string; readonly html: string }[];
}

/**
 * Compares two kitchens from their folders: the settings that come out of them, and the data that they hold.
 *
 * @param before the earlier kitchen's folder, which must have no slips
 * @param after the later one's
 * @example
 * compareKitchens("data", "data").same; // → true
 */
export function compareKitchens(before: string, after: string): ComparedKitchens {
  const [was, is] = [loadKitchen(before), loadKitchen(after)];
  const changed = kitchenDifferences({ before: was, after: is });
  const rows = changed.map((one) => [one.of, one.id, one.field, one.before, one.after]);
  const data: Table = {
    kind: "table",
    title: "What the data hold otherwise",
    columns: ["of", "id", "field", "before", "after"].map((heading) => ({ heading })),
    rows,
    notes: ["In the units of calculation: mm, g, °C, min. A dash: not there."],
  };
  const settings = settingsOf(answerTable(answers({ kitchen: was })), answerTable(answers({ kitchen: is })));
  const shown = [settings, data].filter(({ rows: lines }) => lines.length > 0);
  return {
    same: shown.length === 0,
    tables: shown.map((table) => ({ title: table.title, text: tableText(table), html: tableHtml(table) })),
  };
}

/** The cells of two tables of answers that differ, a row each. */
function settingsOf(was: Table, is: Table): Table {
  const byName = ({ rows, columns }: Table): ReadonlyMap<string, ReadonlyMap<string, string>> =>
    new Map(
      rows.map((row) => [
        String(row[0]),
        new Map(columns.map((column, at) => [column.heading, formatCell(row[at], column)])),
      ]),
    );
  const [before, after] = [byName(was), byName(is)];
  const rows = [...new Set([...before.keys(), ...after.keys()])].flatMap((name) => {
    const [one, other] = [before.get(name), after.get(name)];
    if (one === undefined) return [[name, null, null, "there"]];
    if (other === undefined) return [[name, null, "there", null]];
    return [...new Set([...one.keys(), ...other.keys()])].flatMap((heading) => {
      const [from, to] = [one.get(heading) ?? null, other.get(heading) ?? null];
      return from === to ? [] : [[name, heading, from, to]];
    });
  });
  return {
    kind: "table",
    title: "What the settings say otherwise",
    columns: ["product", "column", "before", "after"].map((heading) => ({ heading })),
    rows,
    notes: [],
  };
}
