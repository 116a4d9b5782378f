// Rows of sound logs are damaged at random in one cell, the way hands and spreadsheets do it, and read. What must come out is
// decided apart from the reader: each damage says by itself which value the cell may be taken as, or that it may not be
// taken. LOG_ROWS=100000 runs as many; a smaller number runs by itself.
import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import type { Trial } from "../../../../kernel-lib/library/src/trials/trial";

const ROWS = Number(process.env.LOG_ROWS ?? 4000);
const CHUNK = 1000;

const HEADINGS = [
  "trial",
  "date",
  "variant",
  "pan",
  "appliance",
  "batch_g",
  "thickness_mm",
  "setpoint_f",
  "load_fraction",
  "start_c",
  "time_min",
  "not_crisp_min",
  "crisp_min",
  "core_c",
  "before_g",
  "after_g",
  "pieces",
  "crisp_scores",
  "slab",
  "note",
] as const;
type Heading = (typeof HEADINGS)[number];

/** What a damaged cell may come out as: a value with or without a notice, or a refusal; `null` is not known. */
type Outcome = { readonly value: unknown; readonly isTold: boolean } | "refused";
interface Damage {
  readonly heading: Heading;
  readonly cell: string;
  readonly outcome: Outcome;
}

/** A generator of its own (xorshift, G. Marsaglia 2003), so that the rows are the same on every machine. */
function draws(seed: number): (below: number) => number {
  let state = (seed | 0) ^ 0x2545f491 || 1;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}

const FIELD: Readonly<Record<Heading, keyof Trial>> = {
  trial: "trialId",
  date: "date",
  variant: "variantId",
  pan: "panId",
  appliance: "applianceId",
  batch_g: "batchG",
  thickness_mm: "probesMm",
  setpoint_f: "setpointC",
  load_fraction: "loadFraction",
  start_c: "startC",
  time_min: "timeMin",
  not_crisp_min: "notCrispMin",
  crisp_min: "crispMin",
  core_c: "coreC",
  before_g: "massBeforeG",
  after_g: "massAfterG",
  pieces: "pieces",
  crisp_scores: "crispScores",
  slab: "slab",
  note: "note",
};

type Sound = Readonly<Record<Heading, string>>;

function soundRow(at: number, draw: (below: number) => number): Sound {
  const time = 11 + draw(8);
  const tenths = (from: number, spread: number): string => `${from + draw(spread)}.${1 + draw(9)}`;
  return {
    trial: `R-${at}`,
    date: `2026-0${1 + draw(9)}-${10 + draw(18)}`,
    variant: "rice",
    pan: "half",
    appliance: "basket",
    batch_g: String(900 + draw(300)),
    thickness_mm: [0, 1, 2].map(() => tenths(8, 2)).join(";"),
    setpoint_f: String(380 + 5 * draw(5)),
    load_fraction: `0.${5 + draw(4)}`,
    start_c: "-18",
    time_min: `${time}.5`,
    not_crisp_min: String(time - 2),
    crisp_min: String(time),
    core_c: tenths(75, 20),
    before_g: tenths(100, 60),
    after_g: tenths(80, 15),
    pieces: String(6 + draw(5)),
    crisp_scores: "7;6.5;8",
    slab: `S-${draw(9)}`,
    note: "as ever",
  };
}

/** What a sound row is, worked out here. */
function meant(row: Sound): Partial<Record<Heading, unknown>> {
  const list = (cell: string): number[] => cell.split(";").map(Number);
  const plain = Object.fromEntries(
    HEADINGS.map((heading) => [heading, /^-?[\d.]+$/.test(row[heading]) ? Number(row[heading]) : row[heading]]),
  );
  return {
    ...plain,
    thickness_mm: list(row.thickness_mm),
    crisp_scores: list(row.crisp_scores),
    setpoint_f: ((Number(row.setpoint_f) - 32) * 5) / 9,
  };
}

const NUMBERS: readonly Heading[] = ["batch_g", "time_min", "core_c", "before_g", "crisp_min"];
const OPTIONAL: readonly Heading[] = ["load_fraction", "core_c", "pieces", "slab", "not_crisp_min"];
const told = (value: unknown): Outcome => ({ value, isTold: true });
const quiet = (value: unknown): Outcome => ({ value, isTold: false });

const DAMAGES: readonly ((row: Sound, draw: (below: number) => number) => Damage)[] = [
  // a letter among the digits, two points, nothing that is a number
  (row, draw) => {
    const heading = NUMBERS[draw(NUMBERS.length)];
    const cell = row[heading];
    const at = draw(cell.length);
    const ways = [
      `${cell.slice(0, at)}O${cell.slice(at + 1)}`,
      `${cell}..1`,
      "1e999",
      `${cell} lots`,
      "abc",
      `${cell};`.replace(";", " 7 8x"),
    ];
    return { heading, cell: ways[draw(ways.length)], outcome: "refused" };
  },
  // a sign that is the other one, as elsewhere points are used
  (_, draw) => ({ heading: "time_min", cell: `1${draw(9)},${1 + draw(9)}`, outcome: "refused" }),
  // the heading's unit, typed once more
  (row) => ({ heading: "batch_g", cell: `${row.batch_g} g`, outcome: quiet(Number(row.batch_g)) }),
  (row) => ({
    heading: "setpoint_f",
    cell: `${row.setpoint_f}°F`,
    outcome: quiet(((Number(row.setpoint_f) - 32) * 5) / 9),
  }),
  // another unit
  (_, draw) => {
    const pounds = 2 + draw(2);
    const ounces = draw(16);
    return {
      heading: "batch_g",
      cell: `${pounds} lb ${ounces} oz`,
      outcome: told((16 * pounds + ounces) * (453.59237 / 16)),
    };
  },
  (_, draw) => {
    const air = 190 + draw(20);
    return { heading: "setpoint_f", cell: `${air} °C`, outcome: told(air) };
  },
  (_, draw) => {
    const eighths = 3 + draw(2);
    return { heading: "thickness_mm", cell: `${eighths}/8 in`, outcome: "refused" };
  },
  (_, draw) => {
    const hundredths = 30 + draw(20);
    return { heading: "thickness_mm", cell: `0.${hundredths} in`, outcome: told([hundredths * 0.254]) };
  },
  // a unit that measures something else
  (row, draw) => {
    const units = ["kg", "mm", "°C"];
    return { heading: "time_min", cell: `${row.time_min} ${units[draw(3)]}`, outcome: "refused" };
  },
  // minutes and seconds
  (row, draw) => {
    const minutes = Math.floor(Number(row.time_min)) + 1;
    const seconds = draw(60);
    return {
      heading: "time_min",
      cell: `${minutes}:${String(seconds).padStart(2, "0")}`,
      outcome: told(minutes + seconds / 60),
    };
  },
  (row) => ({
    heading: "time_min",
    cell: `${Math.floor(Number(row.time_min)) + 1}.30`,
    outcome: told(Math.floor(Number(row.time_min)) + 1.3),
  }),
  // thousands
  (_, draw) => {
    const rest = 100 + draw(200);
    return { heading: "batch_g", cell: `1,${rest}`, outcome: told(1000 + rest) };
  },
  // fractions
  (row, draw) => {
    const minutes = Math.floor(Number(row.time_min)) + 1;
    const ways: readonly [string, number][] = [
      [`${minutes} 1/2`, 0.5],
      [`${minutes}½`, 0.5],
      [`${minutes}-1/4`, 0.25],
    ];
    const [cell, part] = ways[draw(3)];
    return { heading: "time_min", cell, outcome: quiet(minutes + part) };
  },
  // per cent
  (_, draw) => {
    const percent = 50 + draw(40);
    return { heading: "load_fraction", cell: `${percent} %`, outcome: told(percent / 100) };
  },
  (_, draw) => ({ heading: "load_fraction", cell: String(50 + draw(40)), outcome: "refused" }),
  // not known
  (_, draw) => {
    const marks = ["n/a", "N/A", "–", "-", "?", "none", "unknown"];
    return { heading: OPTIONAL[draw(OPTIONAL.length)], cell: marks[draw(marks.length)], outcome: told(null) };
  },
  (_, draw) => ({ heading: (["time_min", "start_c", "setpoint_f"] as const)[draw(3)], cell: "?", outcome: "refused" }),
  // blanks
  (_, draw) => ({ heading: OPTIONAL[draw(OPTIONAL.length)], cell: " ".repeat(draw(3)), outcome: quiet(null) }),
  (_, draw) => ({
    heading: (["trial", "date", "variant", "time_min"] as const)[draw(4)],
    cell: "",
    outcome: "refused",
  }),
  (row) => ({ heading: "core_c", cell: `  ${row.core_c}\u00a0`, outcome: quiet(Number(row.core_c)) }),
  // several readings
  (_, draw) => {
    const parting = [" / ", "; ", "\n", "|"][draw(4)];
    return { heading: "thickness_mm", cell: ["8.1", "8.4"].join(parting), outcome: quiet([8.1, 8.4]) };
  },
  (_, draw) => {
    const cores = [75 + draw(5), 82, 90];
    return { heading: "core_c", cell: cores.join("/"), outcome: told(cores[0]) };
  },
  (_, draw) => {
    const scores = [draw(10), draw(10)];
    return { heading: "crisp_scores", cell: `AB:${scores[0]}, CD: ${scores[1]}`, outcome: quiet(scores) };
  },
  (_, draw) => ({ heading: "crisp_scores", cell: `7;${10 + draw(90)}`, outcome: "refused" }),
  // days
  (_, draw) => {
    const day = 13 + draw(15);
    const ways: readonly [string, Outcome][] = [
      [`3/${day}/2026`, told(`2026-03-${day}`)],
      [`${day} Mar 2026`, told(`2026-03-${day}`)],
      [`2026/3/${day}`, told(`2026-03-${day}`)],
      [`2026-13-${day}`, "refused"],
      ["2026-02-30", "refused"],
      [`${day}`, "refused"],
    ];
    const [cell, outcome] = ways[draw(ways.length)];
    return { heading: "date", cell, outcome };
  },
  // numbers that no trial has, and numbers that few have
  (_, draw) => {
    const ways: readonly [Heading, string, Outcome][] = [
      ["setpoint_f", "200", "refused"],
      ["core_c", "165", "refused"],
      ["core_c", "104", told(104)],
      ["core_c", "0", told(0)],
      ["start_c", "18", told(18)],
      ["start_c", "−18", quiet(-18)],
      ["start_c", "-30", told(-30)],
      ["thickness_mm", "0.3", told([0.3])],
      ["thickness_mm", "81;82", "refused"],
      ["load_fraction", "1.1", told(1.1)],
      ["pieces", "7.5", "refused"],
      ["pieces", "8 pcs", quiet(8)],
      ["date", "2013-03-14", told("2013-03-14")],
      ["date", "2062-03-14", told("2062-03-14")],
      ["time_min", "~ 19", told(19)],
      ["time_min", "-12", "refused"],
      ["trial", "two words", "refused"],
    ];
    const [heading, cell, outcome] = ways[draw(ways.length)];
    return { heading, cell, outcome };
  },
  // texts that are nobody's business
  (_, draw) => {
    const notes = ['9" wide', 'said "good", twice', "a, b; c", "two\nlines", "# ok", "½ burnt"];
    const cell = notes[draw(notes.length)];
    return { heading: "note", cell, outcome: quiet(cell) };
  },
  // what a spreadsheet would run, and the same as it is written so that none does
  (_, draw) => {
    const live = ["=1+1", "@SUM(A1)", "+cmd"][draw(3)];
    return draw(2) === 0
      ? { heading: "note", cell: live, outcome: told(live) }
      : { heading: "note", cell: `'${live}`, outcome: quiet(live) };
  },
];

const quoted = (cell: string): string => (/[",;\n#]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const isNear = (one: unknown, other: unknown): boolean =>
  Array.isArray(one) && Array.isArray(other)
    ? one.length === other.length && one.every((value, at) => isNear(value, other[at]))
    : typeof one === "number" && typeof other === "number"
      ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other))
      : one === other;

describe("rows with one damaged cell", () => {
  it(`come out as what they may be taken as, or are refused with their place: ${ROWS} rows`, () => {
    const draw = draws(Number(process.env.PROPERTY_SEED ?? 20261125));
    const wrong: string[] = [];
    for (let done = 0; done < ROWS; done += CHUNK) {
      const cases = Array.from({ length: Math.min(CHUNK, ROWS - done) }, (_, at) => {
        const row = soundRow(done + at, draw);
        // as many rows stay sound as would by chance
        const damage = draw(8) === 0 ? null : DAMAGES[draw(DAMAGES.length)](row, draw);
        return { row, damage, cells: { ...row, ...(damage === null ? {} : { [damage.heading]: damage.cell }) } };
      });
      const text = [
        HEADINGS.join(","),
        ...cases.map(({ cells }) => HEADINGS.map((heading) => quoted(cells[heading])).join(",")),
      ].join("\n");
      const read = readTrials(text, "log.csv", { today: "2026-11-26" });
      // rows of the file, as cells may hold line ends
      let line = 2;
      const rows = cases.map(({ cells }) => {
        const at = line;
        line += 1 + HEADINGS.reduce((ends, heading) => ends + cells[heading].split("\n").length - 1, 0);
        return at;
      });
      const lists = [read.good, read.kept, read.refused]
        .flatMap((list) => list.map(({ row }) => row))
        .concat(read.aside);
      expect(lists.toSorted((a, b) => a - b)).toEqual(rows);
      const taken = new Map([...read.good, ...read.kept].map((one) => [one.row, one]));
      const refused = new Map(read.refused.map((one) => [one.row, one]));
      for (const [at, { row, damage, cells }] of cases.entries()) {
        const outcome = damage?.outcome ?? quiet(null);
        const place = `${damage?.heading} ${JSON.stringify(damage?.cell)}`;
        const no = refused.get(rows[at]);
        if (outcome === "refused") {
          const slip = no?.reasons.find(({ at: where }) => where === `column ${damage?.heading}`);
          const isSaid =
            slip !== undefined && slip.file === "log.csv" && slip.row === rows[at] && slip.expected.length > 3;
          if (no === undefined) wrong.push(`${place} was taken`);
          else if (!isSaid || slip.got !== JSON.stringify(damage?.cell))
            wrong.push(`${place} was refused without its place`);
          else if (no.cells[damage?.heading ?? ""] !== damage?.cell.replace(/^ +| +$/g, ""))
            wrong.push(`${place} is not in the list as it stands`);
          continue;
        }
        const one = taken.get(rows[at]);
        if (one === undefined) {
          wrong.push(`${place} was refused: ${JSON.stringify(no?.reasons[0]?.expected)}`);
          continue;
        }
        const values: Partial<Record<Heading, unknown>> = {
          ...meant(row),
          ...(damage === null ? {} : { [damage.heading]: outcome.value }),
        };
        for (const heading of HEADINGS)
          if (!isNear(one.trial[FIELD[heading]], values[heading]))
            wrong.push(
              `${place}: ${heading} came out as ${JSON.stringify(one.trial[FIELD[heading]])}, not ${JSON.stringify(values[heading])}`,
            );
        const isTold = one.notices.some(({ at: where }) => where === `column ${damage?.heading}`);
        if (damage !== null && isTold !== outcome.isTold)
          wrong.push(`${place} was taken ${isTold ? "with" : "without"} a notice`);
        if (damage === null && one.notices.length > 0)
          wrong.push(`a sound row has the notice ${one.notices[0].says}: ${JSON.stringify(cells)}`);
      }
    }
    expect(wrong.slice(0, 20)).toEqual([]);
  }, 600_000);

  it("stand in exactly one list each, whatever is done to the lines of the file", () => {
    const draw = draws(Number(process.env.PROPERTY_SEED ?? 20261125) + 1);
    const LINES: readonly ((line: string) => string)[] = [
      (line) => line,
      (line) => line.split(",").slice(1).join(","),
      (line) => `${line},more`,
      (line) => `${line},,,`,
      (line) => line.replace("as ever", '"as ever'),
      (line) => line.replace("rice", 'ri"ce'),
      (line) => line.replace("rice", '"rice" and'),
      () => "Totals,,,,,8.1,,,,,,,,,,,,,,",
      () => HEADINGS.join(","),
      () => "?",
      (line) => line.replace("half", "ha\ufffdlf"),
      (line) => line.replaceAll(",", ";"),
      () => "",
      () => "# a remark",
      () => ",".repeat(HEADINGS.length - 1),
      (line) => line.toUpperCase(),
    ];
    const isHolding = (line: string): boolean => line.replaceAll(",", "").trim() !== "" && !line.startsWith("#");
    for (let file = 0; file < Math.max(20, ROWS / 400); file++) {
      const lines = Array.from({ length: 40 }, (_, at) => {
        const row = soundRow(at, draw);
        return LINES[draw(LINES.length)](HEADINGS.map((heading) => row[heading]).join(","));
      });
      const read = readTrials([HEADINGS.join(","), ...lines].join("\n"), "log.csv");
      const rows = [read.good, read.kept, read.refused]
        .flatMap((list) => list.map(({ row }) => row))
        .concat(read.aside);
      const expected = lines.flatMap((line, at) => (isHolding(line) ? [at + 2] : []));
      expect(rows.toSorted((a, b) => a - b)).toEqual(expected);
      for (const { reasons } of read.refused) {
        expect(reasons.length).toBeGreaterThan(0);
        for (const { file: named, expected: words } of reasons)
          expect([named, words]).toEqual(["log.csv", expect.stringMatching(/../)]);
      }
      const sound = new Set(
        lines.flatMap((line, at) =>
          /^R-\d+,.*,as ever$/.test(line) && line.split(",").length === HEADINGS.length ? [at + 2] : [],
        ),
      );
      for (const row of sound)
        if (!/["\ufffd]/.test(lines[row - 2])) expect(read.refused.some((one) => one.row === row)).toBe(false);
    }
  });
});
