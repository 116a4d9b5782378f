import { describe, expect, it } from "vitest";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { pieceMacros } from "../../../../kernel-lib/library/src/macros/piece-macros";
import { pieceMacrosMonteCarlo } from "../../../../kernel-lib/library/src/macros/piece-macros-monte-carlo";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { pieceOf } from "../../../../kernel-lib/library/src/pan/piece";
import type { Figure } from "../../../../kernel-lib/library/src/views/figure/figure";
import { macroDoubtFigure } from "../../../../kernel-lib/library/src/views/food/macro-doubt-figure";
import { batchFlowFigure } from "../../../../kernel-lib/library/src/views/yield/batch-flow-figure";
import { coatingThicknessFigure } from "../../../../kernel-lib/library/src/views/yield/coating-thickness-figure";
import { yieldLossFigure } from "../../../../kernel-lib/library/src/views/yield/yield-loss-figure";
import { batchFlow } from "../../../../kernel-lib/library/src/yield/batch-flow";
import { coatPiece } from "../../../../kernel-lib/library/src/yield/coat-piece";
import { fitLoss, predictLoss } from "../../../../kernel-lib/library/src/yield/fit-loss";
import { demoFormula, INGREDIENTS } from "../../food/kitchen-data";

interface Trace {
  readonly name: string;
  readonly x: readonly (number | string)[];
  readonly y: readonly number[];
}
const traces = (figure: Figure): readonly Trace[] => figure.data as unknown as readonly Trace[];
const named = (figure: Figure, start: string): Trace => traces(figure).find((trace) => trace.name.startsWith(start))!;

describe("batchFlowFigure", () => {
  const flow = batchFlow({ mixG: 1200, cutYieldFraction: 0.95, pieces: 60, reheat: { percent: 85, sePercent: 2 } });
  const figure = batchFlowFigure(flow);

  it("steps add up to the plate, and every stage is a point", () => {
    const steps = named(figure, "change").y;
    expect(steps.reduce((sum, step) => sum + step, 0)).toBeCloseTo(flow.stages[flow.stages.length - 1].massG, 9);
    expect(named(figure, "mass after").y).toEqual(flow.stages.map((one) => one.massG));
    expect(JSON.stringify(figure.layout)).toContain("mass of the batch (g)");
    expect(figure.summary).toContain("1200 g of mix gives 60 pieces");
  });
});

describe("macroDoubtFigure", () => {
  const options = { totals: formulaTotals(demoFormula("turkey-sage"), INGREDIENTS), pieceG: 24, pieceSeG: 1 };

  it("shows shares that add to 100 %, largest first", () => {
    const { x } = traces(macroDoubtFigure(pieceMacros(options)))[0] as unknown as { x: number[] };
    expect(x.reduce((sum, share) => sum + share, 0)).toBeCloseTo(100, 8);
    expect(x[0]).toBeGreaterThan(x[1]);
  });

  it("says that drawing gives no shares", () => {
    expect(() => macroDoubtFigure(pieceMacrosMonteCarlo({ ...options, draws: 1000 }))).toThrow(
      "must come from pieceMacros",
    );
  });
});

describe("coatingThicknessFigure", () => {
  const size = { pieceLengthMm: 48, pieceWidthMm: 40, densityKgM3: 1060 };
  const formula = demoFormula("chickpea-carrot");
  const figure = coatingThicknessFigure({ formula, ...size, fromMm: 6, toMm: 16 });

  it("falls with thickness and is coatPiece's own share", () => {
    const { x, y } = named(figure, "all layers") as unknown as { x: number[]; y: number[] };
    for (let at = 1; at < y.length; at++) expect(y[at]).toBeLessThan(y[at - 1]);
    const piece = pieceOf({ lengthMm: 48, widthMm: 40, thicknessMm: x[10], densityKgM3: 1060 });
    const coated = coatPiece({ layers: formula.coating, pieceG: piece.massG, surfaceMm2: piece.surfaceMm2 });
    expect(y[10]).toBeCloseTo(coated.coatingPercent, 10);
  });

  it("marks the slab that the pickups were seen on, where the surface ratio is the stated one", () => {
    const { x } = named(figure, "where the pickups") as unknown as { x: number[] };
    const piece = pieceOf({ lengthMm: 48, widthMm: 40, thicknessMm: x[0], densityKgM3: 1060 });
    expect(piece.surfaceMm2 / 100 / piece.massG).toBeCloseTo(2.6, 9);
  });

  it("refuses an uncoated formula and a range that is none", () => {
    expect(() => coatingThicknessFigure({ formula: demoFormula("corn-puff"), ...size, fromMm: 6, toMm: 16 })).toThrow(
      "must have a coating",
    );
    expect(() => coatingThicknessFigure({ formula, ...size, fromMm: 16, toMm: 6 })).toThrow(
      "must be above fromMm 16 mm",
    );
  });
});

describe("yieldLossFigure", () => {
  const kitchen = loadKitchen(new URL("../../../../data", import.meta.url).pathname);
  const trials = kitchen.trials.flatMap((trial) =>
    trial.variantId === "beet-lentil" && trial.massBeforeG !== null && trial.massAfterG !== null
      ? [{ ...trial, massBeforeG: trial.massBeforeG, massAfterG: trial.massAfterG }]
      : [],
  );
  const loss = fitLoss(trials);

  it("draws the fit and every trial, moved along the fit", () => {
    const figure = yieldLossFigure(loss, { timeMin: 12, setpointC: 200 });
    const line = named(figure, "loss at") as unknown as { x: number[]; y: number[] };
    const dotted = named(figure, "beyond what was tried") as unknown as { y: (number | null)[] };
    line.x.forEach((thicknessMm, at) => {
      const { lossPercent, extrapolated } = predictLoss(loss, { thicknessMm, timeMin: 12, setpointC: 200 });
      expect(line.y[at]).toBe(extrapolated ? null : lossPercent);
      expect(dotted.y[at]).toBe(extrapolated ? lossPercent : null);
    });
    const points = named(figure, "trial, moved");
    expect(points.x).toHaveLength(trials.length);
    const predicted = predictLoss(loss, { ...trials[0], timeMin: 12, setpointC: 200 }).lossPercent;
    expect(points.y[0]).toBeCloseTo(predicted + loss.fit.residuals[0], 10);
    expect(figure.summary).toContain(`${trials.length} trials`);
  });

  it("finds that thicker slabs lose less and longer reheats more", () => {
    expect(loss.fit.parameters.thicknessMm.interval95![1]).toBeLessThan(0);
    expect(loss.fit.parameters.timeMin.interval95![0]).toBeGreaterThan(0);
  });

  it("needs trials of two thicknesses", () => {
    const flat = fitLoss(trials.map((trial) => ({ ...trial, thicknessMm: 9 })));
    expect(() => yieldLossFigure(flat, { timeMin: 12, setpointC: 200 })).toThrow("two thicknesses or more");
  });
});
