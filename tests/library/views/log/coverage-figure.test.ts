import { describe, expect, it } from "vitest";
import { reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";
import { coverageFigure } from "../../../../kernel-lib/library/src/views/log/coverage-figure";

interface Trace {
  readonly name: string;
  readonly mode: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly text?: readonly string[];
}

const kitchen = loadKitchen();
const variantId = "beet-lentil";
const card = reheatCard({ kitchen, variantId, draws: 200 });
const tracesOf = (figure: { readonly data: readonly object[] }): readonly Trace[] => figure.data as readonly Trace[];

/** One trial at each of some thicknesses and settings. */
function tried(at: readonly (readonly [thicknessMm: number, setpointC: number])[]): Kitchen {
  const trials = at.map(([thicknessMm, setpointC], number) => ({
    ...kitchen.trials[0],
    trialId: `T-${number}`,
    thicknessMm,
    setpointC,
  }));
  return { ...kitchen, trials };
}

describe("coverageFigure", () => {
  it("shows every trial of the variant once, with its outcome", () => {
    const traces = tracesOf(coverageFigure({ kitchen, variantId }));
    const shown = traces.flatMap(({ text = [] }) => text.map((words) => words.split(",")[0]));
    const own = kitchen.trials.filter((trial) => trial.variantId === variantId).map(({ trialId }) => trialId);
    expect(shown.toSorted()).toEqual(own.toSorted());
    const cold = kitchen.trials.filter((trial) => trial.variantId === variantId && (trial.coreC ?? 99) < 74).length;
    expect(cold).toBeGreaterThan(0);
    expect(traces.filter(({ name }) => name === "cold core").flatMap(({ x }) => x)).toHaveLength(cold);
  });

  it("draws cold cores over all other marks of their panel", () => {
    const panel = tracesOf(coverageFigure({ kitchen, variantId })).filter(
      (trace) => (trace as { xaxis?: string }).xaxis === "x2",
    );
    expect(panel.length).toBeGreaterThan(1);
    expect(panel.at(-1)?.name).toBe("cold core");
  });

  it("shades the bands that hold no trial at a setting, and names them", () => {
    const figure = coverageFigure({
      kitchen: tried([
        [7, 200],
        [11, 200],
        [9, 180],
      ]),
      variantId,
    });
    const shapes = figure.layout.shapes as readonly {
      readonly x0: number;
      readonly x1: number;
      readonly xref: string;
    }[];
    expect(shapes.map(({ x0, x1, xref }) => [xref, x0, x1])).toEqual([
      ["x", 6, 8],
      ["x", 10, 12],
      ["x2", 8, 10],
    ]);
    expect(figure.summary).toContain("8.0 to 10.0 mm at 200 °C");
    expect(coverageFigure({ kitchen: tried([[7, 200]]), variantId }).summary).not.toContain("Not tried");
  });

  it("marks the card at its time; a card that is not ready shows no time", () => {
    const star = tracesOf(coverageFigure({ kitchen, variantId, card: { ...card, ready: true } })).find(
      ({ name }) => name === "the card",
    );
    expect(star?.y).toEqual([card.window.recommended.cardMin]);
    const open = coverageFigure({ kitchen, variantId, card: { ...card, ready: false } });
    const upright = tracesOf(open).find(({ name }) => name.includes("no card yet"));
    expect(upright?.mode).toBe("lines");
    expect(open.summary).toContain("No card may be printed yet");
    expect(tracesOf(open).flatMap(({ y }) => (y.length === 1 ? y : []))).not.toContain(card.window.recommended.cardMin);
  });

  it("keeps the caution, and asks for a trial where there is none", () => {
    expect(coverageFigure({ kitchen, variantId }).summary).toContain("Core at least 74 °C (165 °F) in every piece.");
    expect(() => coverageFigure({ kitchen: { ...kitchen, trials: [] }, variantId })).toThrow("log the first one");
  });
});
