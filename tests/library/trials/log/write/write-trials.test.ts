import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../../kernel-lib/library/src/trials/log/read-trials";
import { writeTrials } from "../../../../../kernel-lib/library/src/trials/log/write/write-trials";
import { arbitraryTrial } from "../arbitrary-trial";

const FORMATS = ["csv", "tsv", "xlsx", "jsonl"] as const;
const UNITS = ["us", "metric"] as const;
const RUNS = Number(process.env.LOG_RUNS ?? 40);
const [plain] = fc.sample(arbitraryTrial, { numRuns: 1, seed: 1 });

describe("writeTrials", () => {
  it.each(FORMATS.flatMap((format) => UNITS.map((units) => [format, units] as const)))(
    "writes a log in %s, in %s units, that readTrials reads back as the same trials",
    (format, units) => {
      fc.assert(
        fc.property(fc.array(arbitraryTrial, { minLength: 1, maxLength: 4 }), (trials) => {
          const file = `log.${format}`;
          const read = readTrials(writeTrials(trials, { format, units }), file);
          expect(read.problems).toEqual([]);
          expect(read.records).toEqual(trials);
        }),
        { numRuns: RUNS },
      );
    },
    120_000,
  );

  it("writes the headings of a new log when there is no trial yet, and reads them back as none", () => {
    for (const format of ["csv", "tsv", "xlsx"] as const)
      expect(readTrials(writeTrials([], { format, units: "us" }), `log.${format}`)).toMatchObject({
        problems: [],
        records: [],
      });
  });

  it("refuses what a log cannot hold without changing it", () => {
    const writing =
      (change: object): (() => unknown) =>
      () =>
        writeTrials([{ ...plain, ...change }], { format: "csv", units: "metric" });
    expect(writing({ slab: "n/a" })).toThrow(
      /slab must be a text that does not say that nothing is known, got "n\/a"$/,
    );
    expect(writing({ cook: " AB" })).toThrow(/cook must be a text/);
    expect(writing({ extra: { "thickness (mm)": "8" } })).toThrow(
      /column thickness \(mm\) must exist and be no column/,
    );
    const headings = ["trial", "date", "variant", "pan", "appliance", "setpoint_c", "start_c", "time_min"];
    expect(() => writeTrials([plain], { format: "csv", units: "metric", headings })).toThrow(/: column \w+ must exist/);
  });
});
