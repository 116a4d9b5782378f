import { nearestName } from "../check/nearest-name";
import type { Slip } from "../check/slip";
import { readProbeTrace } from "../heat/probe/probe-trace";
import type { KitchenFile, TrialTrace } from "./kitchen";

/** Traces, with what cannot stay as it is. */
export interface ReadTraces {
  readonly traces: readonly TrialTrace[];
  readonly slips: readonly Slip[];
  readonly notices: readonly string[];
}

/**
 * Reads the loggers' files of a kitchen, each named after its trial: `traces/T-07.csv` is the trace of trial T-07, whose slab,
 * appliance and setpoint stand in the log.
 *
 * @param files from the folder `traces`
 * @param trialIds the names of the trials in all logs; `null` when a log could not be read whole
 */
export function readTraces(files: readonly KitchenFile[], trialIds: readonly string[] | null): ReadTraces {
  const traces: TrialTrace[] = [];
  const slips: Slip[] = [];
  for (const { file, text } of files) {
    const trialId = file.replace(/^traces\//, "").replace(/\.csv$/, "");
    if (trialIds !== null && !trialIds.includes(trialId)) {
      const expected = "a file named after a trial in trials/, so that its slab and setpoint are known";
      slips.push({ file, row: null, at: null, expected, got: null, nearest: nearestName(trialId, trialIds) });
    }
    try {
      traces.push(Object.freeze({ trialId, trace: readProbeTrace(text, { file }) }));
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      slips.push(slipOf(file, error.message));
    }
  }
  const notices = traces.flatMap(({ trace }) => trace.notices.map((notice) => `${trace.file}: ${notice}`));
  return { traces: Object.freeze(traces), slips, notices };
}

/** What `readProbeTrace` says, as a slip: `"readProbeTrace: FILE row 3, column core_c must be a number, got …"`. */
function slipOf(file: string, message: string): Slip {
  const said = message.slice(message.indexOf(file) + file.length);
  const row = /^ row (\d+)/.exec(said);
  const at = /^(?: row \d+)?,? (column [^,]*?) must /.exec(said);
  const must = said.indexOf(" must ");
  const expected = said.slice(must + " must ".length).replace(/^(be|have|hold) /, "");
  return { file, row: row === null ? null : Number(row[1]), at: at?.[1] ?? null, expected, got: null, nearest: null };
}
