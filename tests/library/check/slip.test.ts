import { describe, expect, it } from "vitest";
import { type Slip, slipLines } from "../../../kernel-lib/library/src/check/slip";

const slip = (row: number | null, got: string | null, more: Partial<Slip> = {}): Slip => ({
  file: "pans.csv",
  row,
  at: "column depth_mm",
  expected: "a depth",
  got,
  nearest: null,
  ...more,
});

describe("slipLines", () => {
  it("names file, row, column, what was expected, what was given and what is near", () => {
    expect(slipLines([slip(3, '"x"')])).toEqual(['pans.csv row 3, column depth_mm: expected a depth, got "x"']);
    expect(slipLines([slip(3, '"haf"', { at: null, nearest: "half" })])).toEqual([
      'pans.csv row 3: expected a depth, got "haf" (nearest: half)',
    ]);
    expect(slipLines([slip(null, null, { at: null })])).toEqual(["pans.csv: expected a depth"]);
    expect(slipLines([slip(4, "1", { file: "formulas/a.json", at: "mix.2.amount" })])).toEqual([
      "formulas/a.json line 4, mix.2.amount: expected a depth, got 1",
    ]);
  });

  it("makes one line of slips that are alike in a file, with all rows and a few of the values", () => {
    const rows = [9, 3, 4, 5, 7].map((row) => slip(row, `"${row}"`));
    expect(slipLines(rows)).toEqual([
      'pans.csv rows 3 to 5, 7 and 9, column depth_mm: expected a depth, got "3", "4", "5" and 2 others',
    ]);
    expect(slipLines([slip(3, '"x"'), slip(4, '"x"')])).toEqual([
      'pans.csv rows 3 and 4, column depth_mm: expected a depth, got "x"',
    ]);
    const odd = Array.from({ length: 30 }, (_, at) => slip(2 * at + 1, '"x"'));
    expect(slipLines(odd)).toEqual([
      'pans.csv rows 1, 3, 5, 7, 9, 11, 13, 15, 17, 19 and 20 more, column depth_mm: expected a depth, got "x"',
    ]);
  });

  it("keeps apart what differs in file, column, expectation or nearest name, and whole rows that differ", () => {
    const others: Partial<Slip>[] = [
      { file: "b.csv" },
      { at: "column wells" },
      { expected: "wells" },
      { nearest: "n" },
    ];
    for (const other of others) expect(slipLines([slip(3, '"x"'), slip(4, '"x"', other)])).toHaveLength(2);
    expect(slipLines([slip(3, "2", { at: null }), slip(4, "5", { at: null })])).toHaveLength(2);
  });

  it("makes one line of a name that no file has, wherever it is used", () => {
    const used = (file: string, row: number, got: string): Slip =>
      slip(row, got, { file, at: "column pan", anywhere: true });
    const slips = [
      used("a.csv", 3, '"haf"'),
      used("b.csv", 4, '"haf"'),
      used("a.csv", 4, '"haf"'),
      used("b.csv", 5, '"no"'),
    ];
    expect(slipLines(slips)).toEqual([
      'a.csv rows 3 and 4 and b.csv row 4, column pan: expected a depth, got "haf"',
      'b.csv row 5, column pan: expected a depth, got "no"',
    ]);
  });

  it("goes through files as they come and through a file from top to bottom", () => {
    const slips = [
      slip(9, '"a"', { at: "column a" }),
      slip(2, '"b"', { file: "b.csv" }),
      slip(null, null, { at: null }),
      slip(2, '"c"'),
    ];
    expect(slipLines(slips).map((line) => line.slice(0, 15))).toEqual([
      "pans.csv: expec",
      "pans.csv row 2,",
      "pans.csv row 9,",
      "b.csv row 2, co",
    ]);
  });
});
