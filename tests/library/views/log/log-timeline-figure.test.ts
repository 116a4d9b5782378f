import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { logTimelineFigure } from "../../../../kernel-lib/library/src/views/log/log-timeline-figure";

interface Trace {
  readonly x: readonly string[];
  readonly text: readonly string[];
  readonly customdata: readonly string[];
}

const kitchen = loadKitchen();
const tracesOf = (trials: typeof kitchen.trials): readonly Trace[] =>
  logTimelineFigure({ ...kitchen, trials }).data as readonly Trace[];

describe("logTimelineFigure", () => {
  it("counts every trial once, on its day", () => {
    const counts = tracesOf(kitchen.trials).flatMap(({ text }) => text.map(Number));
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(kitchen.trials.length);
    const days = new Set(tracesOf(kitchen.trials).flatMap(({ x }) => x));
    expect(days).toEqual(new Set(kitchen.trials.map(({ date }) => date)));
  });

  it("keeps two sessions of one day apart, and names them", () => {
    const [one, two] = kitchen.trials;
    const [{ x, customdata }] = tracesOf([
      { ...one, date: "2026-05-04", session: "early" },
      { ...two, date: "2026-05-04", session: "late" },
    ]);
    expect(x).toEqual(["2026-05-04", "2026-05-04"]);
    expect(customdata).toEqual([`2026-05-04, early: ${one.trialId}`, `2026-05-04, late: ${two.trialId}`]);
  });

  it("names what was not tried yet, and asks for a trial where there is none", () => {
    expect(logTimelineFigure({ ...kitchen, trials: kitchen.trials.slice(0, 1) }).summary).toContain(
      "1 trial in 1 session on 2026-02-04: beet and lentil bites 1, last on 2026-02-04. Not tried yet: turkey",
    );
    expect(() => logTimelineFigure({ ...kitchen, trials: [] })).toThrow("log the first one");
  });
});
