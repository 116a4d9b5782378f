import type { Trace } from "./trace";

/** Legend entries set in rows, one entry a name. */
export function legendRows(
  traces: readonly Trace[],
  width: number,
): { readonly trace: Trace; readonly at: number }[][] {
  const rows: { trace: Trace; at: number }[][] = [];
  const seen = new Set<string>();
  let at = width;
  for (const trace of traces) {
    const name = String(trace.name);
    if (seen.has(name)) continue;
    seen.add(name);
    const room = 46 + 6.6 * name.length;
    if (at + room > width - 12) {
      rows.push([]);
      at = 20;
    }
    rows.at(-1)?.push({ trace, at });
    at += room;
  }
  return rows;
}
