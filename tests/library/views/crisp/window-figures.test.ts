import { describe, expect, it } from "vitest";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { otherPans } from "../../../../kernel-lib/library/src/advice/window/other-pans";
import { GOOD_CHANCE } from "../../../../kernel-lib/library/src/crisp/window/card-time";
import { windowMapOverSetpoint, windowMapOverTime } from "../../../../kernel-lib/library/src/crisp/window/window-map";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { clockFigure } from "../../../../kernel-lib/library/src/views/crisp/clock-figure";
import { successFigure } from "../../../../kernel-lib/library/src/views/crisp/success-figure";
import { windowFigure } from "../../../../kernel-lib/library/src/views/crisp/window-figure";
import { windowMapFigure } from "../../../../kernel-lib/library/src/views/crisp/window-map-figure";
import type { Figure } from "../../../../kernel-lib/library/src/views/figure/figure";

interface Trace {
  readonly name: string;
  readonly type: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly z: readonly (readonly number[])[];
  readonly visible: boolean;
}
const traces = (figure: Figure): readonly Trace[] => figure.data as unknown as readonly Trace[];
const axisTitle = (figure: Figure, axis: "xaxis" | "yaxis"): string =>
  (figure.layout[axis] as { title: { text: string } }).title.text;

const kitchen = loadKitchen();
const window = crispWindow({ kitchen, variantId: "beet-lentil" });
const pans = otherPans({ kitchen, variantId: "beet-lentil", calibration: window.calibration, draws: 200 });

describe("windowFigure", () => {
  const figure = windowFigure({ window, trials: kitchen.trials, pans });

  it("shows one setpoint at a time, and its slider names every one", () => {
    const [slider] = figure.layout.sliders as {
      active: number;
      steps: { label: string; args: [{ visible: boolean[] }] }[];
    }[];
    expect(slider.steps.map((step) => step.label)).toEqual(["180 °C", "190 °C", "200 °C", "210 °C", "220 °C"]);
    expect(slider.active).toBe(2);
    expect(traces(figure).map((trace) => trace.visible)).toEqual(slider.steps[2].args[0].visible);
    for (const step of slider.steps) {
      expect(step.args[0].visible).toHaveLength(figure.data.length);
      expect(step.args[0].visible.filter(Boolean).length).toBeLessThanOrEqual(10);
    }
  });

  it("puts every crisp trial of that appliance and setpoint on it, and the card's star", () => {
    const shown = traces(figure).filter((trace) => trace.visible);
    const crisp = shown.find((trace) => trace.name === "trial: turned crisp")!;
    const expected = kitchen.trials.filter(
      (trial) =>
        trial.variantId === "beet-lentil" &&
        trial.applianceId === "small-basket" &&
        trial.setpointC === 200 &&
        trial.crispMin !== null &&
        Math.abs((trial.loadFraction as number) - 0.6) <= 0.12,
    );
    const crowded = shown.find((trace) => trace.name === "the same at another load")!;
    expect(crowded.x.length).toBe(
      kitchen.trials.filter(
        (trial) =>
          trial.variantId === "beet-lentil" &&
          trial.applianceId === "small-basket" &&
          trial.setpointC === 200 &&
          trial.crispMin !== null &&
          (trial.loadFraction as number) > 0.8,
      ).length,
    );
    expect(crisp.x).toEqual(expected.map((trial) => trial.thicknessMm));
    expect(shown.find((trace) => trace.name === "card time")?.y).toEqual([window.recommended.cardMin]);
    const opens = shown.find((trace) => trace.name === "opens")!;
    for (let at = 1; at < opens.y.length; at++) expect(opens.y[at]).toBeGreaterThanOrEqual(opens.y[at - 1]);
  });

  it("marks the pans, has units on its axes and the caution in its summary", () => {
    const placed = pans.pans.filter((pan) => pan.window !== null);
    expect(figure.layout.shapes).toHaveLength(placed.length);
    expect((figure.layout.annotations as { text: string }[]).map((note) => note.text)).toEqual(
      placed.map((pan) => pan.panName),
    );
    expect(axisTitle(figure, "xaxis")).toBe("slab thickness (mm)");
    expect(axisTitle(figure, "yaxis")).toBe("time in the appliance (min)");
    expect(figure.summary).toContain(window.limit.caution);
  });
});

describe("successFigure", () => {
  it("draws the chances of the window in percent, with the card on the curve", () => {
    const figure = successFigure(window);
    const success = traces(figure).find((trace) => trace.name === "success")!;
    expect(success.y).toEqual(window.chances.success.map((chance) => 100 * chance));
    expect(axisTitle(figure, "yaxis")).toBe("share of pieces (%)");
    expect(figure.summary).toContain(`from ${window.chances.safeFromMin.toFixed(1)} min`);
  });
});

describe("windowMapFigure", () => {
  const common = { calibration: window.calibration, applianceId: "small-basket", thicknessesMm: [6, 9, 12, 15, 18] };

  it("shows a map over time and one over setpoint, pans marked", () => {
    const overTime = windowMapFigure(
      windowMapOverTime({ ...common, setpointC: 200, timesMin: [4, 8, 12, 16, 20] }),
      pans,
    );
    const [heat, line] = traces(overTime);
    expect(heat.z).toHaveLength(5);
    expect(Math.max(...heat.z.flat())).toBeGreaterThan(100 * GOOD_CHANCE);
    expect(line.type).toBe("contour");
    expect(axisTitle(overTime, "yaxis")).toBe("time in the appliance (min)");
    expect(overTime.layout.shapes).not.toHaveLength(0);
    const overSetpoint = windowMapFigure(
      windowMapOverSetpoint({ ...common, setpointsC: [170, 190, 210], longestMin: 14 }),
    );
    expect(axisTitle(overSetpoint, "yaxis")).toBe("setpoint (°C)");
    expect(overSetpoint.summary).toMatch(/\d+ of 15 cells reach 90 %/);
  });
});

describe("clockFigure", () => {
  it("passes 100 % where the window says that the clock does", () => {
    const [core, crust, browning] = traces(clockFigure(window));
    const passes = (trace: Trace): number => trace.x[trace.y.findIndex((share) => share >= 100)];
    const step = core.x[1];
    expect(Math.abs(passes(core) - window.core.min)).toBeLessThan(1.1 * step + 0.2);
    expect(Math.abs(passes(crust) - window.crisp.min)).toBeLessThan(1.1 * step);
    expect(Math.abs(passes(browning) - window.brown.min)).toBeLessThan(1.1 * step);
  });
});
