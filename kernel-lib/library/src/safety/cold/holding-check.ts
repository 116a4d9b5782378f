import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";

/** Time that food spent out of the cold, for one reason. */
export interface HoldingSpan {
  /** as a cook calls it: `"cut on the counter"` */
  readonly what: string;
  /** least and most (min), equal where a clock was read; null: nobody knows */
  readonly minutes: readonly [number, number] | null;
}

/** Food, or an egg wash, out of the cold. */
export interface HoldingCheckOptions {
  /** `"batter for the second load"` */
  readonly what: string;
  readonly spans: readonly HoldingSpan[];
}

/** Whether food was out of the cold for too long. */
export interface HoldingCheck {
  readonly kind: "holding check";
  readonly what: string;
  readonly verdict: "passes" | "fails" | "not enough data";
  /** all of it together, least and most (min); null where a span is not known */
  readonly minutes: readonly [number, number] | null;
  readonly limitMin: number;
  readonly sentence: string;
  /** what to do; null where nothing is */
  readonly todo: string | null;
  readonly source: string;
  readonly caution: string;
}

/** Food that starts at 5 °C (41 °F) or colder may be without cold for so long, then it is cooked, served or thrown away (min). */
export const HOLDING_LIMIT_MIN = 240;

const SOURCE =
  "FDA Food Code 3-501.19(B), from memory: 4 h out of temperature control, by a written procedure, from 5 °C (41 °F) or colder";

/**
 * Time out of the cold against the 4 h of time as a public health control: a slab that tempers and is cut, pieces that are
 * coated, a wash that stands on the counter.
 *
 * All spans count together, the strict reading: being put back into the cold does not start the clock again. It passes when
 * it does with the longest of each, fails when it does with the shortest, and else the times do not tell.
 *
 * @example
 * holdingCheck({ what: "egg wash", spans: [{ what: "on the counter", minutes: [90, 120] }] }).verdict; // → "passes"
 * holdingCheck({ what: "egg wash", spans: [{ what: "on the counter", minutes: [250, 300] }] }).verdict; // → "fails"
 * holdingCheck({ what: "egg wash", spans: [{ what: "on the counter", minutes: null }] }).verdict; // → "not enough data"
 *
 * Reference: FDA Food Code, 3-501.19, from memory.
 */
export function holdingCheck({ what, spans }: HoldingCheckOptions): HoldingCheck {
  const where = "holdingCheck";
  if (spans.length < 1) fail(`${where}: spans`, "must hold at least one", spans.length);
  for (const { what: name, minutes } of spans)
    if (minutes !== null && !(minutes[0] >= 0 && minutes[1] >= minutes[0] && Number.isFinite(minutes[1])))
      fail(`${where}: minutes of ${name}`, "must be least and most, from 0 up", minutes);
  const sum = (end: 0 | 1): number => spans.reduce((total, { minutes }) => total + (minutes?.[end] ?? 0), 0);
  const [least, most] = [sum(0), sum(1)];
  const unknown = spans.filter(({ minutes }) => minutes === null).map(({ what: name }) => name);
  const verdict =
    least > HOLDING_LIMIT_MIN
      ? "fails"
      : unknown.length === 0 && most <= HOLDING_LIMIT_MIN
        ? "passes"
        : "not enough data";
  const range =
    Math.ceil(least) === Math.ceil(most) ? `${Math.ceil(most)} min` : `${Math.ceil(least)} to ${Math.ceil(most)} min`;
  return freezeDeep({
    kind: "holding check" as const,
    what,
    verdict,
    minutes: unknown.length > 0 ? null : ([least, most] as const),
    limitMin: HOLDING_LIMIT_MIN,
    sentence:
      unknown.length > 0 && verdict !== "fails"
        ? `${what}: nobody noted how long it was out of the cold (${unknown.join(", ")}), 4 h allowed.`
        : `${what}: ${range} out of the cold, 4 h allowed (${spans.map(({ what: name, minutes }) => `${name} ${minutes === null ? "not known" : `${Math.ceil(minutes[1])} min`}`).join(", ")}).`,
    todo:
      verdict === "passes"
        ? null
        : verdict === "fails"
          ? "Throw it away, unless your licensed process authority decides otherwise. Next time take out less at a time, and keep the rest in the fridge or on ice."
          : "Take it as too long. Next time note when it comes out and goes back, take out less at a time, and keep the rest in the fridge or on ice.",
    source: SOURCE,
    caution:
      "Local food codes and licensed practice come first: many ask for a written procedure, or allow no time at all.",
  });
}
