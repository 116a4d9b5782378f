import { SessionContextDialogs } from "@jupyterlab/apputils";
import { NotebookActions } from "@jupyterlab/notebook";
import { CommandRegistry } from "@lumino/commands";
import { saveChecked } from "./checked-saves";
import { bringBackLast, deletedDialog, hasDeleted, keepDeleted } from "./deleted-cells";
import { examplesDialog } from "./examples";
import { notice } from "./notice";
import type { OpenNotebook } from "./open-notebook";
import { openReference } from "./reference";
import { runAll } from "./run-all";
import { type StaleWatch, tellStale } from "./stale/watch-stale";
import { statesDialog } from "./states-dialog";

/** Where a key works. */
const COMMAND = ".jp-Notebook.jp-mod-commandMode:not(.jp-mod-readWrite) :focus:not(:read-write)";
const EDIT = ".jp-Notebook.jp-mod-editMode";
const ANYWHERE = "body";
const NOTEBOOK = ".jp-Notebook";

/** One command: its name, what it says, its keys, what it does. */
type Entry = readonly [id: string, label: string, keys: readonly (readonly [string[], string])[], run: () => unknown];

/** What commands work on. */
export interface CommandsOptions extends OpenNotebook {
  readonly text: { lineNumbers: boolean };
  readonly stale: StaleWatch;
}

/** The commands of the page and their keys, after the habits of Jupyter notebooks. */
export function pageCommands(options: CommandsOptions): CommandRegistry {
  const { context, panel, text } = options;
  const notebook = panel.content;
  const session = context.sessionContext;
  const dialogs = new SessionContextDialogs();
  const kernel = () => session.session?.kernel;

  const entries: readonly Entry[] = [
    [
      "save",
      "save",
      [
        [["Accel S"], ANYWHERE],
        [["S"], COMMAND],
      ],
      async () => {
        await saveChecked(context);
        tellStale(options.stale, () => runAll(notebook, session));
      },
    ],
    ["restore", "go back to an earlier state", [], () => statesDialog(context)],
    ["run", "run", [[["Accel Enter"], NOTEBOOK]], () => NotebookActions.run(notebook, session)],
    ["run-next", "run, go on", [[["Shift Enter"], NOTEBOOK]], () => NotebookActions.runAndAdvance(notebook, session)],
    [
      "run-insert",
      "run, insert below",
      [[["Alt Enter"], NOTEBOOK]],
      () => NotebookActions.runAndInsert(notebook, session),
    ],
    ["run-all", "run all", [], () => runAll(notebook, session)],
    ["stop", "stop", [[["I", "I"], COMMAND]], () => kernel()?.interrupt()],
    ["restart", "restart kernel", [[["0", "0"], COMMAND]], () => dialogs.restart(session)],
    [
      "restart-run-all",
      "restart, run all",
      [],
      async () => (await dialogs.restart(session)) && runAll(notebook, session),
    ],
    [
      "edit",
      "edit the cell",
      [[["Enter"], COMMAND]],
      () => {
        notebook.mode = "edit";
      },
    ],
    [
      "leave",
      "leave the cell",
      [
        [["Escape"], EDIT],
        [["Ctrl M"], EDIT],
      ],
      () => {
        notebook.mode = "command";
        notebook.node.focus();
        NotebookActions.focusActiveCell(notebook);
      },
    ],
    [
      "up",
      "cell above",
      [
        [["ArrowUp"], COMMAND],
        [["K"], COMMAND],
      ],
      () => NotebookActions.selectAbove(notebook),
    ],
    [
      "down",
      "cell below",
      [
        [["ArrowDown"], COMMAND],
        [["J"], COMMAND],
      ],
      () => NotebookActions.selectBelow(notebook),
    ],
    [
      "extend-up",
      "select upwards",
      [
        [["Shift ArrowUp"], COMMAND],
        [["Shift K"], COMMAND],
      ],
      () => NotebookActions.extendSelectionAbove(notebook),
    ],
    [
      "extend-down",
      "select downwards",
      [
        [["Shift ArrowDown"], COMMAND],
        [["Shift J"], COMMAND],
      ],
      () => NotebookActions.extendSelectionBelow(notebook),
    ],
    ["select-all", "select all cells", [[["Accel A"], COMMAND]], () => NotebookActions.selectAll(notebook)],
    ["above", "new cell above", [[["A"], COMMAND]], () => NotebookActions.insertAbove(notebook)],
    ["below", "new cell", [[["B"], COMMAND]], () => NotebookActions.insertBelow(notebook)],
    ["example", "insert an example", [[["E"], COMMAND]], () => examplesDialog(panel)],
    [
      "delete",
      "delete the cell",
      [[["D", "D"], COMMAND]],
      () => {
        keepDeleted(notebook, context.path);
        NotebookActions.deleteCells(notebook);
      },
    ],
    [
      "cut",
      "cut the cell",
      [[["X"], COMMAND]],
      () => {
        keepDeleted(notebook, context.path);
        NotebookActions.cut(notebook);
      },
    ],
    ["bring-back", "bring back a deleted cell", [], () => deletedDialog(notebook, context.path)],
    ["copy", "copy the cell", [[["C"], COMMAND]], () => NotebookActions.copy(notebook)],
    ["paste", "paste below", [[["V"], COMMAND]], () => NotebookActions.paste(notebook)],
    [
      "undo",
      "undo",
      [[["Z"], COMMAND]],
      () => {
        const canUndo = notebook.model?.sharedModel.canUndo();
        // what a reload has made undo forget
        if (!canUndo && hasDeleted(context.path)) bringBackLast(notebook, context.path);
        else NotebookActions.undo(notebook);
      },
    ],
    ["redo", "redo", [[["Shift Z"], COMMAND]], () => NotebookActions.redo(notebook)],
    ["move-up", "move up", [[["Ctrl Shift ArrowUp"], NOTEBOOK]], () => NotebookActions.moveUp(notebook)],
    ["move-down", "move down", [[["Ctrl Shift ArrowDown"], NOTEBOOK]], () => NotebookActions.moveDown(notebook)],
    ["merge", "merge cells", [[["Shift M"], COMMAND]], () => NotebookActions.mergeCells(notebook)],
    ["split", "split the cell", [[["Ctrl Shift -"], EDIT]], () => NotebookActions.splitCell(notebook)],
    ["to-code", "make it code", [[["Y"], COMMAND]], () => NotebookActions.changeCellType(notebook, "code")],
    ["to-markdown", "make it prose", [[["M"], COMMAND]], () => NotebookActions.changeCellType(notebook, "markdown")],
    ["to-raw", "make it raw", [[["R"], COMMAND]], () => NotebookActions.changeCellType(notebook, "raw")],
    ...[1, 2, 3, 4, 5, 6].map(
      (level): Entry => [
        `heading-${level}`,
        `heading ${level}`,
        [[[String(level)], COMMAND]],
        () => NotebookActions.setMarkdownHeader(notebook, level),
      ],
    ),
    [
      "line-numbers",
      "line numbers",
      [[["Shift L"], COMMAND]],
      () => {
        text.lineNumbers = !text.lineNumbers;
        const config = notebook.editorConfig;
        notebook.editorConfig = { ...config, code: { ...config.code, lineNumbers: text.lineNumbers } };
      },
    ],
    ["toggle-output", "fold the output", [[["O"], COMMAND]], () => NotebookActions.toggleOutput(notebook)],
    [
      "reference",
      "reference of the name at the cursor",
      [
        [["F1"], ANYWHERE],
        [["Shift /"], COMMAND],
      ],
      () => openReference(panel),
    ],
    ["clear-outputs", "clear all outputs", [], () => NotebookActions.clearAllOutputs(notebook)],
  ];

  const commands = new CommandRegistry();
  for (const [id, label, keys, run] of entries) {
    commands.addCommand(id, {
      label,
      execute: async () => {
        try {
          await run();
        } catch (error) {
          notice(`${label}: ${error instanceof Error ? error.message : String(error)}`);
        }
      },
    });
    for (const [pressed, selector] of keys) commands.addKeyBinding({ command: id, keys: pressed, selector });
  }
  return commands;
}
