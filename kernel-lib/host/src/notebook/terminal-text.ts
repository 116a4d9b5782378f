import { withoutColours } from "../report/escape";
import { bundleText, type Notebook, tagsOf, textOf } from "./notebook";

/** What a notebook has for the terminal: the plain text of the cells that carry the tag `terminal`, without colours. */
export function terminalText(notebook: Notebook): string {
  const parts: string[] = [];
  for (const cell of notebook.cells) {
    if (!tagsOf(cell).includes("terminal")) continue;
    for (const output of cell.outputs ?? []) {
      if (output.output_type === "stream" && output.name === "stdout") parts.push(textOf(output.text));
      if (output.output_type === "display_data") parts.push(bundleText(output.data, "text/plain") ?? "");
    }
  }
  return parts
    .map((part) => withoutColours(part).trimEnd())
    .filter((part) => part !== "")
    .join("\n\n");
}
