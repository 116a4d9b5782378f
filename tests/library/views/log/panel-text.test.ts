import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { panelOf } from "../../../../kernel-lib/library/src/trials/questions/panel-of";
import { panelScoresFigure } from "../../../../kernel-lib/library/src/views/log/panel-scores-figure";
import { panelText } from "../../../../kernel-lib/library/src/views/log/panel-text";
import { tasterHabitsFigure } from "../../../../kernel-lib/library/src/views/log/taster-habits-figure";

const [first] = loadKitchen().trials;

/** Trials by the scores of tasters; null where a taster was away. */
function scored(rows: readonly (readonly (number | null)[])[], names = ["AB", "CD", "EF"]): readonly KitchenTrial[] {
  return rows.map((row, at) => {
    const there = names.filter((_, taster) => row[taster] !== null);
    return {
      ...first,
      trialId: `T-${at}`,
      thicknessMm: 8 + at,
      crispScores: row.filter((score): score is number => score !== null),
      crispTasters: there,
    };
  });
}

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly error_x?: { readonly array: readonly number[] };
  readonly error_y?: { readonly array: readonly number[] };
}

const alike = scored([
  [2, 3, 2.5],
  [4, 5, 4.5],
  [6, 7, 6],
  [8, 9, 8.5],
]);
const random = scored([
  [2, 8, 5],
  [6, 3, 5.5],
  [5, 5, 2],
  [3, 4, 8],
]);

describe("panelText", () => {
  it("says in words that tasters agree, with W and ICC behind it", () => {
    const text = panelText(panelOf(alike));
    expect(text).toContain("Crispness by AB, CD, EF.");
    expect(text).toContain("nearly the same order (W = 1.00 over 4 trials)");
    expect(text).toMatch(/CD scores 0\.\d ± 0\.\d higher than the panel/);
    expect(text).toMatch(/the same number \(ICC = 0\.9\d, /);
  });

  it("says when orders have no more in common than chance gives", () => {
    const text = panelText(panelOf(random));
    expect(text).toContain("no more in common than chance may give");
    expect(text).toContain("numbers that differ");
    expect(text).toContain("No taster's habit is more than its doubt");
  });

  it("says how far the log is from telling, where few trials were scored by all", () => {
    expect(
      panelText(
        panelOf(
          scored([
            [2, 3, 2.5],
            [4, 5, null],
          ]),
        ),
      ),
    ).toContain("shows once all of them have scored 3");
  });
});

describe("tasterHabitsFigure", () => {
  it("shows each taster's habit, and its interval as the habits' standard errors have it", () => {
    const panel = panelOf(alike);
    const [trace] = tasterHabitsFigure(panel).data as readonly Trace[];
    expect(trace.y).toEqual(panel.tasters);
    expect(trace.x.reduce((sum, value) => sum + value, 0)).toBeCloseTo(0, 10);
    // Student's t for 6 degrees of freedom is 2.4469 (NIST/SEMATECH e-Handbook, table of t)
    expect(panel.levels.df).toBe(6);
    expect(trace.error_x?.array[0]).toBeCloseTo(2.4469 * (panel.levels.judges.get("AB")?.standardError as number), 3);
  });

  it("has no bars where nothing tells the doubt", () => {
    const [trace] = tasterHabitsFigure(panelOf(scored([[2, 3, 2.5]]))).data as readonly Trace[];
    expect(trace.error_x).toBeUndefined();
  });
});

describe("panelScoresFigure", () => {
  it("raises what only a strict taster scored, and names the trial that moves most", () => {
    const trials = scored(
      [
        [2, 4],
        [3, 5],
        [4, 6],
        [5, null],
      ],
      ["AB", "CD"],
    );
    const figure = panelScoresFigure({ panel: panelOf(trials), trials, units: "metric" });
    const [off, plain] = figure.data as readonly Trace[];
    expect(plain.y).toEqual([3, 4, 5, 5]);
    expect(off.y[3]).toBeCloseTo(6, 10);
    expect(figure.summary).toBe(
      "4 trials scored for crispness by 2 tasters. Taking the tasters' habits off moves T-3 most, from 5.0 to 6.0.",
    );
  });
});
