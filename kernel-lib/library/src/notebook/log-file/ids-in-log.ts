import { closeSync, fstatSync, openSync, readFileSync } from "node:fs";
import { failAll } from "../../check/csv";
import { csvLine } from "../../check/csv-line";
import { type LogShape, logShape } from "../../trials/log/log-shape";
import { readTrials } from "../../trials/log/read-trials";
import { logFormat } from "../../trials/log/table/log-table";
import { readBytes } from "./read-bytes";
import { logText } from "./trial-log";

/** What is known of a log that was read before. */
interface SeenLog {
  readonly node: number;
  readonly size: number;
  /** its last bytes */
  readonly end: string;
  readonly ids: Set<string>;
  /** null of a workbook */
  readonly shape: LogShape | null;
}

const seen = new Map<string, SeenLog>();

/** How many bytes before the end are looked at to tell whether a log only grew. */
const END_BYTES = 256;

/**
 * The trials' names in a log, and its shape. A log that only grew since it was last asked for is read from there on; any
 * other is read whole. Throws, with every problem, when the log is not sound.
 */
export function idsInLog(
  path: string,
  file: string,
): { readonly ids: ReadonlySet<string>; readonly shape: LogShape | null } {
  const handle = openSync(path, "r");
  try {
    const { ino, size } = fstatSync(handle);
    const known = seen.get(path);
    if (known !== undefined && known.node === ino && size >= known.size && endOf(handle, known.size) === known.end) {
      if (size > known.size) grow(known, new TextDecoder().decode(readBytes(handle, known.size, size - known.size)));
      seen.set(path, { ...known, size, end: endOf(handle, size) });
      return known;
    }
    const isText = logFormat(file) !== "xlsx";
    const content = isText ? logText(path) : new Uint8Array(readFileSync(path));
    const { records, problems } = readTrials(content, file);
    failAll(problems);
    const ids = new Set(records.map(({ trialId }) => trialId));
    const shape = typeof content === "string" ? { ...logShape(content, file), lines: [] } : null;
    const log = { node: ino, size, end: endOf(handle, size), ids, shape };
    seen.set(path, log);
    return log;
  } finally {
    closeSync(handle);
  }
}

function grow({ ids, shape }: SeenLog, text: string): void {
  if (shape === null) return;
  const { format, columns, delimiter, sign, file } = shape;
  const head =
    format === "jsonl"
      ? ""
      : `${csvLine(
          columns.map(({ heading }) => heading),
          delimiter,
        )}\n`;
  const { records, problems } = readTrials(
    head + text,
    file,
    format === "jsonl" ? { format } : { format, decimalSign: sign },
  );
  failAll(problems);
  for (const { trialId } of records) ids.add(trialId);
}

function endOf(handle: number, size: number): string {
  return new TextDecoder("latin1").decode(readBytes(handle, Math.max(0, size - END_BYTES), Math.min(size, END_BYTES)));
}
