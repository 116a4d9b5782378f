import { clipped } from "../../../check/check";
import type { LogLine, LogTable } from "./log-table";

/** The most names that a log may use: our judgement, ten times what a log needs. */
const MOST_NAMES = 500;

/**
 * Takes JSON Lines apart: each line an object, its names either the fields of a trial (`setpointC`) or headings
 * (`setpoint_f`), which become the columns of all lines. Numbers stay as they are written.
 */
export function jsonlTable(text: string): LogTable {
  const names = new Map<string, number>();
  const found: {
    readonly row: number;
    readonly cells: Map<number, string>;
    readonly got: string;
    fault: string | null;
    readonly from: number;
    readonly to: number;
  }[] = [];
  let row = 0;
  let next = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (const line of text.replace(/^\ufeff/, "").split("\n")) {
    row++;
    const from = next;
    next += line.length + 1;
    if (line.trim() === "") continue;
    const cells = new Map<number, string>();
    let fault: string | null = null;
    const put = (name: string, value: unknown): void => {
      const cell = cellOf(value);
      if (cell === "") return;
      let at = names.get(name);
      if (at === undefined && names.size < MOST_NAMES) {
        at = names.size;
        names.set(name, at);
      }
      if (at === undefined) fault ??= `at most ${MOST_NAMES} names in a log`;
      else if (cells.has(at)) fault ??= `one value for ${clipped(name)}`;
      else cells.set(at, cell);
    };
    // what cannot be a trial is not tried: an exception a line costs more than all the rest
    const trimmed = line.trim();
    if (!trimmed.startsWith("{")) fault = "a trial in braces on a line";
    else
      try {
        putAll(JSON.parse(trimmed) as Record<string, unknown>, put);
      } catch {
        fault = "a trial as JSON on a line of its own";
      }
    if (cells.size === 0) fault ??= "a trial with its fields";
    const to = from + line.length - (line.endsWith("\r") ? 1 : 0);
    found.push({ row, cells, got: JSON.stringify(trimmed.slice(0, 60)), fault, from, to });
  }
  const headings = [...names.keys()];
  const lines = found.map(({ row: at, cells, got, fault, from, to }): LogLine => {
    const list = headings.map((_, column) => cells.get(column) ?? "");
    return fault === null
      ? { row: at, cells: list, from, to }
      : { row: at, cells: list, from, to, expected: fault, got };
  });
  const head: LogLine[] = lines.length === 0 ? [] : [{ row: 0, cells: headings }];
  return {
    lines: [...head, ...lines],
    slips: [],
    notices: [],
    decimalSign: ".",
    usualSign: ".",
    delimiter: null,
    isFramed: true,
  };
}

function putAll(said: Record<string, unknown>, put: (name: string, value: unknown) => void): void {
  for (const [name, value] of Object.entries(said)) {
    if (name === "crispTasters" || name === "brownTasters") continue;
    // the coldest of several readings stands beside them
    if (name === "coreC" && isColdest(value, said.coresC)) continue;
    if (name === "extra" && typeof value === "object" && value !== null && !Array.isArray(value))
      for (const [heading, one] of Object.entries(value)) put(heading, one);
    else if (name === "crispScores" || name === "brownScores") {
      const tasters = said[name.replace("Scores", "Tasters")];
      if (Array.isArray(value) && Array.isArray(tasters) && tasters.length === value.length)
        put(
          name,
          value.map((score, at) => `${String(tasters[at])}:${String(score)}`),
        );
      else put(name, value);
    } else if (name === "programme" && Array.isArray(value)) put("programme_c", value.map(stepText));
    else put(name === "coresC" ? "coreC" : name, value);
  }
}

function isColdest(core: unknown, cores: unknown): boolean {
  if (!Array.isArray(cores) || cores.length === 0) return false;
  return cores.every((one) => typeof one === "number" && (core as number) <= one) && cores.includes(core);
}

function stepText(step: unknown): string {
  const { setpointC, timeMin } = (step ?? {}) as Record<string, unknown>;
  return `${String(setpointC)}x${String(timeMin)}`;
}

function cellOf(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return String(value);
  if (Array.isArray(value) && value.every((one) => typeof one !== "object")) return value.map(String).join(";");
  return JSON.stringify(value);
}
