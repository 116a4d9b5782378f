import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { slipLines } from "../../../../kernel-lib/library/src/check/slip";
import { readFormula } from "../../../../kernel-lib/library/src/food/formula/read-formula";

const GOOD = readFileSync("data/formulas/turkey-sage.json", "utf8");
const lines = (from: string | RegExp, to: string): readonly string[] =>
  slipLines(readFormula(GOOD.replace(from, to), "a.json").slips);
const lineOf = (part: string): number => GOOD.slice(0, GOOD.indexOf(part)).split("\n").length;

describe("readFormula", () => {
  it("reads a sound formula, and finds its lines", () => {
    const { formula, id, slips, lineOf: line } = readFormula(GOOD, "a.json");
    expect([formula?.id, id, slips]).toEqual(["turkey-sage", "turkey-sage", []]);
    expect(line("airFraction")).toBe(lineOf('"airFraction"'));
    expect(line("coating.0.no-such-field")).toBe(line("coating.0"));
    expect(readFormula(`\ufeff${GOOD}`, "a.json").formula?.id).toBe("turkey-sage");
  });

  it("names the line and the path of every slip at once", () => {
    expect(lines(/"airFraction": [\d.]+/, '"airFraction": 1.2')).toEqual([
      `a.json line ${lineOf('"airFraction"')}, airFraction: expected number to be <0.8, got 1.2`,
    ]);
    const both = GOOD.replace(/"airFraction": [\d.]+/, '"airFraction": "low"').replace(
      /"piecesPerServing": \d+/,
      '"piecesPerServing": 2.5',
    );
    expect(slipLines(readFormula(both, "a.json").slips)).toEqual([
      `a.json line ${lineOf('"airFraction"')}, airFraction: expected number, got "low"`,
      `a.json line ${lineOf('"piecesPerServing"')}, piecesPerServing: expected int, got 2.5`,
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
    expect(lines(/ *"airFraction": [\d.]+,\n/, "")).toEqual(["a.json line 1, airFraction: expected number, got none"]);
  });

  it("says where text stops being JSON, and knows the id no more", () => {
    const read = readFormula(GOOD.replace('"mix": [', '"mix" ['), "a.json");
    expect(slipLines(read.slips)).toEqual([
      `a.json line ${lineOf('"mix"')}: expected JSON: a colon ":" after the name, got "["`,
    ]);
    expect([read.formula, read.id]).toEqual([null, null]);
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
