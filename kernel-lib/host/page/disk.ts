import type { Context } from "@jupyterlab/docregistry";
import type { INotebookModel } from "@jupyterlab/notebook";
import { notice } from "./notice";

/** Asks before the page is left with unsaved changes, and tells when the file was changed by another program. */
export function watchDisk(context: Context<INotebookModel>): void {
  window.addEventListener("beforeunload", (event) => {
    if (context.model?.dirty) event.preventDefault();
  });
  let told = "";
  const look = async (): Promise<void> => {
    const known = context.contentsModel?.hash;
    if (!known || document.hidden) return;
    const answer = await fetch(`/api/contents/${context.path.split("/").map(encodeURIComponent).join("/")}?content=0`);
    if (!answer.ok) return;
    const { hash } = (await answer.json()) as { hash: string };
    if (hash === context.contentsModel?.hash || hash === told) return;
    told = hash;
    const lost = context.model.dirty ? " Loading it drops what you changed here." : "";
    notice(`This notebook was changed on disk.${lost}`, { label: "load it", run: () => context.revert() });
  };
  window.addEventListener("focus", () => void look());
  setInterval(() => void look().catch(() => {}), 5000);
}
