import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../../kernel-lib/library/src/trials/log/read-trials";
import { unpackedBytes } from "../../../../../kernel-lib/library/src/trials/log/table/unpacked-bytes";
import { workbook } from "../workbook";

const bytes = workbook({
  sheets: {
    Log: [
      ["trial", "date"],
      ["a", "2026-03-01"],
    ],
  },
});

describe("unpackedBytes", () => {
  it("adds up what a workbook says that it holds, and knows what is no archive", () => {
    expect(unpackedBytes(bytes)).toBeGreaterThan(1000);
    expect(unpackedBytes(new TextEncoder().encode("trial,date\na,b\n"))).toBeNull();
    expect(unpackedBytes(bytes.slice(0, 200))).toBeNull();
    expect(unpackedBytes(new Uint8Array())).toBeNull();
  });

  it("keeps a workbook that says it holds gigabytes from being opened", () => {
    const huge = bytes.slice();
    const view = new DataView(huge.buffer);
    for (let at = 0; at < huge.length - 46; at++)
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 0xf0000000, true);
    expect(readTrials(huge, "log.xlsx").problems).toEqual([
      expect.stringMatching(/^log\.xlsx: expected a workbook of at most 600 MB unpacked, got \d+ MB$/),
    ]);
  });

  it("lets what is no workbook, or a damaged one, be said in a sentence", () => {
    expect(readTrials("trial,date", "log.xlsx").problems).toEqual([
      "log.xlsx: expected a workbook that ends in .xlsx, got another kind of file: save it as .xlsx or as CSV",
    ]);
    const damaged = bytes.slice();
    damaged.fill(0, 30, 400);
    expect(readTrials(damaged, "log.xlsx").problems.length).toBeGreaterThan(0);
    expect(readTrials(bytes, "log.xlsx", { sheet: "May" }).problems).toEqual([
      'log.xlsx: expected one of the sheets Log, got "May"',
    ]);
  });
});
