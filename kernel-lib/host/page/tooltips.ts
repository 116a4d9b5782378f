import { PageConfig, Text } from "@jupyterlab/coreutils";
import type { NotebookPanel } from "@jupyterlab/notebook";
import { Tooltip } from "@jupyterlab/tooltip";
import type { CommandRegistry } from "@lumino/commands";
import type { JSONObject } from "@lumino/coreutils";
import { Widget } from "@lumino/widgets";
import type { OfferedExample } from "../src/kitchen/kitchen-answer";
import { tellsOf, withExample } from "../src/kitchen/with-example";
import { insertExample, offeredExamples } from "./examples";
import { button } from "./notice";
import { referenceLink } from "./reference";

/** The open kitchen's example of a function that words tell of. */
async function exampleFor(words: string): Promise<OfferedExample | undefined> {
  if (PageConfig.getOption("hasKitchen") !== "true") return undefined;
  const examples = await offeredExamples().catch(() => []);
  return examples.find(({ name }) => tellsOf(words, name));
}

/** A button in the tooltip that puts the example of the function that it tells of into a cell of its own. */
function offerExample(tooltip: Tooltip, panel: NotebookPanel, example: OfferedExample): void {
  const insert = button("insert its example", () => {
    tooltip.dispose();
    insertExample(panel, example);
  });
  tooltip.node.append(insert);
}

/** What the kernel knows of the word at the cursor, on Shift Tab; the next key or click takes it away. */
export function tooltips(options: { readonly panel: NotebookPanel; readonly commands: CommandRegistry }): void {
  const { panel, commands } = options;
  let shown: Tooltip | null = null;
  const away = (): void => {
    shown?.dispose();
    shown = null;
  };
  commands.addCommand("tooltip", {
    label: "what is this?",
    execute: async () => {
      const editor = panel.content.activeCell?.editor;
      const kernel = panel.sessionContext.session?.kernel;
      if (!editor || !kernel) return;
      const code = editor.model.sharedModel.getSource();
      const cursor_pos = Text.jsIndexToCharIndex(editor.getOffsetAt(editor.getCursorPosition()), code);
      const { content } = await kernel.requestInspect({ code, cursor_pos, detail_level: 0 });
      away();
      if (content.status !== "ok" || !content.found) return;
      const words = String(content.data["text/plain"] ?? "");
      const [example, link] = await Promise.all([exampleFor(words), referenceLink(words)]);
      shown = new Tooltip({
        anchor: panel.content,
        bundle: { ...(content.data as JSONObject), "text/plain": example ? withExample(words, example) : words },
        editor,
        rendermime: panel.content.rendermime,
      });
      Widget.attach(shown, document.body);
      if (example) offerExample(shown, panel, example);
      if (link) shown.node.append(link);
    },
  });
  const selector =
    ".jp-Notebook.jp-mod-editMode .jp-InputArea-editor:not(.jp-mod-has-primary-selection):not(.jp-mod-in-leading-whitespace):not(.jp-mod-completer-active)";
  commands.addKeyBinding({ command: "tooltip", keys: ["Shift Tab"], selector });
  window.addEventListener("keydown", (event) => event.key !== "Shift" && away(), true);
  window.addEventListener("mousedown", (event) => !(event.target as Element).closest(".jp-Tooltip") && away(), true);
}
