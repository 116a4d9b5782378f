import { escapeHtml } from "../views/table/escape-html";
import { kernelDisplay } from "./kernel-display";

/** Shows a heading among a cell's outputs: what follows is about this. */
export function showHeading(words: string): void {
  const display = kernelDisplay();
  if (display === null) console.log(`\n${words}\n`);
  else display({ "text/plain": words, "text/html": `<h3>${escapeHtml(words)}</h3>` });
}
