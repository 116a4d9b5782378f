const MARKS: ReadonlySet<string> = new Set([
  "n/a",
  "na",
  "n.a.",
  "n.a",
  "#n/a",
  "-",
  "–",
  "—",
  "−",
  "--",
  "?",
  "??",
  "???",
  "none",
  "nil",
  "null",
  "nan",
  "unknown",
  "not known",
  "not measured",
  "not taken",
  "missing",
  "tbd",
]);

/** Whether a cell says that nothing is known: `n/a`, `–`, `?`, `none`. */
export function isUnknown(cell: string): boolean {
  return cell.length <= 12 && MARKS.has(cell.toLowerCase());
}
