import { parseArgs } from "node:util";
import type { AskedParameters } from "../notebook/parameters";
import { checkCommand } from "./check";
import { checkKitchenCommand } from "./check-kitchen";
import type { CommandOptions } from "./command-options";
import { compareCommand } from "./compare";
import { logCommand } from "./log";
import { newKitchenCommand } from "./new-kitchen";
import { notebookCommand } from "./notebook";
import { printable } from "./printable";
import { reportCommand } from "./report";
import { runCommand } from "./run";
import { shareCommand } from "./share";
import { startCommand } from "./start";

const VERBS: Record<string, (options: CommandOptions) => Promise<number>> = {
  start: startCommand,
  report: reportCommand,
  notebook: notebookCommand,
  run: runCommand,
  check: checkCommand,
  share: shareCommand,
  compare: compareCommand,
  "new-kitchen": newKitchenCommand,
  "check-kitchen": checkKitchenCommand,
  log: logCommand,
};

const USAGE = `slabwright: runs, checks, publishes and serves notebooks on the tslab kernel

  slabwright start               run every notebook in notebooks/, write out/report.html
  slabwright report [NOTEBOOK…]  write the page again from the executed copies, without running
  slabwright notebook            open the notebooks in the browser
  slabwright run NOTEBOOK…       run, and write executed copies to out/notebooks/
  slabwright check [NOTEBOOK…|BUNDLE]  run again, compare with what is stored, say what differs and what has changed
  slabwright share [NOTEBOOK…]   write a bundle: page, notebooks, the kitchen's files they read, a manifest
  slabwright compare A B         what two notebooks, bundles or kitchens have otherwise; 1 when anything
  slabwright new-kitchen FOLDER    write a kitchen to begin with
  slabwright check-kitchen FOLDER  read every file of a kitchen, run nothing, and say all that is wrong
  slabwright log HEADING=VALUE…    log a trial: variant=oat-bars thickness_mm="9.1; 8.8" time_min=13; without words it asks
  slabwright log check HEADING=VALUE…                say what would be logged
  slabwright log correct TRIAL HEADING=VALUE… --why  change cells; the old line is kept
  slabwright log undo LOG                            take back what was last done to a log
  slabwright log history TRIAL                       what was done to it, when, by whom and why
  slabwright log merge FILE --log LOG [TRIAL=ours|theirs|both…]  take another log in

  --kitchen FOLDER   another kitchen in place of data/
  --out FOLDER       where executed copies and the report go (out/ of the project, or of another kitchen)
  --units us|metric  with new-kitchen: what its headings are written in (metric)
  --log FILE         with log: which file of the kitchen's trials
  --by NAME          with log: who does it
  --why TEXT         with log correct: why
  --set NAME=VALUE   another value of a notebook's parameter (again for others); variant=ID for one product alone
  --each             with start: a report for every product, in out/each; what is done already is not made again
  --update           with check: store the new outputs
  --with THINGS      with share: what else stays at home, of notes,photos,costs
  --merge FILE       with compare: two notebooks as one that holds every cell of both
  --zip              with share: a zip file as well
  --in-place         with run: write the outputs into the notebook itself
  --tolerance X      with check: allowed relative difference of two numbers (1e-6)
  --port N           with notebook: the port (a free one)
  --no-open          with notebook: do not start a browser
  --register         with notebook: make the kernel known to other Jupyter programs of this user
  --unregister       with notebook: take that back`;

/** Runs one command line and returns the exit code. */
export async function cli(words: readonly string[]): Promise<number> {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(words);
  } catch (error) {
    complain(`${(error as Error).message}\n\n${USAGE}`);
    return 2;
  }
  const { values, positionals } = parsed;
  const [verb, ...named] = positionals;
  if (values.help) {
    console.log(USAGE);
    return 0;
  }
  if (!verb || !Object.hasOwn(VERBS, verb)) {
    complain(verb ? `slabwright: the verb must be one of ${Object.keys(VERBS).join(", ")}, got ${verb}` : USAGE);
    return 2;
  }
  try {
    return await VERBS[verb]({
      named,
      units: values.units ?? null,
      log: values.log ?? null,
      by: values.by ?? null,
      why: values.why ?? null,
      kitchen: values.kitchen ?? null,
      out: values.out ?? null,
      inPlace: values["in-place"] ?? false,
      update: values.update ?? false,
      set: askedOf(values.set ?? []),
      with: (values.with ?? "").split(",").filter((thing) => thing !== ""),
      each: values.each ?? false,
      merge: values.merge ?? null,
      zip: values.zip ?? false,
      tolerance: numberOf(values.tolerance, "--tolerance"),
      register: values.register ?? false,
      unregister: values.unregister ?? false,
      port: numberOf(values.port, "--port"),
      open: !values["no-open"],
      say: (text) => console.log(printable(text)),
      complain,
    });
  } catch (error) {
    complain(`slabwright ${verb}: ${(error as Error).message}`);
    return 1;
  }
}

function complain(text: string): void {
  console.error(printable(text));
}

function parse(words: readonly string[]) {
  return parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      kitchen: { type: "string" },
      out: { type: "string" },
      units: { type: "string" },
      log: { type: "string" },
      by: { type: "string" },
      why: { type: "string" },
      "in-place": { type: "boolean" },
      update: { type: "boolean" },
      set: { type: "string", multiple: true },
      with: { type: "string" },
      each: { type: "boolean" },
      merge: { type: "string" },
      zip: { type: "boolean" },
      tolerance: { type: "string" },
      port: { type: "string" },
      "no-open": { type: "boolean" },
      register: { type: "boolean" },
      unregister: { type: "boolean" },
      help: { type: "boolean", short: "h" },
    },
  });
}

/** `--set freezerC=-20` as a name and a value. */
function askedOf(words: readonly string[]): AskedParameters {
  return Object.fromEntries(
    words.map((word) => {
      const at = word.indexOf("=");
      if (at < 1) throw new Error(`--set must be NAME=VALUE, got ${word}`);
      return [word.slice(0, at).trim(), word.slice(at + 1)];
    }),
  );
}

function numberOf(text: string | undefined, option: string): number | null {
  if (text === undefined) return null;
  const value = Number(text);
  if (text.trim() === "" || !Number.isFinite(value) || value < 0) {
    throw new Error(`${option} must be a number >= 0, got ${text}`);
  }
  return value;
}
