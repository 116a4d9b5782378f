import type { Trace } from "./trace";

/** Bars of one place set on each other: each gets the sum of those before it as its base. */
export function stackedBars(traces: readonly Trace[]): Trace[] {
  const reached = new Map<string, number>();
  return traces.map((trace) => {
    if (trace.type !== "bar") return trace;
    const [places, lengths] = trace.orientation === "h" ? [trace.y, trace.x] : [trace.x, trace.y];
    const base = (places ?? []).map((place, at) => {
      const length = Number(lengths?.[at] ?? 0);
      const key = `${place} ${length < 0}`;
      const from = reached.get(key) ?? 0;
      reached.set(key, from + length);
      return from;
    });
    return { ...trace, base };
  });
}
