import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../../../kernel-lib/library/src/check/notice";
import { slipLines } from "../../../../../kernel-lib/library/src/check/slip";
import { readFormula } from "../../../../../kernel-lib/library/src/food/formula/read/read-formula";

const GOOD = readFileSync("data/formulas/turkey-sage.json", "utf8");
const lines = (from: string | RegExp, to: string): readonly string[] =>
  slipLines(readFormula(GOOD.replace(from, to), "a.json").slips);
const lineOf = (part: string): number => GOOD.slice(0, GOOD.indexOf(part)).split("\n").length;

describe("readFormula", () => {
  it("reads a sound formula, and finds its lines", () => {
    const { formula, id, slips, placeOf } = readFormula(GOOD, "a.json");
    expect([formula?.id, id, slips]).toEqual(["turkey-sage", "turkey-sage", []]);
    expect(placeOf("airFraction")).toEqual({ row: lineOf('"airFraction"'), at: "airFraction" });
    expect(placeOf("coating.0.no-such-field").row).toBe(placeOf("coating.0").row);
    expect(readFormula(`\ufeff${GOOD}`, "a.json").formula?.id).toBe("turkey-sage");
  });

  it("names the line and the path of every slip at once", () => {
    expect(lines(/"airFraction": [\d.]+/, '"airFraction": 1.2')).toEqual([
      `a.json line ${lineOf('"airFraction"')}, airFraction: expected a share of air, 0 to below 0.8 (80 %), got 1.2`,
    ]);
    const both = GOOD.replace(/"airFraction": [\d.]+/, '"airFraction": "low"').replace(
      /"piecesPerServing": \d+/,
      '"piecesPerServing": 2.5',
    );
    expect(slipLines(readFormula(both, "a.json").slips)).toEqual([
      `a.json line ${lineOf('"airFraction"')}, airFraction: expected a share of air, 0 to below 0.8 (80 %), got "low"`,
      `a.json line ${lineOf('"piecesPerServing"')}, piecesPerServing: expected a whole number of pieces, 1 to 10000, got 2.5`,
    ]);
  });

  it("tells a misspelt name once, with the one that was meant", () => {
    expect(lines('"airFraction"', '"airfraction"')).toEqual([
      `a.json line ${lineOf('"airFraction"')}, airfraction: expected a name that a formula has (nearest: airFraction)`,
    ]);
    expect(lines('"amount"', '"amuont"')[0]).toMatch(
      /^a\.json line \d+, mix\.0\.amuont: .*\(nearest: mix\.0\.amount\)$/,
    );
    expect(lines('"note"', '"colour": "red", "note"')).toEqual([
      `a.json line ${lineOf('"note"')}, colour: expected a name that a formula has`,
    ]);
  });

  it("tells what is missing", () => {
    expect(lines(/ *"layer": "breading",\n/, "")).toEqual([
      expect.stringMatching(/^a\.json line \d+, coating\.\d\.layer: expected one of predust, wash, .*, got none$/),
    ]);
    expect(slipLines(readFormula('{ "id": "a" }', "a.json").slips)).toEqual([
      "a.json line 1, mix: expected the lines of the mix, each with its ingredient and amount, got none",
    ]);
  });

  it("says where text stops being JSON, and has the id from the file's name", () => {
    const read = readFormula(GOOD.replace('"mix": [', '"mix": '), "formulas/Rice bites.json");
    expect(slipLines(read.slips)).toEqual([
      expect.stringMatching(/^formulas\/Rice bites\.json line \d+: expected JSON: a name in double quotes, got "\{"$/),
    ]);
    expect([read.formula, read.id]).toEqual([null, "rice-bites"]);
  });

  it("looks at the rest behind a comma too many and a bracket that was not closed", () => {
    const read = readFormula(GOOD.replace('"airFraction"', '"air": 2, "airFraction"').replace("],", ",],"), "a.json");
    expect(slipLines(read.slips)).toEqual([
      expect.stringMatching(/^a\.json line \d+, air: expected a name that a formula has$/),
      expect.stringMatching(/^a\.json line \d+: expected JSON: no comma before the closing "\]", got /),
    ]);
    const { formula, slips } = readFormula(GOOD.trimEnd().slice(0, -1), "a.json");
    expect([formula?.id, slips.length]).toEqual(["turkey-sage", 1]);
  });

  it("fills in what may be left out, and says what matters of it", () => {
    const text = JSON.stringify({
      mix: [{ ingredient: "oats-rolled", amount: "1 lb" }],
      coating: [{ layer: "spray oil", lines: [{ ingredient: "oil-canola", amount: "100 g" }], pickupPercent: 2 }],
    });
    const { formula, slips, notices } = readFormula(text, "formulas/Oat bars.json");
    expect(slips).toEqual([]);
    expect(formula).toMatchObject({
      id: "oat-bars",
      name: "oat bars",
      origin: "not stated",
      airFraction: 0,
      piecesPerServing: 1,
      note: "",
      coating: [{ pickupBasis: "substrate", pickupSePercent: 0.4 }],
    });
    expect(noticeLines(notices)).toEqual([
      expect.stringContaining("says nothing of air in the mix"),
      expect.stringContaining("says nothing of piecesPerServing"),
    ]);
    expect(
      readFormula(text.replace("{", '{ "id": "Oat Bars", "coating": [], "name": "oats", '), "x.json"),
    ).toMatchObject({
      id: "oat-bars",
      formula: { name: "oats" },
    });
  });

  it("keeps the id of a formula with slips", () => {
    expect(readFormula(GOOD.replace(/"airFraction": [\d.]+/, '"airFraction": 2'), "a.json")).toMatchObject({
      formula: null,
      id: "turkey-sage",
    });
    expect(readFormula('{ "id": 5 }', "a.json").id).toBeNull();
    expect(slipLines(readFormula("[]", "a.json").slips)).toEqual(["a.json line 1: expected object"]);
  });
});
