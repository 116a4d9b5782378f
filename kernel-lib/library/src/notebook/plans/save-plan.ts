import { randomUUID } from "node:crypto";
import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
} from "node:fs";
import { join } from "node:path";
import { planText, readPlan } from "../../advice/run-sheet/plan-text";
import { PLAN_NAME, type TrialPlan } from "../../advice/run-sheet/trial-plan";
import { fail } from "../../check/check";
import { nearestName } from "../../check/nearest-name";
import { kitchenFolder } from "../kitchen-folder-of";
import { syncFolder, writeAll } from "../log-file/whole-file";

/** The folder of a kitchen that holds its plans, a file a plan. */
const PLANS = "plans";

/** Where a plan lies. */
export interface SavedPlan {
  /** as `"plans/monday.json"` */
  readonly file: string;
  readonly sentence: string;
}

/**
 * Saves a plan as `plans/NAME.json` in the kitchen, whole or not at all. Nothing that is there is overwritten: the same plan again is
 * taken as saved, another under the same name is refused.
 *
 * @param folder the kitchen's; the one that `loadKitchen` takes unless given
 */
export function savePlan(plan: TrialPlan, { folder }: { readonly folder?: string } = {}): SavedPlan {
  const where = "savePlan: folder";
  const place = join(kitchenFolder(folder, where), PLANS);
  const text = planText(plan);
  const file = `${PLANS}/${plan.name}.json`;
  const path = join(place, `${plan.name}.json`);
  const twice = plansBeside(plan.name, folder).find(({ trialIds }) =>
    plan.trials.some(({ trialId }) => trialIds.has(trialId)),
  );
  if (twice !== undefined) {
    const { trialId } = plan.trials.find((trial) => twice.trialIds.has(trial.trialId)) ?? plan.trials[0];
    const must = `must have names of their own (${twice.file} plans it already): make the plan with taken: plannedNames()`;
    fail("savePlan: trials", must, trialId);
  }
  mkdirSync(place, { recursive: true });
  const draft = join(place, `.${plan.name}.${randomUUID()}.part`);
  try {
    const handle = openSync(draft, "wx", 0o644);
    try {
      writeAll(handle, new TextEncoder().encode(text), 0);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    // a link fails where the name is taken, in one step: nobody's plan is written over
    linkSync(draft, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    if (readFileSync(path, "utf8") !== text)
      fail("savePlan: name", `must be a name that no other plan has (${file} holds another)`, plan.name);
    return Object.freeze({ file, sentence: `${file} held this plan already.` });
  } finally {
    rmSync(draft, { force: true });
  }
  syncFolder(place);
  return Object.freeze({
    file,
    sentence: `${plan.trials.length === 1 ? "1 trial is" : `${plan.trials.length} trials are`} planned in ${file}.`,
  });
}

/**
 * A plan that was saved, every number as it was.
 *
 * @param name as it was saved, without its ending
 * @throws where there is none, naming the nearest, or the file is no plan
 */
export function loadPlan(name: string, { folder }: { readonly folder?: string } = {}): TrialPlan {
  const place = kitchenFolder(folder, "loadPlan: folder");
  const names = planNames(place);
  if (!names.includes(name)) {
    const nearest = nearestName(name, names);
    const known = names.length === 0 ? "a plan that was saved, and none was" : `one of ${names.join(", ")}`;
    fail("loadPlan: name", `must be ${nearest === null ? known : `a plan that was saved, ${nearest} perhaps`}`, name);
  }
  const file = `${PLANS}/${name}.json`;
  const plan = readPlan(readFileSync(join(place, file), "utf8"), file);
  if (plan.name !== name) fail(`loadPlan: ${file}`, "must hold the plan of its own name", plan.name);
  return plan;
}

/**
 * Names of the trials that a kitchen's plans hold: `trialPlan` takes them as `taken`, so that no two plans name a trial alike.
 *
 * @param folder the kitchen's; the one that `loadKitchen` takes unless given
 * @example
 * plannedNames("data").length; // → 0
 */
export function plannedNames(folder?: string): readonly string[] {
  return [...new Set(plansBeside(null, folder).flatMap(({ trialIds }) => [...trialIds]))];
}

/** The other plans of a kitchen that can be read. */
function plansBeside(
  name: string | null,
  folder: string | undefined,
): readonly { readonly file: string; readonly trialIds: ReadonlySet<string> }[] {
  return planNames(folder)
    .filter((other) => other !== name)
    .flatMap((other) => {
      try {
        const { trials } = loadPlan(other, { folder });
        return [{ file: `${PLANS}/${other}.json`, trialIds: new Set(trials.map(({ trialId }) => trialId)) }];
      } catch (error) {
        if (error instanceof RangeError) return [];
        throw error;
      }
    });
}

/**
 * Names of the plans that a kitchen keeps, in order.
 *
 * @param folder the kitchen's; the one that `loadKitchen` takes unless given
 * @example
 * planNames("data").length; // → 0
 */
export function planNames(folder?: string): readonly string[] {
  const place = join(kitchenFolder(folder, "planNames: folder"), PLANS);
  if (!existsSync(place)) return [];
  return readdirSync(place)
    .filter((file) => file.endsWith(".json") && PLAN_NAME.test(file.slice(0, -".json".length)))
    .map((file) => file.slice(0, -".json".length))
    .sort();
}
