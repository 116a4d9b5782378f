import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvLine } from "../../../../../kernel-lib/library/src/check/csv-line";
import { csvTable } from "../../../../../kernel-lib/library/src/trials/log/table/csv-table";

const cellsOf = (text: string, delimiter?: string): readonly (readonly string[])[] =>
  csvTable({ text, file: "x.csv", delimiter }).lines.map(({ cells }) => cells);

describe("csvTable", () => {
  it("reads back what csvLine writes, for any cells and each delimiter", () => {
    const cell = fc.string({ unit: fc.constantFrom(..."ab \"',;\t\n\r#é"), maxLength: 8 });
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(table, fc.constantFrom(",", ";", "\t"), (rows, delimiter) => {
        // a first cell keeps the line from being blank
        const lines = rows.map((cells) => ["x", ...cells]);
        const text = lines.map((cells) => `${csvLine(cells, delimiter)}\n`).join("");
        expect(cellsOf(text, delimiter)).toEqual(lines);
      }),
      { numRuns: 300 },
    );
  });

  it("finds what parts the cells by the headings", () => {
    for (const parting of [",", ";", "\t"])
      expect(cellsOf(`My log\ntrial${parting}date${parting}time (min)\na${parting}b${parting}c`)[2]).toEqual([
        "a",
        "b",
        "c",
      ]);
    expect(cellsOf("sep=;\ntrial;date;note\na;b;c,d")).toEqual([
      ["trial", "date", "note"],
      ["a", "b", "c,d"],
    ]);
  });

  it("takes a quote that encloses no cell as a character, and goes on", () => {
    const { lines, notices } = csvTable({
      text: 'trial,note\na,9" wide\nb,"9" wide\nc,say "x"\nd,fine',
      file: "x.csv",
    });
    expect(lines.map(({ cells }) => cells[1])).toEqual(["note", '9" wide', '"9" wide', 'say "x"', "fine"]);
    expect(lines.every(({ expected }) => expected === undefined)).toBe(true);
    expect(notices.map(({ row, given }) => [row, given])).toEqual([
      [2, "cell 2"],
      [3, "cell 2"],
      [4, "cell 2"],
    ]);
  });

  it("ends a quote that is never closed with its line, which it marks", () => {
    const { lines } = csvTable({ text: 'trial,note\na,"soft\nb,"two\nlines"\nc,"soft again', file: "x.csv" });
    expect(lines.map(({ row, expected }) => [row, expected !== undefined])).toEqual([
      [1, false],
      [2, true],
      [3, false],
      [5, true],
    ]);
    expect(lines[2].cells).toEqual(["b", "two\nlines"]);
  });
});
