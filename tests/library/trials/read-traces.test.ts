import { describe, expect, it } from "vitest";
import { checkKitchen } from "../../../kernel-lib/library/src/trials/check-kitchen";
import type { FolderFile } from "../../../kernel-lib/library/src/trials/kitchen-folder";
import { starterFiles } from "./starter-files";

const TRACE = "time_s,core_c,air_c\n0,-18,200\n15,-17,199\n30,-15,201\n";
const withTrace = (file: string, text: string): readonly FolderFile[] => [...starterFiles("metric", 2), { file, text }];

describe("a kitchen's probe traces", () => {
  it("are read under the name of their trial", () => {
    const { kitchen, problems, notices } = checkKitchen(withTrace("traces/T-2.csv", TRACE));
    expect({ problems, notices }).toEqual({ problems: [], notices: [] });
    expect(kitchen?.traces).toMatchObject([
      { trialId: "T-2", trace: { channels: [{ name: "core" }, { name: "air" }] } },
    ]);
  });

  it("may be missing", () => {
    expect(checkKitchen(starterFiles("us", 1)).kitchen?.traces).toEqual([]);
  });

  it("must be named after a trial of the log", () => {
    expect(checkKitchen(withTrace("traces/T-22.csv", TRACE)).problems).toEqual([
      "traces/T-22.csv: expected a file named after a trial in trials/, so that its slab and setpoint are known (nearest: T-2)",
    ]);
  });

  it("tell a slip with its row and column, once", () => {
    expect(checkKitchen(withTrace("traces/T-1.csv", TRACE.replace("-17", "warm"))).problems).toEqual([
      'traces/T-1.csv row 3, column core_c: expected a number or empty, got "warm"',
    ]);
    expect(checkKitchen(withTrace("traces/T-1.csv", "core_c\n1\n")).problems[0]).toMatch(
      /^traces\/T-1\.csv row 1: expected a time column/,
    );
    expect(
      checkKitchen(withTrace("traces/T-1.csv", "time_s,core_c\n0,-0.4\n60,120\n120,165.2\n")).problems[0],
    ).toContain("column core_c: expected in the unit it names: it");
  });

  it("say gaps as notices, and files that are not read", () => {
    const times = Array.from({ length: 12 }, (_, at) => `${15 * at + (at > 8 ? 600 : 0)},${-18 + at}`).join("\n");
    expect(checkKitchen(withTrace("traces/T-1.csv", `time_s,core_c\n${times}\n`)).notices.join()).toContain(
      "no readings from",
    );
    expect(checkKitchen([...starterFiles("us", 1), { file: "traces/T-1.xlsx", text: null }]).notices).toEqual([
      "traces/T-1.xlsx is not read: expected a name that ends in .csv, such as traces/T-1.csv",
    ]);
  });
});
