import { NotebookActions, type NotebookPanel } from "@jupyterlab/notebook";
import type { OfferedExample } from "../src/kitchen/kitchen-answer";
import { button } from "./notice";

/** The library's examples, each a cell that runs in the open kitchen; asked for once the kitchen may have changed. */
export async function offeredExamples(): Promise<readonly OfferedExample[]> {
  const answer = await fetch("/kitchen/examples");
  const json = await answer.json();
  if (!answer.ok) throw new Error(String(json.message));
  return json;
}

/** Puts an example into a new cell below the active one, ready to be run or changed. */
export function insertExample(panel: NotebookPanel, { code }: OfferedExample): void {
  const notebook = panel.content;
  NotebookActions.insertBelow(notebook);
  notebook.activeCell?.model.sharedModel.setSource(code);
  panel.activate();
  void NotebookActions.focusActiveCell(notebook, { waitUntilReady: true });
  notebook.activeCell?.node.scrollIntoView({ block: "nearest" });
}

/** Lists the examples; typing narrows the list, Enter takes the first, a click any. */
export async function examplesDialog(panel: NotebookPanel): Promise<void> {
  const examples = await offeredExamples();
  const dialog = document.createElement("dialog");
  dialog.className = "examples";
  dialog.setAttribute("aria-label", "insert an example");
  const search = document.createElement("input");
  search.type = "search";
  search.placeholder = "which function, or what for?";
  search.setAttribute("aria-label", "which function, or what for?");
  const list = document.createElement("ul");
  const take = (example: OfferedExample): void => {
    dialog.close();
    insertExample(panel, example);
  };
  const fitting = (): readonly OfferedExample[] => {
    const words = search.value.toLowerCase().split(/\s+/);
    const isNamed = ({ name }: OfferedExample): boolean => name.toLowerCase().includes(words.join(""));
    const fits = ({ name, summary }: OfferedExample): boolean =>
      words.every((word) => `${name} ${summary}`.toLowerCase().includes(word));
    const found = examples.filter((example) => isNamed(example) || fits(example));
    return [...found.filter(isNamed), ...found.filter((example) => !isNamed(example))];
  };
  const show = (): void => {
    list.replaceChildren(
      ...fitting().map((example) => {
        const choice = button("", () => take(example));
        const name = document.createElement("strong");
        name.textContent = example.name;
        choice.append(name, ` ${example.summary}`);
        const item = document.createElement("li");
        item.append(choice);
        return item;
      }),
    );
    if (list.childElementCount === 0) list.append("no function of that name or for that");
  };
  search.addEventListener("input", show);
  search.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    const [first] = fitting();
    if (first) take(first);
  });
  show();
  const close = button("close", () => dialog.close());
  dialog.append(search, list, close);
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  search.focus();
}
