import type { Context } from "@jupyterlab/docregistry";
import type { INotebookModel } from "@jupyterlab/notebook";
import { saveChecked } from "./checked-saves";
import { choiceDialog } from "./choice-dialog";

/** Lists the states of the notebook that are kept, the newest first; a click goes back to one. What stands now is kept first. */
export async function statesDialog(context: Context<INotebookModel>): Promise<void> {
  const states = await context.listCheckpoints();
  if (states.length === 0) throw new Error("nothing was saved yet, so nothing is kept");
  const goBack = async (id: string): Promise<void> => {
    if (context.model.dirty) await saveChecked(context);
    await context.restoreCheckpoint(id);
    await context.revert();
  };
  choiceDialog({
    label: "go back to an earlier state",
    words: "How the notebook stood. What stands now is kept too, so that you can come back.",
    choices: states.map(({ id, last_modified }) => ({
      label: new Date(last_modified).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "medium" }),
      run: () => void goBack(id),
    })),
  });
}
