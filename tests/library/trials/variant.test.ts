import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../kernel-lib/library/src/check/notice";
import { readVariants } from "../../../kernel-lib/library/src/trials/variant";

const COLUMNS = {
  variant: "first",
  name: "first",
  formula: "mix",
  form: "slab",
  pan: "half-sheet",
  batch_g: "1150",
  rows: "6",
  columns: "8",
  trim_mm: "3",
  appliance: "oven",
  setpoint_c: "200",
  start_c: "-18",
  longest_min: "20",
  note: "",
};
const read = (change: Partial<Record<keyof typeof COLUMNS, string>> = {}) => {
  const row = { ...COLUMNS, ...change };
  return readVariants(`${Object.keys(row).join(",")}\n${Object.values(row).join(",")}\n`, "variants.csv");
};

describe("readVariants", () => {
  it("reads a row as it stands", () => {
    expect(read().records).toEqual([
      {
        variantId: "first",
        name: "first",
        formulaId: "mix",
        form: "slab",
        panId: "half-sheet",
        batchG: 1150,
        rows: 6,
        columns: 8,
        trimMm: 3,
        applianceId: "oven",
        setpointC: 200,
        startC: -18,
        longestMin: 20,
        note: null,
      },
    ]);
  });

  it("takes what is left out as a slab without trim, from the freezer, and says what matters", () => {
    const text =
      "Variant,formula,pan,Batch (lb),rows,columns,appliance,Setpoint (F)\nrice bites,mix,half,2 1/2,6,8,basket,390 F\n";
    const { records, problems, notices } = readVariants(text, "variants.csv");
    expect(problems).toEqual([]);
    expect(records[0]).toMatchObject({
      variantId: "rice-bites",
      name: "rice bites",
      form: "slab",
      batchG: expect.closeTo(1133.98, 2),
      trimMm: 0,
      setpointC: expect.closeTo(198.89, 2),
      startC: -18,
      longestMin: 30,
    });
    expect(noticeLines(notices)).toEqual([
      'variants.csv row 2, column Variant: was taken as an id, which has letters, digits, points and dashes alone ("rice bites" as rice-bites)',
      "variants.csv row 1: has no column start_f: -18 °C (0 °F) was taken, straight from the freezer",
      "variants.csv row 1: has no column longest_min: a reheat of up to 30 min was taken as accepted",
    ]);
    expect(noticeLines(read({ start_c: "" }).notices)).toEqual([
      "variants.csv row 2, column start_c: is empty: -18 °C (0 °F) was taken, straight from the freezer",
    ]);
  });

  it("takes each number to the ends of its range, and names what lies past them", () => {
    const ranges = [
      ["batch_g", "0.1", "20000", "0", "20001"],
      ["rows", "1", "100", "0", "101"],
      ["columns", "1", "100", "0", "101"],
      ["trim_mm", "0", "50", "-0.1", "50.1"],
      ["setpoint_c", "100", "290", "99", "291"],
      ["start_c", "-40", "40", "-41", "41"],
      ["longest_min", "0.1", "180", "0", "181"],
    ] as const;
    for (const [column, low, high, under, over] of ranges) {
      for (const end of [low, high]) expect(read({ [column]: end }).problems, `${column} ${end}`).toEqual([]);
      for (const past of [under, over]) {
        const { problems, records } = read({ [column]: past });
        expect(problems, `${column} ${past}`).toHaveLength(1);
        expect(problems[0]).toMatch(new RegExp(`^variants\\.csv row 2, column ${column}: expected .*, got "${past}"$`));
        expect(records).toEqual([]);
      }
    }
    expect(read({ rows: "2.5" }).problems[0]).toContain("expected a whole number of rows, 1 to 100");
    expect(read({ form: "loaf" }).problems[0]).toContain("expected slab or batter");
  });
});
