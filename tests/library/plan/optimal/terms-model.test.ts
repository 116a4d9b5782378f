import { termsModel } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["air", "time"];

describe("termsModel", () => {
  it("multiplies factors and their powers", () => {
    const { row, terms } = termsModel({ factors, terms: ["1", "time", "air^2*time", "air * air", "time^3"] });
    expect(terms[2]).toBe("air^2*time");
    expect(row([3, -2])).toEqual([1, -2, -18, 9, -8]);
  });

  it("refuses what it cannot read, a term twice, and points of another length", () => {
    const of =
      (...terms: string[]) =>
      () =>
        termsModel({ factors, terms });
    expect(of()).toThrow("at least one term");
    expect(of("1", "salt")).toThrow('must be "1" or products of air, time and their powers 1 to 9, got "salt"');
    for (const term of ["air^0", "air^1.5", "air^2^2", "air**time", "", "air+time"])
      expect(of(term)).toThrow("products of");
    expect(of("air*time", "time*air")).toThrow('each term once, got "time*air"');
    expect(() => termsModel({ factors: ["air", "air"], terms: ["1"] })).toThrow("each once");
    expect(() => termsModel({ factors, terms: ["1"] }).row([1])).toThrow("one number for each of air, time");
  });
});
