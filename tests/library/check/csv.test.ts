import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { failAll, numberOf, readCsv } from "../../../kernel-lib/library/src/check/csv";
import { noticeLines } from "../../../kernel-lib/library/src/check/notice";
import { slipLines } from "../../../kernel-lib/library/src/check/slip";

describe("readCsv", () => {
  it("counts rows as an editor does, skipping blank lines and # lines", () => {
    const csv = readCsv("# the kitchen's pans\nid,depth_mm\n\nhalf,25\n# old one\nquarter, 24 \n", "pans.csv");
    expect(csv.slips).toEqual([]);
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
    const problems = slipLines(readCsv("id,id,note\n1,2\n1,2,3,4\n", "f.csv").slips);
    expect(problems).toEqual([
      "f.csv row 1, column id: expected each heading once, got it twice",
      "f.csv row 3: expected 3 cells, got 4",
    ]);
    expect(() => failAll(problems)).toThrow(/row 1.*\n.*row 3/);
  });

  const lines = (text: string): readonly string[] => slipLines(readCsv(text, "f.csv").slips);

  it("tells one slip of the writer's once, however many rows it spoils", () => {
    expect(lines("id,depth_mm\na,1,x\nb,2,x\nc,3,x\n")).toEqual([
      "f.csv row 1: expected as many headings as every row below has cells (3), got 2",
    ]);
    expect(lines("id,depth_mm,,,\na,1,,,x\nb,2,,,\n")).toEqual([
      "f.csv row 1, columns 3 to 5: expected a heading, got an empty cell",
    ]);
    expect(lines("# mine\nid;depth_mm\na;1\nb;2,5\n")).toEqual([
      "f.csv row 2: expected headings and cells parted by commas, got semicolons: save the file as CSV with commas",
    ]);
    expect(lines("id\tdepth_mm\na\t1\n")[0]).toContain("got tabs");
  });

  it("skips what a spreadsheet program leaves: rows of commas, columns without a heading that hold nothing", () => {
    expect(lines("id,depth_mm\na,1\n,\n,\n , \nb,2\n,\n")).toEqual([]);
    expect(lines("id,depth_mm,,\na,1,,\n,,,\n")).toEqual([]);
  });

  it("reads a row that ends early, the rest of it empty, and says so; a quote behind a digit is inches", () => {
    const { rows, notices, whole } = readCsv('id,depth_in,note\na,17 1/4"\n', "f.csv");
    expect(rows[0].cells).toEqual({ id: "a", depth_in: '17 1/4"', note: "" });
    expect(whole).toBe(true);
    expect(noticeLines(notices)).toEqual(["f.csv row 2: ends after 2 of 3 cells; the others were taken as empty"]);
  });

  it("says where quotes do not fit, and where the text is of another encoding", () => {
    expect(lines('id,name\na,x\nb,a" pan\n')[0]).toMatch(/^f\.csv row 3: expected quotes only round a whole cell/);
    expect(lines("id,name\na,cr\ufffdpe\nb,x\nc,\ufffd\n")).toEqual([
      "f.csv rows 2 and 4: expected UTF-8 text, got another encoding: save the file as CSV in UTF-8",
    ]);
    expect(lines("i\0d\0,\0n\0\n")).toHaveLength(1);
  });

  it("keeps the rows that it can take apart, and says whether they are all", () => {
    const torn = readCsv("id,depth_mm\na,1\nb,2,3\nc,3\n", "f.csv");
    expect(torn.rows.map(({ cells }) => cells.id)).toEqual(["a", "c"]);
    expect(torn.whole).toBe(false);
    expect(readCsv("id,depth_mm\na,1\n,\n", "f.csv").whole).toBe(true);
    expect(readCsv("# mine\n\nid\n", "f.csv").headingRow).toBe(3);
  });

  it("says when there is nothing to read", () => {
    expect(slipLines(readCsv("", "f.csv").slips)).toEqual(["f.csv: expected a heading row, got an empty file"]);
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
