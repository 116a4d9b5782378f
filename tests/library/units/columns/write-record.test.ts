import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import type { ColumnPlans } from "../../../../kernel-lib/library/src/units/columns/column-plan";
import { readRecords } from "../../../../kernel-lib/library/src/units/columns/read-records";
import { writeRecord } from "../../../../kernel-lib/library/src/units/columns/write-record";

interface Weighing {
  readonly massG: number | null;
  readonly thicknessMm: number | null;
  readonly timeMin: number | null;
  readonly coreC: number | null;
  readonly loadFraction: number | null;
  readonly readingsMm: readonly number[];
}
type Field = Exclude<keyof Weighing, "readingsMm">;

const PLANS: ColumnPlans<Weighing> = {
  massG: { column: "mass", holds: "mass" },
  thicknessMm: { column: "thickness", holds: "length" },
  timeMin: { column: "time", holds: "time" },
  coreC: { column: "core", holds: "temperature" },
  loadFraction: { column: "load", holds: "number" },
  readingsMm: { column: "readings", holds: "length", many: true },
};
const number = z.number().nullable();
const SCHEMA: z.ZodType<Weighing> = z.object({
  massG: number,
  thicknessMm: number,
  timeMin: number,
  coreC: number,
  loadFraction: number,
  readingsMm: z.array(z.number()),
});
const NOTHING: Weighing = {
  massG: null,
  thicknessMm: null,
  timeMin: null,
  coreC: null,
  loadFraction: null,
  readingsMm: [],
};

const METRIC = ["mass_g", "thickness_mm", "time_min", "core_c", "load", "readings_mm"];
const US = ["mass_oz", "thickness_in", "time_s", "core_f", "load", "readings_in"];
const LARGE = ["mass_lb", "thickness_cm", "time_h", "core_f", "load", "readings_in"];
/** What one unit of each heading is in kitchen units, and how many decimals a hundredth of the kitchen unit needs there. */
const UNIT: Readonly<Record<string, { readonly size: number; readonly decimals: number }>> = {
  g: { size: 1, decimals: 2 },
  oz: { size: 28.349523125, decimals: 4 },
  lb: { size: 453.59237, decimals: 5 },
  mm: { size: 1, decimals: 2 },
  cm: { size: 10, decimals: 3 },
  in: { size: 25.4, decimals: 4 },
  min: { size: 1, decimals: 2 },
  s: { size: 1 / 60, decimals: 1 },
  h: { size: 60, decimals: 4 },
  c: { size: 1, decimals: 2 },
  f: { size: 5 / 9, decimals: 2 },
  load: { size: 1, decimals: 2 },
};
/** Where a field stands in a line, and the unit of its heading. */
const columnOf = (field: Field, headings: readonly string[]): { at: number; size: number; decimals: number } => {
  const at = Object.keys(PLANS).indexOf(field);
  return { at, ...UNIT[headings[at].split("_").at(-1)!] };
};

const write = (record: Partial<Weighing>, headings: readonly string[]): string =>
  writeRecord({ record: { ...NOTHING, ...record }, headings, file: "log.csv", plans: PLANS });
const read = (line: string, headings: readonly string[]): Weighing => {
  const { records, problems } = readRecords({
    text: `${headings.join(",")}\n${line}`,
    file: "log.csv",
    plans: PLANS,
    schema: SCHEMA,
  });
  expect(problems).toEqual([]);
  return records[0];
};

/** A quantity as an instrument of the kitchen shows it, with up to `decimals` digits after the point. */
const shown = (least: number, most: number, decimals: number): fc.Arbitrary<number> =>
  fc
    .integer({ min: Math.ceil(least * 10 ** decimals), max: Math.floor(most * 10 ** decimals) })
    .map((steps) => Number((steps / 10 ** decimals).toFixed(decimals)));
const RANGE: Readonly<Record<Field, readonly [number, number]>> = {
  massG: [0.5, 20_000],
  thicknessMm: [0.5, 60],
  timeMin: [0.1, 180],
  coreC: [-30, 115],
  loadFraction: [0.01, 1.2],
};
const fields = Object.keys(RANGE) as Field[];
const aField = fc.constantFrom(...fields);

describe("writeRecord", () => {
  it("writes what a scale in grams read as ounces that a person would write", () => {
    expect(write({ massG: 230 }, US)).toBe("8.113,,,,,");
    expect(write({ massG: 1150 }, LARGE)).toBe("2.53532,,,,,");
    expect(write({ thicknessMm: 10, readingsMm: [10, 9.5] }, US)).toBe(",0.3937,,,,0.3937;0.374");
    expect(write({ timeMin: 10.5, coreC: 74 }, US)).toBe(",,630,165.2,,");
  });

  it("writes no digits that only a computer sees", () => {
    expect(write({ massG: 8.113 * 28.349523125, loadFraction: 0.1 + 0.2, coreC: -160 / 9 }, METRIC)).toBe(
      "230,,,-17.78,0.3,",
    );
    expect(write({ coreC: -160 / 9 }, US)).toBe(",,,0,,");
    expect(write({ timeMin: 2 / 3, thicknessMm: 9.999_98, coreC: -0.004 }, METRIC)).toBe(",10,0.67,0,,");
  });

  it.each([
    ["metric", METRIC],
    ["US", US],
    ["large", LARGE],
  ] as const)("gives back, in %s units, what was typed, digit for digit", (_, headings) => {
    fc.assert(
      fc.property(aField, fc.nat(5), fc.double({ min: 0, max: 1, noNaN: true }), (field, fewer, share) => {
        const { at, size, decimals } = columnOf(field, headings);
        const [least, most] = RANGE[field].map((end) => end / size);
        const typed = String(Number((least + share * (most - least)).toFixed(Math.max(0, decimals - fewer))));
        const line = Object.keys(PLANS)
          .map((_name, column) => (column === at ? typed : ""))
          .join(",");
        expect(write(read(line, headings), headings)).toBe(line);
      }),
    );
  });

  it.each([
    ["US", US],
    ["large", LARGE],
  ] as const)("keeps a metric reading of two decimals through a log in %s units", (_, headings) => {
    fc.assert(
      fc.property(
        fc.record({
          massG: shown(0.5, 20_000, 2),
          thicknessMm: shown(0.5, 60, 2),
          timeMin: shown(0.1, 180, 2),
          coreC: shown(-30, 115, 2),
          loadFraction: shown(0.01, 1.2, 2),
        }),
        (record) => {
          const back = read(write(record, headings), headings);
          expect(write(back, METRIC)).toBe(write(record, METRIC));
          for (const field of fields) expect(Math.abs(back[field]! - record[field])).toBeLessThan(0.005);
        },
      ),
    );
  });

  it.each([
    ["metric", METRIC],
    ["US", US],
    ["large", LARGE],
  ] as const)("reads back, in %s units, within half of the last place, whatever the number", (_, headings) => {
    fc.assert(
      fc.property(aField, fc.double({ min: 0, max: 1, noNaN: true }), (field, share) => {
        const { at, size, decimals } = columnOf(field, headings);
        const [least, most] = RANGE[field];
        const value = least + share * (most - least);
        const line = write({ [field]: value }, headings);
        expect(line.split(",")[at].split(".")[1]?.length ?? 0, line).toBeLessThanOrEqual(decimals);
        const halfOfLastPlace = 0.5 * 10 ** -decimals * size;
        expect(Math.abs(read(line, headings)[field]! - value)).toBeLessThanOrEqual(halfOfLastPlace * (1 + 1e-9));
        expect(write(read(line, headings), headings)).toBe(line);
      }),
    );
  });
});
