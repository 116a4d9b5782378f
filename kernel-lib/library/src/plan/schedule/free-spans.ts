/** A span of time. */
export interface FreeSpan {
  readonly from: number;
  readonly until: number;
}

/**
 * Spans between the first and the last of some busy ones in which nothing is busy, of a least length.
 *
 * @example
 * freeSpans([{ start: 0, end: 30 }, { start: 20, end: 40 }, { start: 100, end: 110 }], 15); // → [{ from: 40, until: 100 }]
 */
export function freeSpans(
  busy: readonly { readonly start: number; readonly end: number }[],
  least: number,
): readonly FreeSpan[] {
  const sorted = [...busy].filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start);
  const spans: FreeSpan[] = [];
  let reached = sorted[0]?.end ?? 0;
  for (const { start, end } of sorted) {
    if (start - reached >= least) spans.push(Object.freeze({ from: reached, until: start }));
    reached = Math.max(reached, end);
  }
  return Object.freeze(spans);
}
