import type { Context } from "@jupyterlab/docregistry";
import type { INotebookModel } from "@jupyterlab/notebook";
import { saveChecked } from "./checked-saves";
import { button } from "./notice";

/** Lists the states of the notebook that are kept, the newest first; a click goes back to one. What stands now is kept first. */
export async function statesDialog(context: Context<INotebookModel>): Promise<void> {
  const states = await context.listCheckpoints();
  if (states.length === 0) throw new Error("nothing was saved yet, so nothing is kept");
  const dialog = document.createElement("dialog");
  dialog.className = "states";
  dialog.setAttribute("aria-label", "go back to an earlier state");
  const words = document.createElement("p");
  words.textContent = "How the notebook stood. What stands now is kept too, so that you can come back.";
  const list = document.createElement("ul");
  const goBack = async (id: string): Promise<void> => {
    dialog.close();
    if (context.model.dirty) await saveChecked(context);
    await context.restoreCheckpoint(id);
    await context.revert();
  };
  for (const { id, last_modified } of states) {
    const when = new Date(last_modified);
    const label = when.toLocaleString(undefined, { dateStyle: "medium", timeStyle: "medium" });
    const line = document.createElement("li");
    line.append(button(label, () => void goBack(id)));
    list.append(line);
  }
  dialog.append(
    words,
    list,
    button("close", () => dialog.close()),
  );
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}
