import { describe, expect, it } from "vitest";
import { batchFlow } from "../../../kernel-lib/library/src/yield/batch-flow";
import { demoFormula } from "../food/kitchen-data";

const base = { mixG: 1200, bowlLossPercent: 2, cutYieldFraction: 0.95, pieces: 60 };

describe("batchFlow", () => {
  it("loses nothing between its stages", () => {
    const flow = batchFlow({
      ...base,
      coating: demoFormula("turkey-sage").coating,
      cook: { percent: 92, sePercent: 1 },
      reheat: { percent: 85, sePercent: 2 },
    });
    expect(flow.stages.map((stage) => stage.stage)).toEqual([
      "mix in the bowl",
      "slab on the pan",
      "cut pieces",
      "with predust",
      "with wash",
      "with breading",
      "with spray oil",
      "cooked and frozen",
      "on the plate",
    ]);
    let massG = 1200;
    for (const stage of flow.stages) {
      massG += stage.changeG;
      expect(stage.massG).toBeCloseTo(massG, 9);
      expect(stage.ofMixPercent).toBeCloseTo((100 * massG) / 1200, 9);
    }
    expect(flow.stages[2].massG).toBeCloseTo(1200 * 0.98 * 0.95, 9);
    expect(flow.stages[2].pieceG).toBeCloseTo((1200 * 0.98 * 0.95) / 60, 9);
    expect(flow.stages[6].massG).toBeCloseTo(flow.stages[2].massG * 1.04 * 1.09 * 1.13 * 1.03, 9);
    expect(flow.plateOfMixPercent).toBe(flow.stages[8].ofMixPercent);
  });

  it("carries relative uncertainties of pickups and yields in quadrature", () => {
    const flow = batchFlow({ ...base, cook: { percent: 90, sePercent: 0.9 }, reheat: { percent: 80, sePercent: 1.6 } });
    const plate = flow.stages[flow.stages.length - 1];
    expect(plate.seG / plate.massG).toBeCloseTo(Math.hypot(0.01, 0.02), 12);
    expect(flow.stages[2].seG).toBe(0);
  });

  it("names a weighed piece that cannot come from the batch", () => {
    expect(() => batchFlow({ ...base, weighedPieceG: 23 })).toThrow(
      "batchFlow: weighedPieceG must be near the 18.6 g that 60 pieces of 1117 g give, got 23",
    );
    expect(() => batchFlow({ ...base, reheat: { percent: 120 } })).toThrow("on the plate must be between 20 and 102");
  });
});
