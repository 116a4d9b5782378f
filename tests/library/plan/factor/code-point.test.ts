import { codePoint } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = [
  { name: "airC", low: 180, high: 210 },
  { name: "thicknessMm", low: 8, high: 14 },
];

describe("codePoint", () => {
  it("codes values in the order of the factors, beyond low and high too", () => {
    expect(codePoint(factors, { thicknessMm: 14, airC: 195, cook: 3 })).toEqual([0, 1]);
    expect(codePoint(factors, { thicknessMm: 5, airC: 210 })).toEqual([1, -2]);
  });

  it("names the factor whose value is missing or no number", () => {
    expect(() => codePoint(factors, { airC: 195 })).toThrow("must hold a value for thicknessMm");
    expect(() => codePoint(factors, { airC: 195, thicknessMm: Number.NaN })).toThrow(
      "thicknessMm must be a finite number",
    );
    expect(() => codePoint([{ name: "constructor", low: 0, high: 1 }], {})).toThrow(
      "must hold a value for constructor",
    );
  });
});
