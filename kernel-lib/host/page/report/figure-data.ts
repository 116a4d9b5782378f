import { element } from "../element";
import { figureTable } from "./figure-table";
import { addTableTools, copyTools } from "./table-tools";

/** So many rows are shown; all of them are copied. */
const SHOWN = 300;

/** Makes the table of a figure's data when it is first unfolded. */
export function addFigureData(folded: HTMLDetailsElement): void {
  folded.addEventListener("toggle", () => fill(folded), { once: true });
}

function fill(folded: HTMLDetailsElement): void {
  const figure = folded.closest("figure") as HTMLElement;
  const { headings, rows } = figureTable(JSON.parse(figure.querySelector("script[data-for]")?.textContent as string));
  if (rows.length === 0) return;
  const name = `data of ${figure.dataset.title || "this figure"}`;
  const head = element("tr", {}, ...headings.map((heading) => element("th", { scope: "col" }, heading)));
  const body = rows.slice(0, SHOWN).map((row) => element("tr", {}, ...row.map((cell) => element("td", {}, cell))));
  const table = element(
    "table",
    {},
    element("caption", {}, name),
    element("thead", {}, head),
    element("tbody", {}, ...body),
  );
  const box = element("div", { className: "figure-data", tabIndex: 0, role: "region", ariaLabel: name }, table);
  if (rows.length <= SHOWN) {
    folded.append(box);
    addTableTools(table);
    return;
  }
  const note = element("p", { className: "tools" }, `Rows 1 to ${SHOWN} of ${rows.length.toLocaleString("en")}. `);
  note.append(...copyTools({ name, rows: () => [headings, ...rows] }));
  folded.append(box, note);
}
