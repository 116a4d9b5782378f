import { designFigure } from "slabwright/views";
import { describe, expect, it } from "vitest";

const factors = [
  { name: "setpoint (°C)", low: 180, high: 200 },
  { name: "slab thickness (mm)", low: 8, high: 12 },
] as const;

describe("designFigure", () => {
  it("puts coded runs where they are set, several at one place as one mark with their number", () => {
    const points = [
      [-1, 1],
      [-1, 1.0002],
      [0, 0],
    ];
    const { data, summary } = designFigure({ factors, points, kept: [[1, -1]] });
    const [kept, chosen] = data as { x: number[]; y: number[]; text: string[] }[];
    expect([kept.x, kept.y]).toEqual([[200], [8]]);
    expect([chosen.x, chosen.y, chosen.text]).toEqual([
      [180, 190],
      [12, 10],
      ["×2", ""],
    ]);
    expect(summary).toContain("3 runs to make beside 1 in the log");
  });

  it("is in a kitchen's own units, and refuses points of other lengths", () => {
    const { layout, data } = designFigure({ factors, points: [[-1, 1]], units: "us" });
    expect((layout.xaxis as { title: { text: string } }).title.text).toBe("setpoint (°F)");
    expect((data[1] as { x: number[] }).x[0]).toBeCloseTo(356, 9);
    expect(() => designFigure({ factors, points: [[1]] })).toThrow("must hold two numbers each");
  });
});
