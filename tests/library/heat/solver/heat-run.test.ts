import { describe, expect, test } from "vitest";
import { enthalpyAt } from "../../../../kernel-lib/library/src/food/thermal/enthalpy";
import { timeWhen, valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulatePiece } from "../../../../kernel-lib/library/src/heat/solver/simulate-piece";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const frozenSlab = { food: foods.reference, thicknessMm: 10, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 12 };
const run = simulateSlab(frozenSlab);

test("timeWhen and valueAt undo each other", () => {
  for (const column of ["coreC", "surfaceC", "meanC"] as const)
    for (const value of [-10, 20, 60])
      expect(valueAt(run, column, timeWhen(run, { column, value }))).toBeCloseTo(value, 6);
});

test("timeWhen looks from a time on, takes a value at a row as reached there, and names what it does not know", () => {
  const up = timeWhen(run, { column: "coreC", value: 20 });
  expect(timeWhen(run, { column: "coreC", value: 20, afterMin: up - 0.01 })).toBe(up);
  expect(() => timeWhen(run, { column: "coreC", value: 20, afterMin: up + 0.01 })).toThrow("coreC must pass 20 °C");
  expect(timeWhen(run, { column: "coreC", value: -18 })).toBe(0);
  const row = 30;
  expect(timeWhen(run, { column: "crustMm", value: run.crustMm[run.crustMm.length - 2] })).toBeCloseTo(
    run.timeMin[run.timeMin.length - 2],
    9,
  );
  expect(timeWhen(run, { column: "meanC", value: run.meanC[row] })).toBeCloseTo(run.timeMin[row], 9);
  // reached at a row that lies before the time asked for, and at the very last row
  expect(() => timeWhen(run, { column: "coreC", value: run.coreC[row], afterMin: run.timeMin[row] + 1e-6 })).toThrow(
    "coreC must pass",
  );
  expect(timeWhen(run, { column: "coreC", value: run.coreC[run.coreC.length - 1] })).toBeCloseTo(12, 6);
  // an air that comes and goes: the second passage is found when the first is over
  const opened = simulateSlab({
    ...frozenSlab,
    thicknessMm: 4,
    drying: "none",
    airC: [
      { timeMin: 0, airC: 120 },
      { timeMin: 4, airC: 120 },
      { timeMin: 4, airC: -20 },
      { timeMin: 8, airC: -20 },
      { timeMin: 8, airC: 120 },
    ],
  });
  const [first, second, third] = [0, 3, 8].map((afterMin) =>
    timeWhen(opened, { column: "coreC", value: 30, afterMin }),
  );
  expect(first).toBeLessThan(4);
  expect(second).toBeGreaterThan(4);
  expect(second).toBeLessThan(8);
  expect(third).toBeGreaterThan(8);
  expect(() => timeWhen(run, { column: "core" as "coreC", value: 1 })).toThrow(
    "column must be one of coreC, midPlaneC",
  );
  expect(() => timeWhen(run, { column: "coreC", value: Number.NaN })).toThrow("value must be a finite number");
});

test("valueAt gives rows at their times, straight lines for what has no slopes, and nothing beyond the run", () => {
  const last = run.timeMin.length - 1;
  for (const row of [0, 1, 17, last]) expect(valueAt(run, "coreC", run.timeMin[row])).toBeCloseTo(run.coreC[row], 9);
  const [row, next] = [last - 3, last - 2];
  const middle = (run.timeMin[row] + run.timeMin[next]) / 2;
  expect(valueAt(run, "crustMm", middle)).toBeCloseTo((run.crustMm[row] + run.crustMm[next]) / 2, 12);
  expect(valueAt(run, "coreC", 12 + 1e-10)).toBeCloseTo(run.coreC[last], 6);
  expect(() => valueAt(run, "coreC", -0.001)).toThrow("timeMin must lie within the run");
  expect(() => valueAt(run, "coreC", Number.NaN)).toThrow("timeMin must lie within the run");
  expect(() => valueAt(run, "core" as "coreC", 1)).toThrow("column must be one of");
});

test("a run says what it was of and why it stopped", () => {
  expect(run).toMatchObject({ body: "slab", thicknessMm: 10, cells: 12, stopped: "end of the run", notes: [] });
  expect(run.lengthMm).toBeUndefined();
  expect(simulateSlab({ ...frozenSlab, stopCoreC: 40 }).stopped).toBe("core reached its target");
  const stick = simulatePiece({ ...frozenSlab, lengthMm: 30, widthMm: 20, endMin: 1 });
  expect(stick).toMatchObject({ body: "piece", lengthMm: 30, widthMm: 20, cells: 8 });
  // heat in: what the food holds more, and what evaporated, of 1 m² of slab [kJ]
  const dry = simulateSlab({ ...frozenSlab, drying: "none", endMin: 200, airC: 60 });
  const held = 1050 * 0.01 * (enthalpyAt(foods.reference, 60) - enthalpyAt(foods.reference, -18));
  expect(dry.heatInKJ / held).toBeCloseTo(1, 3);
});

test("the slopes of a run are those of its values", () => {
  const at = timeWhen(run, { column: "coreC", value: 50 });
  const row = run.timeMin.findIndex((time) => time >= at);
  const slope =
    (valueAt(run, "coreC", run.timeMin[row] + 0.01) - valueAt(run, "coreC", run.timeMin[row] - 0.01)) / 0.02;
  expect(Math.abs(run.coreRateKMin[row] / slope - 1)).toBeLessThan(0.02);
});

test("ice and core agree: none is left once the core is above its freezing point", () => {
  expect(run.icePercent[0]).toBeCloseTo(64.8 * (1 - 1 / 18), 1);
  const thawed = timeWhen(run, { column: "coreC", value: -0.5 });
  expect(valueAt(run, "icePercent", thawed + 0.2)).toBe(0);
});

test("the profile runs from face to face and holds the core in its middle", () => {
  const row = 20;
  const heights = run.profile.heightMm[row];
  expect(heights[0]).toBeCloseTo(0, 6);
  expect(heights[heights.length - 1]).toBeCloseTo(10, 6);
  expect(run.profile.temperatureC[row][(heights.length - 1) / 2]).toBeCloseTo(run.coreC[row], 9);
});

test("what a run never does is refused with how far it got", () => {
  expect(() => timeWhen(run, { column: "coreC", value: 140 })).toThrow(
    /coreC must pass 140 °C within the run of 12.0 min \(it went from -18.00 to \d+\.\d+\)/,
  );
  expect(() => valueAt(run, "coreC", 13)).toThrow("valueAt: timeMin must lie within the run, 0 to 12.00 min, got 13");
});

describe("mid-plane and bottom face", () => {
  const onPan = { food: foods.reference, thicknessMm: 12, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 12 };

  test("are core and top face of a slab that is heated alike", () => {
    expect(run.midPlaneC).toEqual(run.coreC);
    expect(run.surfaceBelowC).toEqual(run.surfaceC);
  });

  test("lag behind in a slab on a pan, and are read at a time like every column", () => {
    const weak = simulateSlab({ ...onPan, coefficientBelowWm2K: 25 });
    for (const timeMin of [3, 6, 9]) {
      const [top, bottom, middle, core] = (["surfaceC", "surfaceBelowC", "midPlaneC", "coreC"] as const).map((column) =>
        valueAt(weak, column, timeMin),
      );
      expect(bottom).toBeLessThan(top);
      expect(middle).toBeGreaterThanOrEqual(core);
      expect(middle).toBeLessThan(top);
    }
    const at = timeWhen(weak, { column: "surfaceBelowC", value: 60 });
    expect(valueAt(weak, "surfaceBelowC", at)).toBeCloseTo(60, 6);
    // film and food carry the same heat at the bottom
    const row = weak.timeMin.findIndex((time) => time >= 9);
    const [heights, temperatures] = [weak.profile.heightMm[row], weak.profile.temperatureC[row]];
    const inwards = (0.49 * (temperatures[0] - temperatures[1])) / ((heights[1] - heights[0]) / 1000);
    expect((25 * (204 - weak.surfaceBelowC[row])) / inwards).toBeCloseTo(1, 6);
  });

  test("of a slab on an insulator are middle and core of one twice as thick", () => {
    const half = simulateSlab({ ...onPan, coefficientBelowWm2K: 0, drying: "none", cells: 16 });
    const whole = simulateSlab({ ...onPan, thicknessMm: 24, drying: "none", cells: 32 });
    expect(valueAt(half, "surfaceBelowC", 10)).toBeCloseTo(valueAt(whole, "coreC", 10), 1);
    const row = whole.timeMin.findIndex((time) => time >= 10);
    const { heightMm, temperatureC } = whole.profile;
    const next = heightMm[row].findIndex((height) => height >= 18);
    const share = (18 - heightMm[row][next - 1]) / (heightMm[row][next] - heightMm[row][next - 1]);
    const wanted = temperatureC[row][next - 1] + share * (temperatureC[row][next] - temperatureC[row][next - 1]);
    expect(Math.abs(valueAt(half, "midPlaneC", whole.timeMin[row]) - wanted)).toBeLessThan(0.15);
  });

  test("the mid-plane in a dry crust is between its surface and its front", () => {
    const dried = simulateSlab({ ...onPan, thicknessMm: 4, coefficientBelowWm2K: 0, endMin: 60 });
    const row = dried.crustMm.findIndex((crust) => crust > 3);
    expect(dried.midPlaneC[row]).toBeGreaterThan(100);
    expect(dried.midPlaneC[row]).toBeLessThan(dried.surfaceC[row]);
    // 2 mm deep in the crust
    const share = 2 / dried.crustMm[row];
    expect(dried.midPlaneC[row]).toBeCloseTo(dried.surfaceC[row] + share * (100 - dried.surfaceC[row]), 6);
  });
});

test("a run says when its core has thawed: later than its first cells, and null where it does not", () => {
  const thawedMin = run.thawedMin as number;
  expect(valueAt(run, "coreC", thawedMin - 0.1)).toBeLessThanOrEqual(-1);
  expect(valueAt(run, "coreC", thawedMin + 0.3)).toBeGreaterThan(0);
  expect(simulateSlab({ ...frozenSlab, endMin: 1 }).thawedMin).toBeNull();
  expect(simulateSlab({ ...frozenSlab, startC: 5 }).thawedMin).toBeNull();
});
