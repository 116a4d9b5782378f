import { bestCompromise, fitSurface, ridgePath, stationaryRegion } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import {
  compromiseFigure,
  compromiseTable,
  ridgeFigure,
  ridgeTable,
  surfaceFigure,
  surfaceTable,
  svgOf,
  tableText,
} from "slabwright/views";
import { describe, expect, it } from "vitest";

const names = ["setpoint (°C)", "time (min)"];
const factors = [
  { name: names[0], low: 180, high: 200 },
  { name: names[1], low: 10, high: 14 },
];
const { points } = centralComposite({ factors: 2, centres: [2, 2] });
const y = points.map(([a, b], at) => 7 - (a - 0.3) ** 2 - 0.8 * (b + 0.2) ** 2 + 0.1 * Math.sin(9 * at));
const fit = fitSurface({ factors: names, points, y });
const measured = "crispness (0 to 9)";

describe("surfaceFigure", () => {
  const region = stationaryRegion({ fit });
  const compromise = bestCompromise({
    wanted: [{ name: "crispness", fit, goal: { wanted: "more", low: 5, target: 8 } }],
  });
  const { data, layout, summary } = surfaceFigure({
    fit,
    measured,
    factors,
    region,
    ridge: ridgePath({ fit }),
    compromise,
  });
  const traces = data as { name?: string; x: number[]; y: number[]; z?: number[][] }[];

  it("stands in the factors' own units, its trials where they were run", () => {
    const trials = traces.find(({ name }) => name === "trials");
    expect([...(trials?.x.slice(0, 4) ?? [])].sort()).toEqual([180, 180, 200, 200]);
    expect((layout.xaxis as { title: { text: string } }).title.text).toBe("setpoint (°C)");
    const [stationary] = traces.filter(({ name }) => name === "stationary point");
    expect(stationary.x[0]).toBeCloseTo(193, 0);
    expect(stationary.y[0]).toBeCloseTo(11.6, 0);
  });

  it("marks as many points as the region holds, and says all of it in words", () => {
    const may = traces.find(({ name }) => name?.startsWith("may be"));
    expect(may?.x.length).toBe(region.statistics.filter((one) => one <= region.limit).length);
    expect(summary).toContain("The surface has a top");
    expect(summary).toContain("with 95 % confidence");
    expect(svgOf(surfaceFigure({ fit, measured, region }))).toContain("<svg");
  });

  it("is coded where no real values are given, and refuses a single factor", () => {
    const coded = surfaceFigure({ fit, measured });
    expect((coded.layout.xaxis as { title: { text: string } }).title.text).toBe("setpoint (°C) (coded)");
    const line = fitSurface({ factors: ["a"], points: [[-1], [0], [1], [1]], y: [1, 2, 1, 1.1] });
    expect(() => surfaceFigure({ fit: line, measured })).toThrow("must be a surface over two factors or more");
    expect(() => surfaceFigure({ fit, measured, factors: [factors[1], factors[0]] })).toThrow("in this order");
  });
});

describe("the tables and figures beside it", () => {
  it("hold every term, with bends and repeats below", () => {
    const { rows, notes } = surfaceTable(fit, measured);
    expect(rows.map(([name]) => name)).toEqual([...fit.names]);
    expect(notes.join(" ")).toContain("Lack of fit F(");
    expect(notes.join(" ")).toContain("Bends along its own axes");
    const once = fitSurface({ factors: names, points: points.slice(0, 9), y: y.slice(0, 9), form: "linear" });
    expect(surfaceTable(once, measured).notes.join(" ")).toMatch(/Repeat its middle|repeated trials|Too few places/);
  });

  it("show the ridge, what lies beyond the trials named", () => {
    const ridge = ridgePath({ fit, radii: [0, 1, 3] });
    const { rows } = ridgeTable({ fit, ridge, measured, factors });
    expect(rows[0].slice(0, 3)).toEqual([0, 190, 12]);
    expect(rows.map((row) => row[row.length - 1])).toEqual(["no", "no", "yes"]);
    expect(ridgeFigure({ fit, ridge, measured }).summary).toMatch(/at most, at distance/);
  });

  it("show what comes of every goal", () => {
    const best = bestCompromise({
      wanted: [
        { name: "crispness", fit, goal: { wanted: "more", low: 5, target: 8 } },
        { name: "time", fit, goal: { wanted: "less", target: 2, high: 9 } },
      ],
    });
    expect(compromiseTable(best).rows.map(([name]) => name)).toEqual(["crispness", "time", "all together"]);
    expect(compromiseFigure(best).summary).toContain("every goal is met at least in part in");
    expect(tableText(compromiseTable(best))).toContain("all together");
  });
});
