import { type Notebook, type Text, tagsOf, textOf } from "./notebook";

/** What a notebook has for the terminal: the plain text of the cells that carry the tag `terminal`. */
export function terminalText(notebook: Notebook): string {
  const parts: string[] = [];
  for (const cell of notebook.cells) {
    if (!tagsOf(cell).includes("terminal")) continue;
    for (const output of cell.outputs ?? []) {
      if (output.output_type === "stream" && output.name === "stdout") parts.push(textOf(output.text));
      if (output.output_type === "display_data" && output.data["text/plain"] !== undefined) {
        parts.push(textOf(output.data["text/plain"] as Text));
      }
    }
  }
  return parts.map((part) => part.trimEnd()).join("\n\n");
}
