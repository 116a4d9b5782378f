import { existsSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { AskedParameters } from "../notebook/parameters";
import { writeWhole } from "../notebook/write-whole";
import { writeReport } from "../report/write-report";
import { filesDigest, filesIn } from "../share/files-in";
import { runBasis } from "../share/provenance";
import type { CommandOptions } from "./command-options";
import { headingsOf, newStamp } from "./executed-copies";
import type { CommandKitchen } from "./kitchen";
import { oneLine } from "./printable";
import { failureReport, runAll } from "./run-all";

/** What `eachVariant` works from. */
export interface EachVariantOptions {
  readonly variantIds: readonly string[];
  readonly paths: readonly string[];
  readonly kitchen: CommandKitchen;
  readonly project: string;
  readonly parameters: AskedParameters;
  readonly say: CommandOptions["say"];
  readonly complain: CommandOptions["complain"];
}

/** What a finished report rested on. */
const DONE = "done.json";

/**
 * Runs the notebooks for one variant after the other and writes a report for each, in `out/each/ID`. A report whose kitchen,
 * notebooks, parameters, code and versions are still those that it rested on is not made again, so that a run that was broken off or failed
 * goes on where it stopped. A variant that fails does not keep the others from theirs.
 *
 * @returns 1 when one has failed
 */
export async function eachVariant(options: EachVariantOptions): Promise<number> {
  const { variantIds, paths, kitchen, project, parameters, say, complain } = options;
  const rests = restsOn(options);
  const told: string[] = [];
  let failures = 0;
  for (const [at, id] of variantIds.entries()) {
    const out = join(kitchen.out, "each", id);
    const done = join(out, DONE);
    const report = join(out, "report.html");
    if (existsSync(report) && existsSync(done) && readFileSync(done, "utf8") === rests) {
      told.push(`${id}: as before, ${oneLine(report)}`);
      continue;
    }
    say(`${id}, ${at + 1} of ${variantIds.length}:`);
    const stamp = newStamp({ ...kitchen, fromOut: join("..", "..", kitchen.fromOut) });
    const runs = await runAll({
      paths,
      copyTo: (path) => join(out, "notebooks", basename(path)),
      stamp,
      project,
      kitchen: kitchen.folder,
      parameters,
      environment: { ...kitchen.environment, SLABWRIGHT_VARIANT: id },
      say,
    });
    await writeReport({ notebooks: runs, path: report, ...headingsOf(stamp, kitchen) });
    const failed = runs.find((run) => run.failure);
    if (failed?.failure) {
      failures++;
      complain(failureReport(failed.path, failed.failure));
      told.push(`${id}: FAILED in ${oneLine(basename(failed.path))}`);
    } else {
      await writeWhole(done, rests);
      told.push(`${id}: ${oneLine(report)}`);
    }
  }
  say(`\n${told.join("\n")}`);
  const made = variantIds.length - failures;
  say(
    `${made} of ${variantIds.length} reports.${failures > 0 ? " Run it again for the others: those that are done are not made again." : ""}`,
  );
  return failures > 0 ? 1 : 0;
}

/** Everything that a report rests on, as text. */
function restsOn({ paths, kitchen, project, parameters }: EachVariantOptions): string {
  const ofKitchen = filesIn(kitchen.folder).filter((name) => !/^(out|\.)/.test(name));
  const files = filesDigest([
    ...paths.map((path) => ({ name: basename(path), path })),
    ...ofKitchen.map((name) => ({ name, path: join(kitchen.folder, name) })),
  ]);
  return `${JSON.stringify({ ...runBasis(project), parameters, files }, null, 1)}\n`;
}
