import type { Context } from "@jupyterlab/docregistry";
import type { INotebookModel } from "@jupyterlab/notebook";
import { saveChecked } from "./checked-saves";
import { notice } from "./notice";

/** How often what was changed is saved by itself; our judgement. */
const SAVE_EVERY_MS = 60_000;

/**
 * Asks before the page is left with unsaved changes, saves them every minute by itself, and tells when the file was changed by
 * another program; then nothing is saved until the person has decided. The server keeps earlier states.
 */
export function watchDisk(context: Context<INotebookModel>): void {
  window.addEventListener("beforeunload", (event) => {
    if (context.model?.dirty) event.preventDefault();
  });
  let told = "";
  const hashOnDisk = async (): Promise<string | null> => {
    const answer = await fetch(`/api/contents/${context.path.split("/").map(encodeURIComponent).join("/")}?content=0`);
    return answer.ok ? ((await answer.json()) as { hash: string }).hash : null;
  };
  const look = async (): Promise<void> => {
    const known = context.contentsModel?.hash;
    if (!known || document.hidden) return;
    const hash = await hashOnDisk();
    if (hash === null || hash === context.contentsModel?.hash || hash === told) return;
    told = hash;
    const lost = context.model.dirty ? " Loading it drops what you changed here." : "";
    notice(`This notebook was changed on disk.${lost}`, { label: "load it", run: () => context.revert() });
  };
  const saveByItself = async (): Promise<void> => {
    if (!context.model?.dirty || (await hashOnDisk()) !== context.contentsModel?.hash) return;
    await saveChecked(context);
  };
  setInterval(() => void saveByItself().catch(() => {}), SAVE_EVERY_MS);
  window.addEventListener("focus", () => void look());
  setInterval(() => void look().catch(() => {}), 5000);
}
