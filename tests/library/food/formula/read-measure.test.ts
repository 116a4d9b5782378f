import { describe, expect, it } from "vitest";
import { readMeasure } from "../../../../kernel-lib/library/src/food/formula/read-measure";

describe("readMeasure", () => {
  it.each([
    ["250 g", "mass", 250, 1, []],
    ["3 lb 2 oz", "mass", 3.125, 453.59237, []],
    ["1 cup + 2 tbsp", "volume", 1.125, 236.5882365, []],
    [".25 cup", "volume", 0.25, 236.5882365, []],
    ["1 cup, chopped (1/2 pieces)", "volume", 1, 236.5882365, ["chopped", "1/2", "piece"]],
    ["2 fl oz", "volume", 2, 29.5735295625, []],
    ["2 extra large", "count", 2, 1, ["extra", "large"]],
    ["5 sprigs", "count", 5, 1, ["sprig"]],
    ["4 oz, crumbled", "mass", 4, 28.349523125, ["crumbled"]],
    ["3", "count", 3, 1, []],
  ])("%s", (text, kind, amount, size, words) => {
    const measure = readMeasure(text, "test");
    expect(measure.kind).toBe(kind);
    expect(measure.amount).toBeCloseTo(amount, 10);
    expect(measure.size).toBeCloseTo(size, 8);
    expect(measure.words).toEqual(words);
  });
});
