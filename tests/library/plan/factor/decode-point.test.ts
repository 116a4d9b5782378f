import fc from "fast-check";
import { codePoint, decodePoint } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const air = { name: "airC", low: 180, high: 210 };
const thick = { name: "thicknessMm", low: 8, high: 14 };

describe("decodePoint", () => {
  it("puts -1, 0 and 1 at low, middle and high, and goes on beyond", () => {
    expect(decodePoint([air, thick], [-1, 0])).toEqual({ airC: 180, thicknessMm: 11 });
    expect(decodePoint([air, thick], [1, 2])).toEqual({ airC: 210, thicknessMm: 17 });
  });

  it("sets what the step has, without dust", () => {
    expect(decodePoint([{ ...air, step: 5 }], [0.6])).toEqual({ airC: 205 });
    expect(decodePoint([{ name: "saltPct", low: 0, high: 1, step: 0.1 }], [-0.4])).toEqual({ saltPct: 0.3 });
  });

  it("comes back by codePoint, whatever the factor", () => {
    const range = fc.tuple(
      fc.double({ min: -500, max: 500, noNaN: true }),
      fc.double({ min: 0.01, max: 500, noNaN: true }),
    );
    fc.assert(
      fc.property(range, fc.double({ min: -2, max: 2, noNaN: true }), ([low, width], code) => {
        const factors = [{ name: "x", low, high: low + width }];
        expect(codePoint(factors, decodePoint(factors, [code]))[0]).toBeCloseTo(code, 8);
      }),
    );
  });

  it("refuses factors and points that cannot be coded", () => {
    expect(() => decodePoint([], [])).toThrow("factors must name at least one factor");
    expect(() => decodePoint([air, air], [0, 0])).toThrow("must each have a name of its own");
    expect(() => decodePoint([{ ...air, high: 180 }], [0])).toThrow("low of airC must be below its high 180");
    expect(() => decodePoint([{ ...air, step: 40 }], [0])).toThrow("step of airC must be at most 30");
    expect(() => decodePoint([air, thick], [0])).toThrow("one number for each of the 2 factors");
    expect(() => decodePoint([air], [Number.NaN])).toThrow("airC must be a finite number");
  });
});
