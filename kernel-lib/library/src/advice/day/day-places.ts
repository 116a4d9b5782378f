import { fail, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { temperatureText } from "../../units/temperature-text";
import { parseClock } from "../../units/typed/parse-clock";

/** How long the steps of the hands take (min). */
export interface DayMinutes {
  /** one mix, whatever its size */
  readonly mix: number;
  /** one pan spread or filled */
  readonly spread: number;
  /** one slab cut */
  readonly cut: number;
  /** one piece coated */
  readonly coatPiece: number;
  /** an oven or a basket filled */
  readonly fillOven: number;
  /** and emptied */
  readonly emptyOven: number;
  /** an oven comes back to its setpoint between two loads */
  readonly recover: number;
  /** the pieces of one pan packed */
  readonly pack: number;
}

/** What a kitchen has for a batch day; what is left out is as in `USUAL_DAY`. */
export interface DayPlaces {
  /** when hands are there: `"8:00"`, `"5:00 pm"` */
  readonly opens?: string;
  readonly closes?: string;
  /** when they are away */
  readonly breaks?: readonly { readonly from: string; readonly until: string }[];
  /** people who work at the same time */
  readonly hands?: number;
  /** freezer air (°C) */
  readonly freezerC?: number;
  readonly airflow?: "still" | "fan";
  /** pans or trays that stand side by side on the freezer's shelves */
  readonly freezerPlaces?: number;
  /** pans that may stand above each other on one place, with a gap: it freezes more slowly, and is done only where the day gets shorter */
  readonly stackUpTo?: number;
  /** clear height between stacked pans (mm) */
  readonly gapMm?: number;
  /** room in which slabs temper and pieces cool (°C) */
  readonly roomC?: number;
  /** how many of an appliance, by its id; one of each unless said */
  readonly appliances?: Readonly<Record<string, number>>;
  readonly minutes?: Partial<DayMinutes>;
}

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
  readonly minutes: DayMinutes;
  /** what was not said and stands in, as a sentence; null when everything was said */
  readonly standIns: string | null;
}

/** What stands in where a kitchen says nothing: our judgement of a small test kitchen. */
export const USUAL_DAY: Required<Omit<DayPlaces, "appliances" | "minutes">> & { readonly minutes: DayMinutes } =
  freezeDeep({
    opens: "8:00",
    closes: "17:00",
    breaks: [{ from: "12:00", until: "12:45" }],
    hands: 1,
    freezerC: -18,
    airflow: "still",
    freezerPlaces: 4,
    stackUpTo: 1,
    gapMm: 30,
    roomC: 20,
    minutes: { mix: 20, spread: 8, cut: 8, coatPiece: 0.15, fillOven: 2, emptyOven: 2, recover: 3, pack: 10 },
  });

/** Fills in and checks a day's places. */
export function settlePlaces(places: DayPlaces, where: string): SettledPlaces {
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
  const unsaid = [
    ...(given.opens === undefined && given.closes === undefined ? [`hands from ${all.opens} to ${all.closes}`] : []),
    ...(given.hands === undefined ? ["one pair of hands"] : []),
    ...(given.freezerC === undefined
      ? [`${all.airflow} freezer air at ${temperatureText(all.freezerC, "metric")}`]
      : []),
    ...(given.freezerPlaces === undefined ? [`${all.freezerPlaces} places in the freezer`] : []),
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
    minutes,
    standIns: unsaid.length === 0 ? null : `Not said, and so as usual (our judgement): ${unsaid.join(", ")}.`,
  });
}
