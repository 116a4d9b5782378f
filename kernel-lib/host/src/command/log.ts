import { resolve } from "node:path";
import { createInterface } from "node:readline/promises";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { type CommandKitchen, kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { projectFolder } from "./project";

interface Told {
  readonly sentence: string;
  readonly notices?: readonly string[];
  readonly conflicts?: readonly { readonly sentence: string }[];
}

interface Deed {
  readonly at: string;
  readonly what: string;
  readonly by: string | null;
  readonly why: string | null;
  readonly before: string | null;
  readonly after: string | null;
}

/** What `slabwright log` does, by its first word; without one of these it logs a trial. */
const DEEDS: Readonly<Record<string, (words: readonly string[], log: Log) => Promise<number>>> = {
  check: async (words, log) =>
    told(await log.ask("checkTrial", cellsOf(words), log.settings), log, "Would be logged: "),
  correct: async ([id, ...words], log) =>
    told(await log.ask("correctTrial", id, cellsOf(words), { ...log.settings, why: log.options.why }), log),
  undo: async ([file], log) => told(await log.ask("undoLog", file, log.settings), log),
  history: async ([id], log) => history(await log.ask<readonly Deed[]>("trialHistory", id, log.settings), log),
  merge: async ([theirs, ...choices], log) =>
    told(
      await log.ask("mergeLog", resolve(theirs), {
        ...log.settings,
        into: log.options.log,
        choose: choicesOf(choices),
      }),
      log,
    ),
};

interface Log {
  readonly options: CommandOptions;
  readonly settings: Readonly<Record<string, unknown>>;
  readonly ask: <T = Told>(name: string, ...args: readonly unknown[]) => Promise<T>;
}

/**
 * Logs a trial from words such as `variant=oat-bars thickness_mm="9.1; 8.8" time_min=13`; without words it asks, in a terminal.
 * Or, by the first word: checks one, corrects a cell of one, takes the last thing back, tells a trial's history, takes another
 * log in.
 */
export async function logCommand(options: CommandOptions): Promise<number> {
  const project = projectFolder(process.cwd());
  const kitchen: CommandKitchen = kitchenOf(options, project);
  const given = { folder: kitchen.folder, log: options.log, by: options.by };
  const settings = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null));
  const log: Log = {
    options,
    settings,
    ask: (name, ...args) => askLibrary(project, { door: "slabwright/notebook", name, args }),
  };
  const [first = "", ...rest] = options.named;
  if (Object.hasOwn(DEEDS, first)) {
    if (rest.length === 0) throw new Error(`slabwright log ${first} must be told what, as its help says`);
    return DEEDS[first](rest, log);
  }
  if (options.named.length > 0) return told(await log.ask("logTrial", cellsOf(options.named), settings), log);
  return atTerminal(log);
}

/** Asks for a usual trial, cell by cell, shows what would be logged, and logs it when that is wanted. */
async function atTerminal(log: Log): Promise<number> {
  if (!process.stdin.isTTY)
    throw new Error("a trial must be told in words such as variant=oat-bars time_min=13, or asked for in a terminal");
  const { variants, headings } = await log.ask<{ variants: readonly string[]; headings: readonly string[] }>(
    "logQuestions",
    log.settings.folder,
  );
  const { say } = log.options;
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  try {
    say("One trial. Press Enter where nothing was measured; several readings are parted by ; .");
    const cells: Record<string, string> = {};
    const asked = variants.length > 1 ? ["variant", ...headings] : headings;
    for (const heading of asked) {
      const hint = heading === "variant" ? ` (${variants.join(", ")})` : "";
      const answer = (await terminal.question(`  ${heading}${hint}: `)).trim();
      if (answer !== "") cells[heading] = answer;
    }
    told(await log.ask("checkTrial", cells, log.settings), log, "Would be logged: ");
    const isWanted = /^(y|yes|j|ja)$/i.test((await terminal.question("Log it? (y/n) ")).trim());
    if (!isWanted) {
      say("Nothing was logged.");
      return 1;
    }
    return told(await log.ask("logTrial", cells, log.settings), log);
  } finally {
    terminal.close();
  }
}

function told({ sentence, notices = [], conflicts = [] }: Told, { options: { say } }: Log, before = ""): number {
  for (const notice of notices) say(`Notice: ${oneLine(notice)}`);
  for (const conflict of conflicts) say(`Conflict: ${oneLine(conflict.sentence)}`);
  say(before + oneLine(sentence));
  return 0;
}

function history(deeds: readonly Deed[], { options: { say } }: Log): number {
  if (deeds.length === 0) say("No history: nothing was done to it through slabwright.");
  for (const { at, what, by, why, before, after } of deeds) {
    say(`${at} ${what}${by === null ? "" : ` by ${oneLine(by)}`}${why === null ? "" : `: ${oneLine(why)}`}`);
    if (before !== null) say(`  before  ${oneLine(before.trim())}`);
    if (after !== null) say(`  after   ${oneLine(after.trim())}`);
  }
  return 0;
}

/** Cells from words such as `core_c=78`; `core_c=` says that it is not known. */
function cellsOf(words: readonly string[]): Record<string, string | null> {
  return Object.fromEntries(
    words.map((word) => {
      const at = word.indexOf("=");
      if (at < 1) throw new Error(`a cell must be told as heading=value, got ${oneLine(word)}`);
      const value = word.slice(at + 1);
      return [word.slice(0, at), value === "" ? null : value];
    }),
  );
}

function choicesOf(words: readonly string[]): Record<string, string> {
  return Object.fromEntries(
    words.map((word) => {
      const [, id, choice] = /^(.+)=(ours|theirs|both)$/.exec(word) ?? [];
      if (id === undefined)
        throw new Error(`a choice must be TRIAL=ours, TRIAL=theirs or TRIAL=both, got ${oneLine(word)}`);
      return [id, choice];
    }),
  );
}
