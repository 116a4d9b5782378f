import { describe, expect, it } from "vitest";
import { variantCrispTime } from "../../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { decide } from "../../../../kernel-lib/library/src/advice/window/decide";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { thicknessByPanFigure } from "../../../../kernel-lib/library/src/views/advice/thickness-by-pan-figure";
import { crispTimeFigure } from "../../../../kernel-lib/library/src/views/crisp/crisp-time-figure";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly text?: readonly string[];
}

const kitchen = loadKitchen();

describe("crispTimeFigure", () => {
  const { times, fit } = variantCrispTime({ kitchen, variantId: "beet-lentil" });
  const figure = crispTimeFigure(times, fit);
  const traces = figure.data as readonly Trace[];

  it("shows every trial, whether seen from both sides or one", () => {
    const shown = traces.flatMap((trace) => trace.text ?? []);
    expect(shown.toSorted()).toEqual(times.times.map((time) => time.trialId).toSorted());
  });

  it("draws the curve inside its bands, the narrower band for the curve", () => {
    const width = (name: string): number => {
      const { y } = traces.find((trace) => trace.name === name)!;
      return y[30] - y[y.length - 1 - 30];
    };
    expect(width("95 % band, the curve")).toBeGreaterThan(0);
    expect(width("95 % band, one more trial")).toBeGreaterThan(width("95 % band, the curve"));
  });

  it("dots the curve beyond the thicknesses that were tried", () => {
    const solid = traces.find((trace) => trace.name === fit.equation)!;
    expect(Math.min(...solid.x)).toBeGreaterThanOrEqual(fit.rangeX![0]);
    expect(Math.max(...solid.x)).toBeLessThanOrEqual(fit.rangeX![1]);
    const dotted = traces.filter((trace) => trace.name === "beyond what was tried");
    expect(dotted).toHaveLength(2);
    expect(Math.max(...dotted[1].x)).toBeGreaterThan(fit.rangeX![1]);
  });

  it("names quantities with units and says the finding in words", () => {
    expect(JSON.stringify(figure.layout)).toContain("slab thickness (mm)");
    expect(JSON.stringify(figure.layout)).toContain("crisp time (min)");
    expect(figure.summary).toMatch(/\d+ trials from 5\.\d to 14\.\d mm: \d+\.\d min at \d+\.\d mm/);
  });
});

describe("thicknessByPanFigure", () => {
  it("marks every batch that goes on a pan and names those thicker than tried", () => {
    const decisions = decide({ kitchen });
    const figure = thicknessByPanFigure(decisions);
    const marks = (figure.data as readonly Trace[]).slice(1).flatMap((trace) => trace.x);
    expect(marks).toHaveLength(decisions.filter((decision) => decision.outcome !== null).length);
    expect(figure.summary).toContain("beet and lentil bites on quarter sheet");
  });
});
