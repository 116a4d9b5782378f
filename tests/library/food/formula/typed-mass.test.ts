import { describe, expect, it } from "vitest";
import { typedMassG } from "../../../../kernel-lib/library/src/food/formula/typed-mass";

describe("typedMassG", () => {
  it.each([
    [870, 870],
    ["870 g", 870],
    ["2 lb 3 oz", 35 * 28.349523125],
    ["0.9 kg", 900],
  ])("reads %s", (typed, massG) => {
    expect(typedMassG(typed)).toBeCloseTo(massG, 9);
  });

  it.each([0, -5, Number.NaN, "0 g", "870", "1 cup", "much"])("refuses %s", (typed) => {
    expect(() => typedMassG(typed)).toThrow(RangeError);
  });
});
