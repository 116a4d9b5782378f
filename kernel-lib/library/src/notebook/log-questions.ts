import { logHeadings } from "../trials/log/log-fields";
import { kitchenFolder } from "./kitchen-folder-of";
import { openKitchen } from "./log-file/trial-log";

/** What a person is asked for when a trial is logged at a terminal. */
export interface LogQuestions {
  readonly variants: readonly string[];
  /** headings of a new log in the kitchen's units, those first that a usual trial fills */
  readonly headings: readonly string[];
}

/** What `logTrial` takes from the variant and the day, so that nobody needs to be asked. */
const TAKEN: ReadonlySet<string> = new Set([
  "trial",
  "date",
  "variant",
  "pan",
  "appliance",
  "batch",
  "setpoint",
  "start",
  "load_fraction",
  "flip",
  "slab",
  "cook",
]);

/** The columns to ask for, and the variants to choose from, of a kitchen. */
export function logQuestions(folder?: string): LogQuestions {
  const { kitchen } = openKitchen(kitchenFolder(folder, "logQuestions: folder"), "logQuestions: folder");
  const asked = logHeadings(kitchen.units).filter(
    (heading) => !TAKEN.has(heading) && !TAKEN.has(heading.replace(/_[^_]+$/, "")),
  );
  return Object.freeze({
    variants: kitchen.variants.map(({ variantId }) => variantId),
    headings: Object.freeze(asked),
  });
}
