import { describe, expect, it } from "vitest";
import { nextTrial } from "../../../../kernel-lib/library/src/advice/trial/next-trial";
import { planMorning } from "../../../../kernel-lib/library/src/advice/trial/plan-morning";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { gainAheadFigure } from "../../../../kernel-lib/library/src/views/advice/gain-ahead-figure";
import { morningTable } from "../../../../kernel-lib/library/src/views/advice/morning-table";
import { nextTrialTable } from "../../../../kernel-lib/library/src/views/advice/next-trial-table";
import { trialGainFigure } from "../../../../kernel-lib/library/src/views/advice/trial-gain-figure";

const demo = loadKitchen();
const variantId = "turkey-sage";
const own = demo.trials.filter((trial) => trial.variantId === variantId);
const kitchen = { ...demo, trials: own.slice(0, 6) };
const asked = { kitchen, variantId, setpointsC: [195, 205], question: { kind: "time" } } as const;
const next = nextTrial(asked);
const morning = planMorning({ ...asked, trials: 3 });

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly error_y?: { readonly array: readonly number[] };
}

describe("views of the next trial", () => {
  it("nextTrialTable tells the best five, with what they are worth, and the caution", () => {
    const { rows, columns, notes } = nextTrialTable(next);
    const place = columns.findIndex(({ heading }) => heading === "gain (points)");
    expect(rows.map((row) => row[place])).toEqual(
      next.candidates.flatMap(({ gain, reason }) => (reason === null ? [] : [100 * gain])),
    );
    for (const row of rows) expect(String(row.at(-1))).toMatch(/^it (settles|would|brings)/);
    expect(notes).toContain(next.cautions[0]);
    expect(notes).toContain(next.stopping.sentence);
  });

  it("trialGainFigure shows the best of each thickness and setting with its doubt, and rings the five", () => {
    const figure = trialGainFigure(next);
    const traces = figure.data as unknown as readonly Trace[];
    expect(traces.map(({ name }) => name)).toEqual(["195 °C", "205 °C", "the best five"]);
    for (const { y, error_y } of traces.slice(0, 2)) {
      expect(error_y?.array).toHaveLength(y.length);
      expect(y.length).toBeGreaterThan(4);
    }
    const shown = traces.slice(0, 2).flatMap(({ y }) => y);
    const best = next.candidates.reduce((most, { gain }) => Math.max(most, 100 * gain), Number.NEGATIVE_INFINITY);
    expect(Math.max(...shown)).toBe(best);
    for (const gain of traces[2].y) expect(shown).toContain(gain);
    expect(figure.summary).toContain(next.stopping.sentence);
  });

  it("gainAheadFigure begins at nothing and never falls, beside what trials must gain", () => {
    const [gain, worth] = gainAheadFigure(next).data as unknown as readonly Trace[];
    expect(gain.x).toEqual([0, 1, 2, 3, 4]);
    expect(gain.y).toEqual(gain.y.toSorted((a, b) => a - b));
    expect(gain.y[0]).toBe(0);
    expect(worth.y).toEqual([0, 0.5, 1, 1.5, 2]);
  });

  it("morningTable has a row a load, in the order to run them", () => {
    const { rows, notes } = morningTable(morning);
    expect(rows.map(([load]) => load)).toEqual([1, 2, 3]);
    expect(rows.map((row) => row[8])).toEqual(morning.trials.map(({ timeMin }) => timeMin));
    expect(notes).toContain(morning.cautions[0]);
  });
});
