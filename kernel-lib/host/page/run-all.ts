import type { ISessionContext } from "@jupyterlab/apputils";
import type { IOutput } from "@jupyterlab/nbformat";
import { type Notebook, NotebookActions } from "@jupyterlab/notebook";
import { errorWords, type KernelError } from "../src/notebook/error-words";
import { hideNotice, notice } from "./notice";

type Cell = Notebook["widgets"][number];

/** Runs every cell; where one fails, what follows is not run, and the page goes to that cell and says so. */
export async function runAll(notebook: Notebook, session: ISessionContext): Promise<void> {
  hideNotice();
  if (await NotebookActions.runCells(notebook, notebook.widgets, session)) return;
  // no older error is left: each cell's outputs went when it was sent to the kernel
  const at = notebook.widgets.findIndex((cell) => errorOf(cell) !== null && !isMeantToFail(cell));
  const error = at < 0 ? null : errorOf(notebook.widgets[at]);
  if (!error) return;
  const show = (): void => {
    notebook.activeCellIndex = at;
    notebook.deselectAll();
    const { node } = notebook.widgets[at];
    // the cell and its sentence, or where they are taller than the window the sentence
    node.scrollIntoView({ block: "start" });
    const words = node.querySelector(".failure");
    if (words && words.getBoundingClientRect().bottom > window.innerHeight) words.scrollIntoView({ block: "center" });
  };
  await new Promise((drawn) => requestAnimationFrame(drawn));
  show();
  const { sentence } = errorWords(error);
  const short = sentence.length > 160 ? `${sentence.slice(0, 159)}…` : sentence;
  notice(`Run all stopped at cell ${at + 1} of ${notebook.widgets.length}: ${short}`, {
    label: "go to the cell",
    run: show,
  });
}

function isMeantToFail(cell: Cell): boolean {
  const tags = cell.model.getMetadata("tags");
  return Array.isArray(tags) && tags.includes("raises-exception");
}

function errorOf(cell: Cell): KernelError | null {
  const { outputs = [] } = cell.model.toJSON() as { outputs?: IOutput[] };
  const error = outputs.find(({ output_type }) => output_type === "error");
  return error ? (error as unknown as KernelError) : null;
}
