import { fail, positive, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { pullDownW } from "../../heat/freezing/freezer-load";
import type { DayMinutes, DayPlaces } from "../../trials/day/kitchen-day";
import { clockText } from "../../units/clock-text";
import { parseClock } from "../../units/typed/parse-clock";
import type { KitchenUnits } from "../../units/unit-table";

export type { DayMinutes, DayPlaces };

/** A day's places, filled in and checked; times in minutes after midnight. */
export interface SettledPlaces {
  readonly opensMin: number;
  readonly closesMin: number;
  readonly breaksMin: readonly { readonly from: number; readonly until: number }[];
  readonly hands: number;
  readonly freezerC: number;
  readonly airflow: "still" | "fan";
  readonly freezerPlaces: number;
  readonly stackUpTo: number;
  readonly gapMm: number;
  readonly roomC: number;
  readonly appliances: Readonly<Record<string, number>>;
  /** what the freezer takes away (W), and by what share that may be off either way [-] */
  readonly freezerRemovesW: number;
  readonly removesError: number;
  readonly storedKg: number;
  readonly minutes: DayMinutes;
  /** what loggers saw instead of `minutes.recover`, by appliance */
  readonly recoverMin?: Readonly<Record<string, number>>;
  /** what was not said and stands in, as a sentence; null when everything was said */
  readonly standIns: string | null;
}

/** What stands in where a kitchen says nothing: our judgement of a small test kitchen. */
export const USUAL_DAY: Required<
  Omit<DayPlaces, "appliances" | "minutes" | "pullDown" | "shelf" | "shelves" | "shelfClearMm">
> & { readonly minutes: DayMinutes } = freezeDeep({
  opens: "8:00",
  closes: "17:00",
  breaks: [{ from: "12:00", until: "12:45" }],
  hands: 1,
  freezerC: -18,
  airflow: "still",
  freezerPlaces: 4,
  stackUpTo: 3,
  gapMm: 30,
  roomC: 20,
  freezerRemovesW: 80,
  storedKg: 10,
  minutes: { mix: 20, spread: 8, cut: 8, coatPiece: 0.15, fillOven: 2, emptyOven: 2, recover: 3, pack: 10 },
});

/** Two of them as people say them. */
const USUAL_TEXT: Readonly<Record<KitchenUnits, { readonly freezer: string; readonly stored: string }>> = {
  metric: { freezer: "-18 °C (0 °F)", stored: "10 kg (22 lb)" },
  us: { freezer: "0 °F (-18 °C)", stored: "22 lb (10 kg)" },
};

/** A logged pull-down may be off by this share, and a stand-in by the second [-]; our judgement. */
const LOGGED_ERROR = 0.3;
const GUESSED_ERROR = 0.5;

/** Fills in and checks a day's places; what stands in is said in a kitchen's units, metric unless given. */
export function settlePlaces(places: DayPlaces, where: string, units: KitchenUnits = "metric"): SettledPlaces {
  const given = Object.fromEntries(Object.entries(places).filter(([, value]) => value !== undefined)) as DayPlaces;
  const all = { ...USUAL_DAY, ...given };
  const count = (value: number, name: string, most: number): number => {
    if (!(Number.isInteger(value) && value >= 1 && value <= most))
      fail(`${where}: ${name}`, `must be a whole number from 1 to ${most}`, value);
    return value;
  };
  const opensMin = parseClock(all.opens, `${where}: opens`);
  const closesMin = parseClock(all.closes, `${where}: closes`);
  if (!(closesMin > opensMin)) fail(`${where}: closes`, `must be later than ${all.opens}`, all.closes);
  const breaksMin = all.breaks.map(({ from, until }, at) => {
    const span = {
      from: parseClock(from, `${where}: break ${at + 1}`),
      until: parseClock(until, `${where}: break ${at + 1}`),
    };
    if (!(span.until > span.from)) fail(`${where}: break ${at + 1}`, `must end after ${from}`, until);
    return span;
  });
  if (all.airflow !== "still" && all.airflow !== "fan")
    fail(`${where}: airflow`, "must be still or fan", all.airflow as unknown);
  const minutes = { ...USUAL_DAY.minutes, ...all.minutes };
  for (const [name, value] of Object.entries(minutes)) within(value, 0, 600, `${where}: minutes.${name}`, "min");
  for (const [id, value] of Object.entries(all.appliances ?? {})) count(value, `appliances.${id}`, 100);
  const removesW =
    given.freezerRemovesW ?? (given.pullDown === undefined ? USUAL_DAY.freezerRemovesW : pullDownW(given.pullDown));
  const isLogged = given.freezerRemovesW !== undefined || given.pullDown !== undefined;
  const unsaid = [
    ...(given.opens === undefined && given.closes === undefined
      ? [`hands from ${clockText(opensMin, units)} to ${clockText(closesMin, units)}`]
      : []),
    ...(given.hands === undefined ? ["one pair of hands"] : []),
    ...(given.freezerC === undefined ? [`${all.airflow} freezer air at ${USUAL_TEXT[units].freezer}`] : []),
    ...(given.freezerPlaces === undefined ? [`${all.freezerPlaces} places in the freezer`] : []),
    ...(isLogged ? [] : [`a freezer that takes away ${removesW} W`]),
    ...(given.storedKg === undefined ? [`${USUAL_TEXT[units].stored} of food in it`] : []),
    ...(given.minutes === undefined ? ["the minutes of every step by hand"] : []),
  ];
  return freezeDeep({
    opensMin,
    closesMin,
    breaksMin,
    hands: count(all.hands, "hands", 50),
    freezerC: within(all.freezerC, -60, -10, `${where}: freezerC`, "°C"),
    airflow: all.airflow,
    freezerPlaces: count(all.freezerPlaces, "freezerPlaces", 500),
    stackUpTo: count(all.stackUpTo, "stackUpTo", 20),
    gapMm: within(all.gapMm, 5, 500, `${where}: gapMm`, "mm"),
    roomC: within(all.roomC, 5, 35, `${where}: roomC`, "°C"),
    appliances: { ...all.appliances },
    freezerRemovesW: positive(removesW, `${where}: freezerRemovesW`, "W"),
    removesError: isLogged ? LOGGED_ERROR : GUESSED_ERROR,
    storedKg: within(all.storedKg, 0, 5000, `${where}: storedKg`, "kg"),
    minutes,
    standIns: unsaid.length === 0 ? null : `Not said, and so as usual (our judgement): ${unsaid.join(", ")}.`,
  });
}
