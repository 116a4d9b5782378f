import { describe, expect, it } from "vitest";
import { weighLines } from "../../../../kernel-lib/library/src/food/formula/weigh-lines";
import { INGREDIENTS } from "../kitchen-data";

const weigh = (lines: [string, string][], totalG?: number): number[] =>
  weighLines({
    lines: lines.map(([ingredient, amount]) => ({ ingredient, amount })),
    ingredients: INGREDIENTS,
    totalG,
    where: "test mix",
  }).map((line) => line.massG);

describe("weighLines", () => {
  it("takes a percentage of a base ingredient, wherever it stands", () => {
    const masses = weigh([
      ["salt-fine", "1.5 % of beets-cooked"],
      ["beets-cooked", "400 g"],
    ]);
    expect(masses).toEqual([6, 400]);
  });

  it("lets percentages of the mix share the whole with weighed lines", () => {
    const masses = weigh([
      ["beets-cooked", "490 g"],
      ["salt-fine", "2 % of mix"],
    ]);
    expect(masses[1]).toBeCloseTo(10, 10);
    expect(masses[1] / (masses[0] + masses[1])).toBeCloseTo(0.02, 12);
  });

  it("counts a percentage of a base that is itself a percentage of the mix", () => {
    const [beets, oats, salt] = weigh([
      ["beets-cooked", "780 g"],
      ["oats-rolled", "20 % of mix"],
      ["salt-fine", "10 % of oats-rolled"],
    ]);
    expect(oats / (beets + oats + salt)).toBeCloseTo(0.2, 12);
    expect(salt).toBeCloseTo(oats / 10, 12);
  });

  it("makes a mix of percentages alone from its total", () => {
    expect(
      weigh(
        [
          ["beets-cooked", "98 % of mix"],
          ["salt-fine", "2 % of mix"],
        ],
        1200,
      ),
    ).toEqual([1176, 24]);
  });

  it.each([
    [
      [
        ["beets-cooked", "96 % of mix"],
        ["salt-fine", "2 % of mix"],
      ],
      "must sum to 100 when no line is weighed \\(off by -2.00\\)",
    ],
    [
      [
        ["beets-cooked", "98 % of mix"],
        ["salt-fine", "2 % of mix"],
      ],
      "must give the total",
    ],
    [
      [
        ["beets-cooked", "100 g"],
        ["oats-rolled", "101 % of mix"],
      ],
      "must sum to less than 100",
    ],
    [
      [
        ["beets-cooked", "100 g"],
        ["salt-fine", "2 %"],
      ],
      "must say what the percentage is of",
    ],
    [
      [
        ["beets-cooked", "100 g"],
        ["salt-fine", "2 % of kale"],
      ],
      "stands in it exactly once",
    ],
    [
      [
        ["beets-cooked", "100 g"],
        ["salt-fine", "2 % of cumin"],
        ["cumin", "3 % of salt-fine"],
      ],
      "not one itself",
    ],
    [
      [["beets-cooked", "1 cup melted"]],
      "test mix: gramsOf: amount of beets, boiled, drained must be a mass or one of",
    ],
    [[["beets-cooked", "0 g"]], "must be > 0 g"],
    [[["beet-cooked", "100 g"]], "test mix: ingredient must be one of the kitchen's ingredients \\(nearest: "],
  ] as [[string, string][], string][])("refuses %j", (lines, message) => {
    expect(() => weigh(lines)).toThrow(new RegExp(message));
  });
});
