import { clipped } from "../../check/check";
import { readCsv } from "../../check/csv";
import { freezeDeep } from "../../check/freeze-deep";
import { nearestName } from "../../check/nearest-name";
import type { Notice } from "../../check/notice";
import type { Slip } from "../../check/slip";
import { clockMin } from "../../units/typed/parse-clock";
import { readFloor } from "../../units/typed/read-area";
import { readNumber } from "../../units/typed/read-number";
import { KITCHEN_UNIT, type KitchenUnits } from "../../units/unit-table";
import type { DayMinutes, DayPlaces } from "./kitchen-day";

/** What `day.csv` says, as far as it can be read. */
export interface ReadKitchenDay {
  readonly day: DayPlaces;
  readonly slips: readonly Slip[];
  readonly notices: readonly Notice[];
}

type Quantity = "temperature" | "length" | "mass" | "time";

interface Line {
  /** as people write it; capitals, hyphens and underscores count for nothing */
  readonly what: string;
  readonly also?: readonly string[];
  readonly expected: string;
  /** the value as the library keeps it; undefined where it cannot be read */
  readonly read: (cell: string, units: KitchenUnits) => unknown;
  readonly put: (day: Draft, value: never) => void;
}

interface Draft {
  places: { -readonly [Field in keyof DayPlaces]: DayPlaces[Field] };
  minutes: { -readonly [Field in keyof DayMinutes]?: number };
  breaks: { readonly from: string; readonly until: string }[];
  pullDown: { waterKg?: number; fromC?: number; toC?: number; minutes?: number };
}

const OWN_UNIT: Readonly<Record<Quantity, Readonly<Record<KitchenUnits, string>>>> = {
  temperature: { metric: "°C", us: "°F" },
  length: { metric: "mm", us: "in" },
  mass: { metric: "kg", us: "lb" },
  time: { metric: "min", us: "min" },
};

/** A quantity; a bare number is in the kitchen's own unit. */
function quantity(kind: Quantity, low: number, high: number): Line["read"] {
  return (cell, units) => {
    const read = readNumber(cell, { sign: ".", kind, base: KITCHEN_UNIT[kind], unit: OWN_UNIT[kind][units] });
    return "expected" in read || read.value < low || read.value > high ? undefined : read.value;
  };
}

function bare(low: number, high: number, whole: boolean): Line["read"] {
  return (cell) => {
    const read = readNumber(cell, { sign: ".", kind: null, base: null, unit: null, words: ["w", "watts", "people"] });
    if ("expected" in read || read.value < low || read.value > high) return undefined;
    return whole && !Number.isInteger(read.value) ? undefined : read.value;
  };
}

const clock: Line["read"] = (cell) => (clockMin(cell) === null ? undefined : cell.trim());

const span: Line["read"] = (cell) => {
  const [from, until, ...more] = cell.split(/\s*(?:\bto\b|–|-|\buntil\b)\s*/i).map((part) => part.trim());
  if (until === undefined || more.length > 0) return undefined;
  const [start, end] = [clockMin(from), clockMin(until)];
  return start === null || end === null || end <= start ? undefined : { from, until };
};

const sides: Line["read"] = (cell, units) => {
  const read = readFloor(cell, { sign: ".", unit: OWN_UNIT.length[units] });
  if (read?.shape !== "rectangle" || read.widthMm < 50 || read.lengthMm > 5000) return undefined;
  return { lengthMm: read.lengthMm, widthMm: read.widthMm };
};

const airflow: Line["read"] = (cell) => {
  const word = cell.trim().toLowerCase();
  if (["still", "no", "none"].includes(word)) return "still";
  return ["fan", "yes", "blast", "moving"].includes(word) ? "fan" : undefined;
};

const inMinutes = (what: string, field: keyof DayMinutes, also: readonly string[] = []): Line => ({
  what,
  also,
  expected: "minutes, 0 to 600",
  read: quantity("time", 0, 600),
  put: (day, value) => {
    day.minutes[field] = value;
  },
});

const COUNT = "a whole number from 1";

const LINES: readonly Line[] = [
  {
    what: "opens",
    also: ["hands from", "start"],
    expected: "a time of day, such as 8:00 or 8:00 am",
    read: clock,
    put: ({ places }, value) => {
      places.opens = value;
    },
  },
  {
    what: "closes",
    also: ["hands until", "end"],
    expected: "a time of day, such as 17:00 or 5:00 pm",
    read: clock,
    put: ({ places }, value) => {
      places.closes = value;
    },
  },
  {
    what: "break",
    also: ["away", "lunch"],
    expected: "two times of day, such as 12:00 to 12:45",
    read: span,
    put: ({ breaks }, value) => void breaks.push(value),
  },
  {
    what: "hands",
    also: ["people"],
    expected: `${COUNT} to 50`,
    read: bare(1, 50, true),
    put: ({ places }, value) => {
      places.hands = value;
    },
  },
  {
    what: "freezer",
    also: ["freezer air", "freezer temperature"],
    expected: "the freezer's air, -60 to -10 °C (-76 to 14 °F)",
    read: quantity("temperature", -60, -10),
    put: ({ places }, value) => {
      places.freezerC = value;
    },
  },
  {
    what: "freezer airflow",
    also: ["airflow", "freezer fan"],
    expected: "still or fan",
    read: airflow,
    put: ({ places }, value) => {
      places.airflow = value;
    },
  },
  {
    what: "freezer places",
    also: ["places"],
    expected: `${COUNT} to 500`,
    read: bare(1, 500, true),
    put: ({ places }, value) => {
      places.freezerPlaces = value;
    },
  },
  {
    what: "shelf",
    also: ["freezer shelf"],
    expected: "the two inside sides of a shelf, such as 600 x 450 mm or 24 x 18 in",
    read: sides,
    put: ({ places }, value) => {
      places.shelf = value;
    },
  },
  {
    what: "shelves",
    also: ["freezer shelves"],
    expected: `${COUNT} to 50`,
    read: bare(1, 50, true),
    put: ({ places }, value) => {
      places.shelves = value;
    },
  },
  {
    what: "shelf height",
    also: ["clear height", "height above a shelf"],
    expected: "the clear height above a shelf, 20 to 2000 mm (3/4 to 80 in)",
    read: quantity("length", 20, 2000),
    put: ({ places }, value) => {
      places.shelfClearMm = value;
    },
  },
  {
    what: "stack up to",
    also: ["stack"],
    expected: `${COUNT} to 20`,
    read: bare(1, 20, true),
    put: ({ places }, value) => {
      places.stackUpTo = value;
    },
  },
  {
    what: "gap",
    also: ["gap between pans"],
    expected: "the clear height between stacked pans, 5 to 500 mm (1/4 to 20 in)",
    read: quantity("length", 5, 500),
    put: ({ places }, value) => {
      places.gapMm = value;
    },
  },
  {
    what: "room",
    also: ["room temperature"],
    expected: "the room's temperature, 5 to 35 °C (41 to 95 °F)",
    read: quantity("temperature", 5, 35),
    put: ({ places }, value) => {
      places.roomC = value;
    },
  },
  {
    what: "freezer removes",
    expected: "what it takes away beside its own losses, 1 to 20000 W",
    read: bare(1, 20_000, false),
    put: ({ places }, value) => {
      places.freezerRemovesW = value;
    },
  },
  {
    what: "food in the freezer",
    also: ["stored food"],
    expected: "a mass up to 5000 kg (11000 lb)",
    read: quantity("mass", 0, 5e6),
    put: ({ places }, value: number) => {
      places.storedKg = value / 1000;
    },
  },
  {
    what: "pull-down water",
    expected: "the mass of water that was frozen, up to 100 kg (220 lb)",
    read: quantity("mass", 1, 1e5),
    put: ({ pullDown }, value: number) => {
      pullDown.waterKg = value / 1000;
    },
  },
  {
    what: "pull-down from",
    expected: "the water's temperature as it went in, 0 to 100 °C (32 to 212 °F)",
    read: quantity("temperature", 0, 100),
    put: ({ pullDown }, value) => {
      pullDown.fromC = value;
    },
  },
  {
    what: "pull-down to",
    expected: "its temperature as it came out, frozen through, -60 to 0 °C (-76 to 32 °F)",
    read: quantity("temperature", -60, 0),
    put: ({ pullDown }, value) => {
      pullDown.toC = value;
    },
  },
  {
    what: "pull-down time",
    expected: "how long that took, up to 72 h",
    read: quantity("time", 1, 72 * 60),
    put: ({ pullDown }, value) => {
      pullDown.minutes = value;
    },
  },
  inMinutes("mix", "mix", ["minutes to mix"]),
  inMinutes("spread a pan", "spread", ["spread"]),
  inMinutes("cut a slab", "cut", ["cut"]),
  inMinutes("coat a piece", "coatPiece", ["coat"]),
  inMinutes("fill an oven", "fillOven", ["fill"]),
  inMinutes("empty an oven", "emptyOven", ["empty"]),
  inMinutes("oven recovers", "recover", ["recovery", "recover"]),
  inMinutes("pack a pan", "pack", ["pack"]),
];

/** What lines of `day.csv` may be called, in the order of its page. */
export const DAY_LINES: readonly string[] = LINES.map(({ what }) => what);

const folded = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, " ");

/** Reads what a kitchen has for a batch day: a line `what,value` each; a bare number is in the kitchen's own unit. */
export function readKitchenDay(text: string, file: string, units: KitchenUnits): ReadKitchenDay {
  const csv = readCsv(text, file);
  const slips: Slip[] = [...csv.slips];
  const named = (name: string): string | undefined => csv.headings.find((heading) => folded(heading) === name);
  const [what, value] = [named("what"), named("value")];
  if (csv.headings.length > 0 && (what === undefined || value === undefined)) {
    slips.push({
      file,
      row: csv.headingRow,
      at: null,
      expected: "the headings what,value",
      got: clipped(csv.headings.join(",")),
      nearest: null,
    });
    return { day: {}, slips, notices: csv.notices };
  }
  const draft: Draft = { places: {}, minutes: {}, breaks: [], pullDown: {} };
  const seen = new Map<Line, number>();
  for (const { row, cells } of csv.rows) {
    const [name, cell] = [cells[what as string], cells[value as string]];
    const wrong = (at: string, expected: string, got: string, nearest: string | null = null): void => {
      slips.push({ file, row, at: `column ${at}`, expected, got: clipped(JSON.stringify(got)), nearest });
    };
    const line = LINES.find((one) => [one.what, ...(one.also ?? [])].some((word) => folded(word) === folded(name)));
    if (line === undefined) {
      wrong(what as string, `one of ${DAY_LINES.join(", ")}`, name, nearestName(name, [...DAY_LINES]));
      continue;
    }
    if (cell.trim() === "") continue;
    const before = seen.get(line);
    if (before !== undefined && line.what !== "break") {
      wrong(what as string, `each line once, and row ${before} has this one`, name);
      continue;
    }
    seen.set(line, row);
    const read = line.read(cell, units);
    if (read === undefined) wrong(value as string, line.expected, cell);
    else line.put(draft, read as never);
  }
  const { opens = "0:00", closes = "24:00" } = draft.places;
  if ((clockMin(closes) as number) <= (clockMin(opens) as number))
    slips.push({ file, row: null, at: null, expected: "closes later than opens", got: closes, nearest: null });
  const { waterKg, fromC, toC, minutes } = draft.pullDown;
  const parts = [waterKg, fromC, toC, minutes];
  const has = parts.filter((part) => part !== undefined).length;
  if (has > 0 && has < parts.length)
    slips.push({
      file,
      row: null,
      at: null,
      expected: "all four lines of a pull-down: water, from, to and time",
      got: `${has} of them`,
      nearest: null,
    });
  return {
    day: freezeDeep({
      ...draft.places,
      ...(draft.breaks.length > 0 ? { breaks: draft.breaks } : {}),
      ...(Object.keys(draft.minutes).length > 0 ? { minutes: draft.minutes } : {}),
      ...(waterKg !== undefined && fromC !== undefined && toC !== undefined && minutes !== undefined
        ? { pullDown: { waterKg, fromC, toC, minutes } }
        : {}),
    }),
    slips,
    notices: csv.notices,
  };
}
