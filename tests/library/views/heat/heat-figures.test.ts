import { describe, expect, it } from "vitest";
import { freezeToCut } from "../../../../kernel-lib/library/src/heat/freezing/freeze-to-cut";
import { coreTime } from "../../../../kernel-lib/library/src/heat/solver/core-time";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { svgOf } from "../../../../kernel-lib/library/src/views/figure/svg-of";
import { freezeToCutFigure } from "../../../../kernel-lib/library/src/views/heat/freeze-to-cut-figure";
import { freezeToCutTable } from "../../../../kernel-lib/library/src/views/heat/freeze-to-cut-table";
import { profileFigure } from "../../../../kernel-lib/library/src/views/heat/profile-figure";
import { temperatureCoreTable } from "../../../../kernel-lib/library/src/views/heat/temperature-core-table";
import { temperatureTimeFigure } from "../../../../kernel-lib/library/src/views/heat/temperature-time-figure";
import { foods } from "../../heat/foods";

interface Trace {
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly (number | null)[];
  readonly mode: string;
  readonly line?: { readonly dash?: string };
  readonly marker?: { readonly symbol: string };
  readonly error_y?: { readonly array: readonly number[]; readonly arrayminus: readonly number[] };
}

const food = foods.reference;
const run = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 15 });
const titles = (figure: { readonly layout: Readonly<Record<string, unknown>> }): string[] =>
  ["xaxis", "yaxis"].map((axis) => (figure.layout[axis] as { title: { text: string } }).title.text);

describe("temperatureTimeFigure", () => {
  const logged = [{ label: "probe", timeMin: [0, 5, 10], temperatureC: [-18, -1, 76] }];
  const figure = temperatureTimeFigure(run, {
    title: "slab",
    marks: [{ label: "core limit", temperatureC: 74 }],
    logged,
  });
  const traces = figure.data as readonly Trace[];

  it("draws core, surface and mean apart by dash, the mark level, the logged points as markers", () => {
    expect(traces.map((trace) => trace.name)).toEqual(["surface", "mean", "core", "core limit, 74 °C", "probe"]);
    expect(new Set(traces.slice(0, 4).map((trace) => trace.line?.dash)).size).toBe(4);
    expect(traces[2].y).toEqual(run.coreC);
    expect(traces[4].mode).toBe("markers");
    expect(titles(figure)).toEqual(["time (min)", "temperature (°C)"]);
    expect(svgOf(figure)).toContain("core limit, 74 °C");
  });

  it("draws the bottom face and the mid-plane where the faces differ, each with a dash of its own", () => {
    const onPan = simulateSlab({
      food,
      thicknessMm: 12.7,
      startC: -18,
      airC: 204,
      coefficientWm2K: 40,
      coefficientBelowWm2K: 8,
      endMin: 15,
    });
    const both = temperatureTimeFigure(onPan, { title: "slab on a pan" }).data as readonly Trace[];
    expect(both.map((trace) => trace.name)).toEqual(["top face", "bottom face", "mid-plane", "mean", "core"]);
    expect(both[1].y).toEqual(onPan.surfaceBelowC);
    expect(both[2].y).toEqual(onPan.midPlaneC);
    expect(new Set(both.map((trace) => trace.line?.dash)).size).toBe(5);
  });

  it("says when the core passes a mark, or that it does not", () => {
    expect(figure.summary).toContain("it passes the core limit (74 °C) at 9.8 min");
    const short = simulateSlab({ food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 5 });
    const cold = temperatureTimeFigure(short, { title: "slab", marks: [{ label: "core limit", temperatureC: 74 }] });
    expect(cold.summary).toContain("it does not pass the core limit (74 °C)");
  });

  it("refuses readings without their times", () => {
    const bad = [{ label: "probe", timeMin: [0], temperatureC: [1, 2] }];
    expect(() => temperatureTimeFigure(run, { title: "slab", logged: bad })).toThrow("as many temperatures as times");
  });
});

describe("profileFigure", () => {
  it("draws one line a time, from face to face, with its own marker", () => {
    const figure = profileFigure(run, { title: "slab", timesMin: [1, 5, 9] });
    const traces = figure.data as readonly Trace[];
    expect(traces).toHaveLength(3);
    expect(new Set(traces.map((trace) => trace.marker?.symbol)).size).toBe(3);
    expect(traces[0].y[0]).toBeCloseTo(0, 9);
    expect(traces[0].y[traces[0].y.length - 1]).toBeCloseTo(12.7, 9);
    expect(titles(figure)).toEqual(["temperature (°C)", "height above the underside (mm)"]);
    expect(figure.summary).toMatch(/5\.\d min: -\d+ to \d+ °C/);
  });

  it("refuses times outside the run and too many of them", () => {
    expect(() => profileFigure(run, { title: "slab", timesMin: [20] })).toThrow(
      "must lie within the run, 0 to 15.00 min, got 20",
    );
    expect(() => profileFigure(run, { title: "slab", timesMin: [] })).toThrow("one to eight times");
  });
});

describe("freezing and core times, drawn and listed", () => {
  const rows = ["rack", "shelf"].flatMap((label) =>
    [8, 14].map((thicknessMm) => ({
      label,
      thicknessMm,
      freezing: freezeToCut({
        food,
        thicknessMm,
        airC: -18,
        coefficientWm2K: 9,
        coefficientBelowWm2K: label === "rack" ? 4 : 2,
      }),
    })),
  );

  it("the figure shows every slab with its range, places apart by marker", () => {
    const figure = freezeToCutFigure(rows);
    const firm = (figure.data as readonly Trace[]).filter((trace) => trace.name.endsWith(": firm"));
    expect(firm.map((trace) => trace.name)).toEqual(["rack: firm", "shelf: firm"]);
    expect(firm[0].y).toEqual([rows[0].freezing.firm.timeMin, rows[1].freezing.firm.timeMin]);
    expect(firm[0].error_y?.array.every((up) => up > 0)).toBe(true);
    expect(firm[0].error_y?.arrayminus.every((down) => down > 0)).toBe(true);
    expect(firm[0].marker?.symbol).not.toBe(firm[1].marker?.symbol);
    expect(titles(figure)).toEqual(["slab thickness (mm)", "time in the freezer (min)"]);
    expect(figure.summary).toContain("common practice, no source");
    expect(() => freezeToCutFigure([])).toThrow("at least one slab");
  });

  it("the tables carry limits, sources and cautions", () => {
    const freezing = freezeToCutTable(rows);
    expect(freezing.rows).toHaveLength(4);
    expect(freezing.rows[0].slice(0, 3)).toEqual(["rack", 8, rows[0].freezing.firm.timeMin]);
    expect(freezing.notes[0]).toContain("common practice, no source");
    const core = coreTime({ food, thicknessMm: 12.7, airC: 204, coefficientWm2K: 40 });
    const table = temperatureCoreTable([{ label: "slab", core }]);
    expect(table.rows[0][1]).toBe(core.timeMin);
    expect(table.notes.join(" ")).toContain("probe the coldest part");
    expect(table.notes.join(" ")).toContain("165 °F");
    expect(() => freezeToCutTable([])).toThrow("at least one slab");
  });
});
