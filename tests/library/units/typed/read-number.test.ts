import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type NumberRules, readNumber } from "../../../../kernel-lib/library/src/units/typed/read-number";

const MASS: NumberRules = { sign: ".", kind: "mass", base: "g", unit: "g" };
const INCHES: NumberRules = { sign: ".", kind: "length", base: "mm", unit: "in" };
const MINUTES: NumberRules = { sign: ".", kind: "time", base: "min", unit: "min" };
const AIR: NumberRules = { sign: ".", kind: "temperature", base: "°C", unit: "°F" };
const COMMA: NumberRules = { ...MASS, sign: "," };
const UNTOLD: NumberRules = { ...MASS, sign: null };
const BARE: NumberRules = { sign: ".", kind: null, base: null, unit: null, words: ["pcs"] };

describe("readNumber", () => {
  it.each<[string, NumberRules, number, RegExp | null]>([
    ["12.5", MASS, 12.5, null],
    ["1e3", MASS, 1000, null],
    ["12,5", COMMA, 12.5, null],
    ["1.150", COMMA, 1150, /thousands/],
    ["1.150,5", COMMA, 1150.5, /thousands/],
    ["1,150.5", MASS, 1150.5, /thousands/],
    ["1 150", MASS, 1150, /thousands/],
    ["1’150", MASS, 1150, /thousands/],
    ["1,234,567", MASS, 1_234_567, /thousands/],
    ["1.2", UNTOLD, 1.2, null],
    ["3/8", INCHES, 9.525, null],
    ["1 1/4", INCHES, 31.75, null],
    ["1-1/4", INCHES, 31.75, null],
    ["⅜", INCHES, 9.525, null],
    ["1¼", INCHES, 31.75, null],
    ['3/8"', INCHES, 9.525, null],
    ["3/8 in.", INCHES, 9.525, null],
    ["9 mm", INCHES, 9, /another unit than the heading's \(in\)/],
    ["2 lb 10 oz", MASS, 42 * 28.349523125, /another unit/],
    ["2 lb, 10 oz", MASS, 42 * 28.349523125, /another unit/],
    ["2 lb and 10 oz", MASS, 42 * 28.349523125, /another unit/],
    ["12 min 30 s", MINUTES, 12.5, /another unit/],
    ["12:30", MINUTES, 12.5, /minutes and seconds/],
    ["0:12:30", MINUTES, 12.5, /hours, minutes and seconds/],
    ["12:30", { ...MINUTES, unit: "min:s" }, 12.5, null],
    ["12m", MINUTES, 12, null],
    ["390", AIR, 1790 / 9, null],
    ["390°F", AIR, 1790 / 9, null],
    ["200 °C", AIR, 200, /another unit/],
    ["−18", { ...AIR, unit: "°C" }, -18, null],
    ["– 18", { ...AIR, unit: "°C" }, -18, null],
    ["-18 C", { ...AIR, unit: null }, -18, null],
    ["~ 12", MINUTES, 12, /about/],
    ["8 pcs", BARE, 8, null],
  ])("reads %j", (cell, rules, value, says) => {
    const read = readNumber(cell, rules);
    if ("expected" in read) expect.fail(`${cell}: expected ${read.expected}`);
    expect(read.value).toBeCloseTo(value, 9);
    if (says === null) expect(read.says).toBeNull();
    else expect(read.says).toMatch(says);
    expect(read.taken === null).toBe(says === null);
  });

  it.each<[string, NumberRules]>([
    ["1e999", MASS],
    ["2O0", MASS],
    ["1,5", MASS],
    ["1.5", { ...COMMA }],
    ["1,150", UNTOLD],
    ["1.150", UNTOLD],
    ["1.150", { ...UNTOLD, kind: null, base: null, unit: null }],
    ["1,15,0", MASS],
    ["12.5 °C", MASS],
    ["2 lb 10", MASS],
    ["10 oz 2 lb", MASS],
    ["390 °F 2 °F", AIR],
    ["200", { ...AIR, unit: null }],
    ["3/0", INCHES],
    ["12:60", MINUTES],
    ["12.5", { ...MINUTES, unit: "min:s" }],
    ["9-11", MINUTES],
    ["9 to 11", MINUTES],
    [">12", MINUTES],
    ["8 boxes", BARE],
    ["", MASS],
    ["-", MASS],
    ["g", MASS],
    ["Infinity", MASS],
    ["0x10", MASS],
  ])("refuses %j", (cell, rules) =>
    expect(readNumber(cell, rules)).toEqual({ expected: expect.stringMatching(/^a /) }),
  );

  it("reads a number alike, whatever sign the file has", () => {
    fc.assert(
      fc.property(fc.integer({ min: -10_000_000, max: 10_000_000 }), fc.nat(5), (digits, places) => {
        const text = (digits / 10 ** places).toFixed(places);
        const value = Number(text);
        expect(readNumber(text, MASS)).toMatchObject({ value, says: null });
        expect(readNumber(text.replace(".", ","), COMMA)).toMatchObject({ value, says: null });
      }),
    );
  });
});
