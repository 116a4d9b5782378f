import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { failAll, numberOf, readCsv } from "../../../kernel-lib/library/src/check/csv";

describe("readCsv", () => {
  it("counts rows as an editor does, skipping blank lines and # lines", () => {
    const csv = readCsv("# the kitchen's pans\nid,depth_mm\n\nhalf,25\n# old one\nquarter, 24 \n", "pans.csv");
    expect(csv.problems).toEqual([]);
    expect(csv.rows).toEqual([
      { row: 4, cells: { id: "half", depth_mm: "25" } },
      { row: 6, cells: { id: "quarter", depth_mm: "24" } },
    ]);
  });

  it("keeps quoted commas, semicolons and a # inside a cell", () => {
    const { rows } = readCsv('id,note\na,"warm, then #2"\n', "f.csv");
    expect(rows[0].cells.note).toBe("warm, then #2");
  });

  it("names ragged rows and repeated headings", () => {
    const { problems } = readCsv("id,id,note\n1,2\n1,2,3,4\n", "f.csv");
    expect(problems).toEqual([
      "f.csv row 1, column id: expected each heading once, got it twice",
      "f.csv row 2: expected 3 cells, got 2",
      "f.csv row 3: expected 3 cells, got 4",
    ]);
    expect(() => failAll(problems)).toThrow(/row 2.*\n.*row 3/);
  });

  it("says when there is nothing to read", () => {
    expect(readCsv("", "f.csv").problems[0]).toContain("expected a heading row");
  });
});

describe("numberOf", () => {
  it("reads every finite number that is written with a point", () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        (x) => numberOf(String(x)) === x || Object.is(x, -0),
      ),
    );
  });
  it.each(["", "8,5", "8.5mm", "204O", "NaN", "Infinity", "0x10", "1 2", "--3"])("refuses %j", (cell) => {
    expect(numberOf(cell)).toBeNull();
  });
});
