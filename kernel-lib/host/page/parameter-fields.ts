import type { CodeCell } from "@jupyterlab/cells";
import { textOf } from "../src/notebook/cell-text";
import type { Notebook } from "../src/notebook/nbformat";
import { type Parameter, parametersOf, withParameters } from "../src/notebook/parameters";
import { hideNotice, notice } from "./notice";
import type { OpenNotebook } from "./open-notebook";

/**
 * Shows a field for each constant of a cell tagged `parameters`; what is typed there is read as `--set` reads it, and put into the
 * cell's code. A value of another kind is refused, and the field shows the old one again.
 */
export function parameterFields({ context, panel }: OpenNotebook): void {
  const show = (): void => {
    for (const cell of panel.content.widgets) if (cell.model.type === "code") showFields(cell as CodeCell);
  };
  let waiting = 0;
  context.model.contentChanged.connect(() => {
    clearTimeout(waiting);
    waiting = window.setTimeout(show, 150);
  });
  void context.ready.then(show);
}

function showFields(cell: CodeCell): void {
  const old = cell.node.querySelector<HTMLElement>(":scope > .parameters");
  const parameters = parametersIn(cell);
  const stamp = JSON.stringify(parameters);
  if (old?.dataset.stamp === stamp) return;
  old?.remove();
  if (parameters.length === 0) return;
  const form = document.createElement("form");
  form.className = "parameters";
  form.dataset.stamp = stamp;
  form.addEventListener("submit", (event) => event.preventDefault());
  form.append(...parameters.map((parameter) => field(cell, parameter)));
  cell.node.insertBefore(form, cell.node.querySelector(":scope > .jp-Cell-outputWrapper"));
}

function field(cell: CodeCell, { name, value }: Parameter): HTMLElement {
  const shown = Array.isArray(value) ? value.join(", ") : String(value);
  const label = document.createElement("label");
  const input = document.createElement("input");
  input.value = shown;
  input.name = name;
  input.autocomplete = "off";
  if (typeof value === "number") input.inputMode = "decimal";
  input.addEventListener("change", () => {
    try {
      hideNotice();
      const set = withParameters(asNotebook(cell), { [name]: input.value }, "this notebook");
      cell.model.sharedModel.setSource(textOf(set.cells[0].source));
    } catch (error) {
      notice((error as Error).message.replace(/^--set /, ""));
      input.value = shown;
    }
  });
  // the notebook's own keys are not for the field
  input.addEventListener("keydown", (event) => event.stopPropagation());
  label.append(`${name} `, input);
  return label;
}

/** The parameters of a cell; none where a line of it is something else, which a run says. */
function parametersIn(cell: CodeCell): readonly Parameter[] {
  try {
    return parametersOf(asNotebook(cell), "this notebook");
  } catch {
    return [];
  }
}

/** A cell as a notebook of its own. */
function asNotebook(cell: CodeCell): Notebook {
  const tags = cell.model.getMetadata("tags");
  const source = cell.model.sharedModel.getSource();
  const alone = { id: "alone", cell_type: "code" as const, metadata: { tags }, source };
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [alone] };
}
