import fc from "fast-check";
import { judgeLevels, type Score } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

const values = (levels: ReadonlyMap<string, { value: number }>): number[] =>
  [...levels.values()].map(({ value }) => value);

describe("judgeLevels", () => {
  it("agrees with R 4 (lm, contr.sum) where two of twelve scores are missing", () => {
    const things = [..."AAABCCCDDB"];
    const judges = [..."xyzxxyzxzz"];
    const scores = [7, 6.5, 8, 5, 6.5, 9, 8.5, 3, 4, 6];
    const found = judgeLevels(scores.map((score, at) => ({ thing: things[at], judge: judges[at], score })));
    const pairs = (levels: typeof found.things): unknown =>
      [...levels].map(([name, { value, standardError }]) => [
        name,
        +value.toFixed(9),
        +(standardError as number).toFixed(9),
      ]);
    expect(pairs(found.things)).toEqual([
      ["A", 7.166666667, 0.452615854],
      ["B", 5.583333333, 0.598754494],
      ["C", 8, 0.452615854],
      ["D", 3.583333333, 0.598754494],
    ]);
    expect(pairs(found.judges)).toEqual([
      ["x", -0.708333333, 0.357824251],
      ["y", 0.166666667, 0.452615854],
      ["z", 0.541666667, 0.357824251],
    ]);
    expect(found.sd).toBeCloseTo(0.783953655093, 11);
    expect(found.df).toBe(4);
  });

  it("finds exact levels again, whoever scored what, and says nothing of scatter that it cannot see", () => {
    const cell = fc.record({ thing: fc.integer({ min: 0, max: 9 }), judge: fc.integer({ min: 0, max: 4 }) });
    fc.assert(
      fc.property(
        fc.array(cell, { maxLength: 30 }),
        fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 15, maxLength: 15 }),
        (cells, truth) => {
          // thing 0 was scored by all five, which joins them
          const all = [...[0, 1, 2, 3, 4].map((judge) => ({ thing: 0, judge })), ...cells];
          const scores: Score[] = all.map(({ thing, judge }) => ({
            thing: `t${thing}`,
            judge: `j${judge}`,
            score: truth[judge] + truth[5 + thing],
          }));
          const found = judgeLevels(scores);
          const mean = (truth[0] + truth[1] + truth[2] + truth[3] + truth[4]) / 5;
          for (const [name, { value }] of found.things)
            expect(value).toBeCloseTo(truth[5 + Number(name.slice(1))] + mean, 9);
          for (const [name, { value }] of found.judges)
            expect(value).toBeCloseTo(truth[Number(name.slice(1))] - mean, 9);
          expect(found.sd === null).toBe(found.df === 0);
          expect(values(found.judges).reduce((sum, value) => sum + value, 0)).toBeCloseTo(0, 9);
        },
      ),
    );
  });

  it("refuses judges that no thing joins, and what is no number", () => {
    expect(() =>
      judgeLevels([
        { thing: "A", judge: "x", score: 1 },
        { thing: "B", judge: "y", score: 2 },
      ]),
    ).toThrow('judgeLevels: scores must join all judges by things that two of them scored, got "x, y"');
    expect(() => judgeLevels([{ thing: "A", judge: "x", score: Number.NaN }])).toThrow(
      "the score of A by x must be a finite number",
    );
    expect(() => judgeLevels([])).toThrow("must hold a score");
  });

  it("gives one judge's scores as they are", () => {
    expect(
      values(
        judgeLevels([
          { thing: "A", judge: "x", score: 4 },
          { thing: "B", judge: "x", score: 6 },
        ]).things,
      ),
    ).toEqual([4, 6]);
  });
});
