import type { CodeCell } from "@jupyterlab/cells";
import { type Notebook, NotebookActions } from "@jupyterlab/notebook";
import type { KernelMessage, Session } from "@jupyterlab/services";
import { button, notice } from "../notice";
import type { OpenNotebook } from "../open-notebook";
import { type CellNow, type Ran, ranOf, type StaleCell, staleCells } from "./stale-cells";

/** What keeps an eye on cells that are out of date. */
export interface StaleWatch {
  /** how many are out of date, and what runs them; empty while none is */
  readonly node: HTMLElement;
  /** cells that are out of date now */
  readonly stale: () => readonly StaleCell[];
}

const LOOK_EVERY_MS = 5000;

/**
 * Notes in each cell's metadata what its outputs rest on, and marks the cells that would give something else now: edited, a file that
 * they read changed, or a cell that they take a name from did.
 */
export function watchStale({ context, panel }: OpenNotebook): StaleWatch {
  const notebook = panel.content;
  const session = context.sessionContext;
  const node = document.createElement("span");
  node.id = "stale";
  node.setAttribute("role", "status");
  const replies = new Map<string, Readonly<Record<string, string>>>();
  let ranHere: CellNow[] = [];
  let files: Readonly<Record<string, string | null>> = {};
  let found: readonly StaleCell[] = [];

  const codeCells = (): readonly CodeCell[] =>
    notebook.widgets.filter((cell): cell is CodeCell => cell.model.type === "code");
  const nowOf = (cell: CodeCell): CellNow => ({
    id: cell.model.id,
    number: notebook.widgets.indexOf(cell) + 1,
    source: cell.model.sharedModel.getSource(),
    ran: cell.model.executionCount === null ? null : ranIn(cell),
  });
  const show = (): void => {
    const cells = codeCells();
    found = staleCells(cells.map(nowOf), files);
    for (const cell of cells) mark(cell, found.find(({ id }) => id === cell.model.id)?.why ?? null);
    const many = found.length === 1 ? "1 cell" : `${found.length} cells`;
    const run = button(`run ${found.length === 1 ? "it" : "them"}`, runStale);
    run.title = found.map(({ number, why }) => `cell ${number}: ${why}`).join("\n");
    node.replaceChildren(...(found.length === 0 ? [] : [`${many} out of date `, run]));
  };
  let waiting = 0;
  const showSoon = (): void => {
    clearTimeout(waiting);
    waiting = window.setTimeout(show, 150);
  };
  const runStale = async (): Promise<void> => {
    const ids = new Set(found.map(({ id }) => id));
    const cells = notebook.widgets.filter(({ model }) => ids.has(model.id));
    await NotebookActions.runCells(notebook, cells, session);
  };

  const hear = (_: unknown, { msg, direction }: { msg: KernelMessage.IMessage; direction: string }): void => {
    if (direction !== "recv" || msg.header.msg_type !== "execute_reply") return;
    const { reads = {} } = (msg.metadata.slabwright ?? {}) as { reads?: Record<string, string> };
    replies.set((msg.parent_header as KernelMessage.IHeader).msg_id, reads);
  };
  const follow = (one: Session.ISessionConnection | null): void => void one?.anyMessage.connect(hear);
  follow(session.session);
  session.sessionChanged.connect((_, { oldValue, newValue }) => {
    oldValue?.anyMessage.disconnect(hear);
    follow(newValue);
  });
  session.statusChanged.connect((_, status) => {
    if (status === "restarting" || status === "autorestarting") ranHere = [];
  });

  NotebookActions.executed.connect((_, { notebook: where, cell, success }) => {
    if (where !== notebook || cell.model.type !== "code") return;
    const code = cell as CodeCell;
    const asked = code.outputArea.future?.msg as KernelMessage.IExecuteRequestMsg | undefined;
    const reads = asked && replies.get(asked.header.msg_id);
    if (!asked || !success || !reads) code.model.deleteMetadata("slabwright");
    else {
      const source = String(asked.content.code);
      const id = code.model.id;
      const above = codeCells().slice(0, codeCells().indexOf(code)).map(nowOf);
      const here = ranHere.filter((one) => one.id !== id);
      // what ran in this kernel before the page was opened is taken to have run from the top
      const before = [...above.filter((one) => !here.some((other) => other.id === one.id)), ...here];
      const ran = ranOf({ source, reads, before });
      ranHere = [...here, { ...nowOf(code), source, ran }];
      code.model.setMetadata("slabwright", { ran });
      files = { ...files, ...reads };
    }
    replies.clear();
    showSoon();
  });
  context.model.contentChanged.connect(showSoon);

  const look = async (): Promise<void> => {
    const names = new Set(codeCells().flatMap((cell) => Object.keys(ranIn(cell)?.reads ?? {})));
    if (names.size === 0 || document.hidden) return;
    const answer = await fetch("/digests", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ names: [...names] }),
    });
    if (!answer.ok) return;
    files = (await answer.json()) as Record<string, string | null>;
    show();
  };
  const lookQuietly = (): void => void look().catch(() => {});
  window.addEventListener("focus", lookQuietly);
  setInterval(lookQuietly, LOOK_EVERY_MS);
  void context.ready.then(() => {
    show();
    lookQuietly();
  });
  return { node, stale: () => found };
}

/** Says what is out of date in what was just saved, with a way to put it right. */
export function tellStale({ stale }: StaleWatch, run: () => unknown): void {
  const cells = stale();
  if (cells.length === 0) return;
  const [{ number, why }] = cells;
  const rest = cells.length === 1 ? "" : `, and ${cells.length - 1} more`;
  notice(`Saved, but out of date: cell ${number} (${why})${rest}. Run all before you share it.`, {
    label: "run all",
    run,
  });
}

/** What a cell's metadata say that its outputs rest on; null when they say nothing that can be read. */
function ranIn(cell: CodeCell): Ran | null {
  const { ran } = (cell.model.getMetadata("slabwright") ?? {}) as { readonly ran?: Partial<Ran> };
  const isRecord = (value: unknown): boolean => typeof value === "object" && value !== null && !Array.isArray(value);
  return typeof ran?.source === "string" && isRecord(ran.reads) && isRecord(ran.from) ? (ran as Ran) : null;
}

/** Marks a cell as out of date with a sentence above its outputs, or takes the mark away. */
function mark(cell: Notebook["widgets"][number], why: string | null): void {
  cell.node.classList.toggle("out-of-date", why !== null);
  const old = cell.node.querySelector(":scope > .why-stale");
  if (why === null) {
    old?.remove();
    return;
  }
  const words = old ?? document.createElement("p");
  const text = `out of date: ${why}`;
  if (words.textContent !== text) words.textContent = text;
  words.className = "why-stale";
  if (!old) cell.node.insertBefore(words, cell.node.querySelector(":scope > .jp-Cell-outputWrapper"));
}
