import type { AxisLayout, Place } from "./trace";

/** Turns places on one axis into pixels, and knows where its ticks stand. */
export interface Scale {
  /** pixel of a place; `null` where there is none */
  readonly at: (place: Place | undefined) => number | null;
  /** pixels of one category, or of one unit of a number axis */
  readonly step: number;
  readonly ticks: readonly { readonly pixel: number; readonly label: string }[];
  /** whether places are names */
  readonly named: boolean;
}

/**
 * The scale of an axis over all the places that are drawn on it, from pixel `from` to pixel `to`. Names stand at equal
 * steps in the order of their coming; days, written as `2026-03-14`, where the calendar has them; numbers get round ticks and a little room at both ends.
 */
export function scaleOf(places: readonly Place[], layout: AxisLayout, from: number, to: number, zero: boolean): Scale {
  const shown = places.filter(
    (place): place is number | string =>
      typeof place === "string" || (typeof place === "number" && Number.isFinite(place)),
  );
  const reversed = layout.autorange === "reversed";
  if (layout.type === "date") return dayScale(shown.map(String), from, to);
  if (layout.type === "category" || shown.some((place) => typeof place === "string")) {
    const names = [...new Set([...(layout.categoryarray ?? []), ...shown.map(String)])];
    const step = (to - from) / Math.max(1, names.length);
    const pixel = (index: number): number => from + step * ((reversed ? names.length - 1 - index : index) + 0.5);
    return {
      named: true,
      step: Math.abs(step),
      at: (place) => {
        const index = place === null || place === undefined ? -1 : names.indexOf(String(place));
        return index < 0 ? null : pixel(index);
      },
      ticks: names.map((label, index) => ({ pixel: pixel(index), label })),
    };
  }
  const log = layout.type === "log";
  const inner = (value: number): number => (log ? Math.log10(value) : value);
  const numbers = (shown as number[]).map(inner).filter(Number.isFinite);
  const [low, high] = layout.range ?? extent(numbers, zero || layout.rangemode === "tozero");
  const [start, end] = reversed ? [high, low] : [low, high];
  const pixel = (value: number): number => from + ((value - start) / (end - start)) * (to - from);
  return {
    named: false,
    step: Math.abs((to - from) / (end - start)),
    at: (place) => {
      const value = typeof place === "number" ? inner(place) : Number.NaN;
      return Number.isFinite(value) ? pixel(value) : null;
    },
    ticks: (named(layout, [low, high], Math.abs(to - from)) ?? (log ? decades(low, high) : roundTicks(low, high))).map(
      ({ value, label }) => ({
        pixel: pixel(value),
        label,
      }),
    ),
  };
}

/** Ticks as the layout names them; null where it names none. */
function named(
  { tickvals, ticktext, type }: AxisLayout,
  [low, high]: readonly [number, number],
  pixels: number,
): readonly Tick[] | null {
  if (tickvals === undefined || ticktext === undefined || type === "log") return null;
  const ticks = tickvals
    .map((value, at) => ({ value, label: ticktext[at] ?? "" }))
    .filter(({ value }) => value >= low && value <= high);
  const longest = ticks.reduce((most, { label }) => Math.max(most, label.length), 0);
  const every = Math.ceil((ticks.length * (LETTER_PX * longest + LETTER_PX)) / pixels);
  return ticks.filter((_, at) => at % every === 0);
}

/** Width that a letter of a tick's label takes (px). */
const LETTER_PX = 7;

/** Days between two ticks: weeks, and parts and multiples of them. */
const TICK_DAYS = [1, 2, 7, 14, 28, 91, 182, 364];
const MOST_TICKS = 6;
const DAY_MS = 86_400_000;

function dayScale(days: readonly string[], from: number, to: number): Scale {
  const dayOf = (text: string): number => Date.parse(text) / DAY_MS;
  const [first, last] = days
    .map(dayOf)
    .filter(Number.isFinite)
    .reduce(
      ([low, high], day) => [Math.min(low, day), Math.max(high, day)],
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
    );
  if (!(first <= last)) return { named: false, step: 0, at: () => null, ticks: [] };
  const room = Math.max(1, 0.05 * (last - first));
  const step = (to - from) / (last - first + 2 * room);
  const pixel = (day: number): number => from + (day - first + room) * step;
  const every =
    TICK_DAYS.find((count) => (last - first) / count < MOST_TICKS) ?? Math.ceil((last - first) / MOST_TICKS);
  const ticks: Scale["ticks"][number][] = [];
  for (let day = first; day <= last; day += every)
    ticks.push({ pixel: pixel(day), label: new Date(day * DAY_MS).toISOString().slice(0, 10) });
  return {
    named: false,
    step: Math.abs(step),
    at: (place) => {
      const day = typeof place === "string" ? dayOf(place) : Number.NaN;
      return Number.isFinite(day) ? pixel(day) : null;
    },
    ticks,
  };
}

function extent(numbers: readonly number[], zero: boolean): [number, number] {
  let low = zero ? 0 : Number.POSITIVE_INFINITY;
  let high = zero ? 0 : Number.NEGATIVE_INFINITY;
  for (const value of numbers) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (!(low <= high)) return [0, 1];
  const least = Math.max(1e-30, 1e-12 * Math.max(Math.abs(low), Math.abs(high)));
  if (high - low < least) return [low - 0.5 * Math.max(1, Math.abs(low)), high + 0.5 * Math.max(1, Math.abs(high))];
  const room = 0.05 * (high - low);
  return [zero && low === 0 ? 0 : low - room, zero && high === 0 ? 0 : high + room];
}

interface Tick {
  readonly value: number;
  readonly label: string;
}

function roundTicks(low: number, high: number): Tick[] {
  const rough = Math.abs(high - low) / 6;
  const size = 10 ** Math.floor(Math.log10(rough));
  const step = size * (rough / size > 5 ? 10 : rough / size > 2 ? 5 : rough / size > 1 ? 2 : 1);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const [from, to] = low < high ? [low, high] : [high, low];
  const ticks: Tick[] = [];
  for (let count = Math.ceil(from / step - 1e-9); count * step <= to + 1e-9 * step; count++) {
    ticks.push({ value: count * step, label: labelOf(count * step, digits) });
  }
  return ticks;
}

function labelOf(value: number, digits: number): string {
  if (value === 0) return "0";
  return digits > 5 || Math.abs(value) >= 1e7 ? value.toExponential(1) : value.toFixed(digits);
}

function decades(low: number, high: number): Tick[] {
  const ticks: Tick[] = [];
  for (let power = Math.floor(low); power <= Math.ceil(high); power++) {
    for (const lead of high - low > 2 ? [1] : [1, 2, 5]) {
      const value = power + Math.log10(lead);
      if (value >= low && value <= high)
        ticks.push({ value, label: String(Number((lead * 10 ** power).toPrecision(3))) });
    }
  }
  return ticks;
}
