import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";
import { isUsual, weightOfTrial } from "../../../../kernel-lib/library/src/trials/pieces/weight-of-trial";
import type { Figure } from "../../../../kernel-lib/library/src/views/figure/figure";
import { pieceBalanceFigure } from "../../../../kernel-lib/library/src/views/log/piece-balance-figure";
import { thicknessBalanceFigure } from "../../../../kernel-lib/library/src/views/log/thickness-balance-figure";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly text?: readonly string[];
  readonly error_y?: { readonly array: readonly number[]; readonly arrayminus: readonly number[] };
}

const kitchen = loadKitchen();
const changed = (trialId: string, changes: Partial<KitchenTrial>): Kitchen => ({
  ...kitchen,
  trials: kitchen.trials.map((trial) => (trial.trialId === trialId ? { ...trial, ...changes } : trial)),
});
const named = ({ data }: Figure): readonly string[] =>
  (data as readonly Trace[]).find(({ name }) => name === "to look at")?.text ?? [];
const shown = ({ data }: Figure): readonly string[] =>
  (data as readonly Trace[]).filter(({ name }) => name !== "to look at").flatMap(({ text = [] }) => text);

describe("thicknessBalanceFigure", () => {
  it("shows every trial with both, and names the one with a slip", () => {
    const figure = thicknessBalanceFigure(kitchen);
    expect(shown(figure)).toHaveLength(
      kitchen.trials.filter(({ batchG, probesMm }) => batchG !== null && probesMm.length > 0).length,
    );
    expect(named(figure)).toEqual(["BL-14"]);
    expect(figure.summary).toContain("to look at: BL-14 (+35 %)");
  });

  it("leaves out what has one of the two alone", () => {
    expect(shown(thicknessBalanceFigure(changed("BL-01", { batchG: null })))).not.toContain("BL-01");
    const none = { ...kitchen, trials: kitchen.trials.map((trial) => ({ ...trial, probesMm: [] })) };
    expect(() => thicknessBalanceFigure(none)).toThrow("log the batch's mass and five depths");
  });

  it("has one line and one band also for one trial", () => {
    const traces = thicknessBalanceFigure({ ...kitchen, trials: kitchen.trials.slice(0, 1) }).data as readonly Trace[];
    const line = traces.find(({ name }) => name === "both agree")!;
    expect(line.x[1] / line.x[0]).toBeGreaterThan(1.2);
    expect(line.y).toEqual(line.x);
  });

  it("is in inches in a US kitchen", () => {
    const us = thicknessBalanceFigure({ ...kitchen, units: "us" }).data as readonly Trace[];
    const metric = thicknessBalanceFigure(kitchen).data as readonly Trace[];
    expect(25.4 * us.at(-1)!.y[0]).toBeCloseTo(metric.at(-1)!.y[0], 9);
  });
});

describe("pieceBalanceFigure", () => {
  it("names a piece weighed at a wrong digit, and no other", () => {
    expect(named(pieceBalanceFigure(kitchen))).toEqual([]);
    const trial = kitchen.trials.find(({ trialId }) => trialId === "BL-02")!;
    const figure = pieceBalanceFigure(changed("BL-02", { massBeforeG: 2 * (trial.massBeforeG as number) }));
    expect(named(figure)).toEqual(["BL-02"]);
  });

  it("draws for each trial the bar in which the scale is usual", () => {
    const [bars] = pieceBalanceFigure(kitchen).data as readonly Trace[];
    kitchen.trials.forEach((trial, at) => {
      const weight = weightOfTrial({ kitchen, trial })!;
      const low = bars.y[at] - (bars.error_y?.arrayminus[at] as number);
      const high = bars.y[at] + (bars.error_y?.array[at] as number);
      expect(weight.weighedG >= low && weight.weighedG <= high).toBe(isUsual(weight));
    });
  });

  it("asks for weights where there are none", () => {
    const none = { ...kitchen, trials: kitchen.trials.map((trial) => ({ ...trial, pieces: null })) };
    expect(() => pieceBalanceFigure(none)).toThrow("log their mass before");
  });
});
