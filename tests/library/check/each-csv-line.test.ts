import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CsvProblem, eachCsvLine } from "../../../kernel-lib/library/src/check/each-csv-line";

interface Read {
  readonly cells: readonly (readonly string[])[];
  readonly rows: readonly number[];
  readonly problem: CsvProblem | null;
}

function read(text: string, options: { readonly delimiter?: string; readonly comment?: string } = {}): Read {
  const cells: (readonly string[])[] = [];
  const rows: number[] = [];
  const take = (line: readonly string[], row: number): void => {
    cells.push(line);
    rows.push(row);
  };
  return { problem: eachCsvLine(text, { ...options, take }), cells, rows };
}
const cellsOf = (...given: Parameters<typeof read>): unknown => read(...given).cells;

describe("eachCsvLine", () => {
  // RFC 4180 (October 2005), section 2, rules 1 to 7
  it.each([
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      "aaa,bbb,ccc\r\nzzz,yyy,xxx",
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "bbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    [
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ["aaa", "b\r\nbb", "ccc"],
        ["zzz", "yyy", "xxx"],
      ],
    ],
    ['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
  ])("reads %j as RFC 4180 has it", (text, cells) => expect(cellsOf(text)).toEqual(cells));

  it.each([
    [
      "a , b\n\n  \n c,",
      [
        ["a", "b"],
        ["c", ""],
      ],
    ],
    [
      "\ufeffa,b\rc,d",
      [
        ["a", "b"],
        ["c", "d"],
      ],
    ],
    [' "a " , "" \n""', [["a ", ""], [""]]],
    [",\n", [["", ""]]],
    ["", []],
    ["\n\n", []],
  ])("trims cells, leaves empty lines out and takes any line end: %j", (text, cells) => {
    expect(cellsOf(text)).toEqual(cells);
  });

  it("leaves out lines that begin with the comment mark, whatever they hold, and no others", () => {
    const text = '# it\'s "one\na,#b\n  # two\n"#c",d\n#';
    expect(cellsOf(text, { comment: "#" })).toEqual([
      ["a", "#b"],
      ["#c", "d"],
    ]);
  });

  it("parts cells by another mark, a tab too", () => {
    expect(cellsOf("1,5;2\n", { delimiter: ";" })).toEqual([["1,5", "2"]]);
    expect(cellsOf("a\t\tb \n", { delimiter: "\t" })).toEqual([["a", "", "b"]]);
  });

  it("counts rows as an editor does, also past line ends in quotes", () => {
    expect(read('a\n\n"b\nb",1\r\nc\n').rows).toEqual([1, 4, 5]);
  });

  it.each([
    ['a\n"b', 2, "a quote that ends the cell it begins"],
    ['a\nb "c",d', 2, "quotes only round a whole cell"],
    ['a\n"b" c,d', 2, "nothing behind the quote that ends a cell"],
    ['"a\nb" c', 2, "nothing behind the quote that ends a cell"],
  ])("stops where a quote parts nothing: %j", (text, row, expected) => {
    const { cells, problem } = read(text);
    expect(problem).toEqual({ row, expected });
    expect(cells.length).toBeLessThan(row);
  });

  it("reads back any cells written in quotes", () => {
    const cell = fc.string({ unit: fc.constantFrom("a", " ", '"', ",", "\n", "\r", "#", "é") });
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { maxLength: 4 }), (rows) => {
        const text = rows.map((cells) => cells.map((one) => `"${one.replaceAll('"', '""')}"`).join(",")).join("\n");
        if (rows.length < 2 && text.includes("\r")) return; // an old Macintosh's line ends
        expect(cellsOf(text)).toEqual(rows);
      }),
    );
  });
});
