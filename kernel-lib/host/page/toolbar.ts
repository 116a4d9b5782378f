import { PageConfig } from "@jupyterlab/coreutils";
import type { CellType } from "@jupyterlab/nbformat";
import { NotebookActions } from "@jupyterlab/notebook";
import type { CommandRegistry } from "@lumino/commands";
import { keysDialog } from "./keys-dialog";
import { button } from "./notice";
import type { OpenNotebook } from "./open-notebook";

const KERNEL_WORDS: Record<string, string> = {
  idle: "kernel ready",
  busy: "kernel busy",
  starting: "kernel starts",
  restarting: "kernel restarts",
  autorestarting: "kernel restarts",
  terminating: "kernel stops",
  dead: "kernel stopped",
  unknown: "kernel starts",
};

/** What the bar shows beside the notebook and its kernel. */
export interface ToolbarOptions extends OpenNotebook {
  readonly commands: CommandRegistry;
  /** what says how many cells are out of date */
  readonly stale: HTMLElement;
}

/** The bar above the notebook: its name, whether it is saved and up to date, commands, the kind of the cell, the kernel's state. */
export function toolbar(options: ToolbarOptions): HTMLElement {
  const { context, panel, commands, stale } = options;
  const bar = document.createElement("header");
  bar.id = "bar";

  const home = document.createElement("a");
  home.href = "/";
  home.textContent = "notebooks";
  const name = document.createElement("strong");
  const saved = document.createElement("span");
  saved.id = "saved";
  const kernel = document.createElement("span");
  kernel.id = "kernel";

  const command = (id: string): HTMLButtonElement => {
    const made = button(commands.label(id), () => commands.execute(id));
    made.dataset.command = id;
    const keys = commands.keyBindings.find((binding) => binding.command === id)?.keys.join(" ");
    if (keys) made.title = keys.replace("Accel", "Ctrl");
    // a click must not take the focus from the notebook
    made.addEventListener("mousedown", (event) => event.preventDefault());
    return made;
  };

  const kind = document.createElement("select");
  kind.className = "kind";
  kind.setAttribute("aria-label", "kind of the cell");
  for (const [value, label] of [
    ["code", "code"],
    ["markdown", "prose"],
    ["raw", "raw"],
  ])
    kind.add(new Option(label, value));
  kind.addEventListener("change", () => {
    NotebookActions.changeCellType(panel.content, kind.value as CellType);
    panel.content.activate();
  });

  const show = (): void => {
    name.textContent = context.path.split("/").at(-1) ?? "";
    const dirty = context.model?.dirty;
    saved.textContent = dirty ? "not saved" : "saved";
    saved.classList.toggle("unsaved", dirty);
    document.title = `${dirty ? "• " : ""}${name.textContent}`;
    const state = context.sessionContext.kernelDisplayStatus;
    kernel.textContent = KERNEL_WORDS[state] ?? state;
    kernel.dataset.state = state;
    kind.value = panel.content.activeCell?.model.type ?? "code";
  };
  context.pathChanged.connect(show);
  context.saveState.connect(show);
  context.model.stateChanged.connect(show);
  context.sessionContext.statusChanged.connect(show);
  context.sessionContext.connectionStatusChanged.connect(show);
  panel.content.activeCellChanged.connect(show);
  show();

  const place = group(home, name, saved, stale);
  place.id = "place";
  const help = command("reference");
  help.setAttribute("aria-label", commands.label("reference"));
  help.textContent = "?";
  help.title = `${commands.label("reference")}: ${help.title}`;
  const acts = document.createElement("div");
  acts.id = "acts";
  const runs = group(...["run-next", "run-all", "stop", "restart"].map(command));
  const example = PageConfig.getOption("hasKitchen") === "true" ? [command("example")] : [];
  const cells = group(command("below"), ...example, command("delete"), kind);
  acts.append(
    group(command("save")),
    runs,
    cells,
    group(
      button("keys", () => keysDialog(commands)),
      help,
    ),
  );
  bar.append(place, acts, kernel);
  return bar;
}

function group(...members: HTMLElement[]): HTMLElement {
  const made = document.createElement("span");
  made.className = "group";
  made.append(...members);
  return made;
}
