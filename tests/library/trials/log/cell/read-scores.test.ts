import { describe, expect, it } from "vitest";
import { partsOf } from "../../../../../kernel-lib/library/src/trials/log/cell/parts-of";
import { readProgramme } from "../../../../../kernel-lib/library/src/trials/log/cell/read-programme";
import { readScores } from "../../../../../kernel-lib/library/src/trials/log/cell/read-scores";

describe("readScores", () => {
  it("reads scores with initials and without, and knows who gave none", () => {
    expect(readScores("7; 6.5;8", ".")).toEqual({ scores: [7, 6.5, 8], tasters: [], without: [] });
    expect(readScores("7/6/8", ".")).toMatchObject({ scores: [7, 6, 8] });
    expect(readScores("AB:7; C D = 6,5", ",")).toEqual({ scores: [7, 6.5], tasters: ["AB", "C D"], without: [] });
    expect(readScores("7; –; 8", ".")).toEqual({ scores: [7, 8], tasters: [], without: [1] });
  });

  it.each(["AB:7; 6", "seven", "7 8", "AB:", ":7"])("refuses %j", (cell) =>
    expect(readScores(cell, ".")).toHaveProperty("expected"),
  );
});

describe("partsOf", () => {
  it("parts readings, and leaves fractions whole", () => {
    expect(partsOf("8.1;8.3;", { hasFractions: false, sign: "." })).toEqual(["8.1", "8.3"]);
    expect(partsOf("3/8; 7/16 / 0.4", { hasFractions: true, sign: "." })).toEqual(["3/8", "7/16", "0.4"]);
    expect(partsOf("8.1, 8.3", { hasFractions: false, sign: "." })).toEqual(["8.1", "8.3"]);
    expect(partsOf("8,1, 8,3", { hasFractions: false, sign: "," })).toEqual(["8,1, 8,3"]);
    expect(partsOf("8.1\r\n8.3", { hasFractions: true, sign: "." })).toEqual(["8.1", "8.3"]);
  });
});

describe("readProgramme", () => {
  const rules = { sign: ".", kind: "temperature", base: "°C", unit: "°F" } as const;

  it("reads settings with their minutes, in the heading's unit", () => {
    expect(readProgramme("356x6; 400 × 4.5", rules)).toEqual({
      steps: [
        { setpointC: 180, timeMin: 6 },
        { setpointC: expect.closeTo(204.4444, 3), timeMin: 4.5 },
      ],
    });
  });

  it.each(["180", "180x", "x6", "180x6x7", "hotx6"])("refuses %j", (cell) =>
    expect(readProgramme(cell, rules)).toHaveProperty("expected"),
  );
});
