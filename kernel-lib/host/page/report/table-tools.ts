import { element } from "../element";
import { compareCells, type SortWay } from "./compare-cells";
import { copyText } from "./copy-text";
import { csvText } from "./csv-text";

/** A table's cells as text. */
export interface TableText {
  readonly name: string;
  readonly rows: () => readonly (readonly string[])[];
}

/**
 * Gives a table with one row of headings its tools: a heading sorts (a second time the other way, a third time as it came),
 * and the whole is copied as CSV in the order in which it stands. Where the headings are out of sight, a list of them sorts.
 */
export function addTableTools(table: HTMLTableElement): void {
  const heads = [...(table.tHead?.rows ?? [])];
  const body = table.tBodies[0];
  if (heads.length !== 1 || body === undefined || body.rows.length === 0) return;
  const headings = [...heads[0].cells];
  const names = headings.map(textOf);
  const name = table.caption?.textContent?.trim() || "table";
  const tools = element("p", { className: "tools" });
  if (body.rows.length > 1 && isPlain(table)) tools.append(sortList(table, headings, names), " ");
  tools.append(...copyTools({ name, rows: () => [names, ...[...body.rows].map((row) => [...row.cells].map(textOf))] }));
  table.after(tools);
}

/** A button that copies rows as CSV, and where it is said what came of it. */
export function copyTools({ name, rows }: TableText): HTMLElement[] {
  const said = element("span", { role: "status" });
  const button = element("button", { type: "button", ariaLabel: `copy as CSV: ${name}` }, "copy as CSV");
  button.addEventListener("click", async () => {
    said.textContent = await copyText(csvText(rows()), fileName(name));
    setTimeout(() => said.replaceChildren(), 4000);
  });
  return [button, said];
}

/** Makes the headings buttons that sort, and returns the list that does so in their place. */
function sortList(table: HTMLTableElement, headings: readonly HTMLTableCellElement[], names: readonly string[]): Node {
  const body = table.tBodies[0];
  const asItCame = [...body.rows];
  const list = element("select", {});
  list.append(element("option", { value: "" }, "as it came"));
  for (const [at, name] of names.entries()) list.append(element("option", { value: String(at) }, name));
  const sort = (at: number | null, way: SortWay): void => {
    const rows = [...asItCame];
    if (at !== null) rows.sort((one, other) => compareCells(textOf(one.cells[at]), textOf(other.cells[at]), way));
    body.append(...rows);
    for (const [index, heading] of headings.entries()) {
      if (index === at) heading.ariaSort = way;
      else heading.removeAttribute("aria-sort");
    }
    list.value = at === null ? "" : String(at);
  };
  for (const [at, heading] of headings.entries()) {
    const button = element("button", { type: "button", title: "sort" });
    button.append(...heading.childNodes);
    button.addEventListener("click", () => {
      if (heading.ariaSort === "descending") sort(null, "ascending");
      else sort(at, heading.ariaSort === "ascending" ? "descending" : "ascending");
    });
    heading.append(button);
  }
  list.addEventListener("change", () => sort(list.value === "" ? null : Number(list.value), "ascending"));
  return element("label", { className: "sort-list" }, "sort by ", list);
}

/** Whether every row has a cell for every heading, none wider or higher than one. */
function isPlain(table: HTMLTableElement): boolean {
  const count = table.tHead?.rows[0].cells.length;
  return [...table.rows].every(
    ({ cells }) => cells.length === count && [...cells].every(({ colSpan, rowSpan }) => colSpan === 1 && rowSpan === 1),
  );
}

function textOf(cell: Element): string {
  return (cell.textContent ?? "").replace(/\s+/g, " ").trim();
}

function fileName(name: string): string {
  const plain = name.normalize("NFKD").replace(/[^A-Za-z0-9]+/g, "-");
  return `${plain.replace(/^-|-$/g, "").slice(0, 60) || "table"}.csv`;
}
