import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvText } from "../../../../kernel-lib/host/page/report/csv-text";

/** Reads CSV by the grammar of RFC 4180, section 2. */
function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    row.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end === ",") continue;
    rows.push(row);
    row = [];
  }
  return rows;
}

describe("csvText", () => {
  it("ends lines in CR LF, and quotes commas, quotes and line ends (RFC 4180, section 2, rules 1, 5 to 7)", () => {
    expect(csvText([["a", "b"]])).toBe("a,b\r\n");
    expect(csvText([["one, two", 'say "x"', "line\nend"]])).toBe('"one, two","say ""x""","line\nend"\r\n');
  });

  it.each(["=1+1", "@SUM(A1)", "+1+cmd|' /C calc'!A0", "-2+3", " =1", "\t=1", "-A1", "- print the card", "+f(1)"])(
    "puts an apostrophe before what a spreadsheet would run: %j",
    (cell) => {
      expect(readCsv(csvText([[cell]]))).toEqual([[`'${cell}`]]);
    },
  );

  it.each(["-18", "-18 °C", "-18 °C (0 °F)", "+35 %", "-1.5e", "-0.4 (-1.2 to 0.4)", "12", "half sheet", "a = b"])(
    "leaves %j as it is",
    (cell) => {
      expect(readCsv(csvText([[cell]]))).toEqual([[cell]]);
    },
  );

  it("writes a true minus so that it is read as a number", () => {
    expect(csvText([["−3.2", "a − b"]])).toBe("-3.2,a − b\r\n");
  });

  it("reads back what was written, apart from apostrophes and minus signs, and never begins a formula", () => {
    const cells = fc.array(fc.array(fc.string({ unit: "grapheme" }), { minLength: 3, maxLength: 3 }), { minLength: 1 });
    fc.assert(
      fc.property(cells, (rows) => {
        const back = readCsv(csvText(rows));
        expect(back.map((row) => row.map((cell) => cell.replace(/^'(?=\s*[=+\-@])/, "").replace(/^-/, "−")))).toEqual(
          rows.map((row) => row.map((cell) => cell.replace(/^'(?=\s*[=+\-@])/, "").replace(/^-/, "−"))),
        );
        for (const cell of back.flat()) expect(cell).not.toMatch(/^\s*(=|@|[+-]\D)/);
      }),
    );
  });
});
