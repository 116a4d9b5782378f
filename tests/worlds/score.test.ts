import { describe, expect, it } from "vitest";
import { bestSafe, type Forecast, scoreRows, scoreSetting, shareAt } from "./score";
import type { SettingTruth } from "./setting-truth";

const TRUTH: SettingTruth = {
  typical: { coreMin: 8, crispMin: 10, brownMin: 16, dryMin: 15, closesMin: 14.8 },
  piecesInLoad: 10,
  timesMin: [6, 8, 10, 12, 14, 16],
  good: [0, 0.1, 0.5, 0.95, 0.9, 0.3],
  safePieces: [0, 0.5, 0.98, 1, 1, 1],
  safeLoads: [0, 0, 0.8, 0.995, 1, 1],
  emulatorError: 0.002,
};
const FORECAST: Forecast = {
  core95: [7, 9],
  crisp95: [10.5, 12],
  closes95: [13, Number.POSITIVE_INFINITY],
  safeFromMin: 10,
  cardMin: 13,
  success: 0.99,
  ready: true,
};

describe("scoreSetting", () => {
  it("holds intervals, times and chance against the truth", () => {
    const score = scoreSetting({ transfer: "own", trials: 15, truth: TRUTH, forecast: FORECAST });
    expect(score).toMatchObject({ core95: true, crisp95: false, closes95: true, ready: true, best: 0.95 });
    expect(score.crispError).toBeCloseTo(0.125, 10);
    expect(score.closesError).toBe(Number.POSITIVE_INFINITY);
    expect(score.safeLoads).toBeCloseTo(0.9975, 10);
    expect(score.safeFromLoads).toBeCloseTo(0.8, 10);
    expect(score.safeFromPieces).toBeCloseTo(0.98, 10);
    expect(score.success).toBeCloseTo(0.925, 10);
    expect(score.chanceGap).toBeCloseTo(0.065, 10);
  });

  it("says nothing of what was not said", () => {
    const forecast = { ...FORECAST, cardMin: null, success: null, safeFromMin: null, ready: false };
    const score = scoreSetting({ transfer: "own", trials: 5, truth: TRUTH, forecast });
    expect(score).toMatchObject({ safeLoads: null, safeFromLoads: null, success: null, chanceGap: null });
  });
});

describe("shareAt", () => {
  it("is straight between stored times and still outside them", () => {
    expect(shareAt(TRUTH, TRUTH.good, 11)).toBeCloseTo(0.725, 10);
    expect(shareAt(TRUTH, TRUTH.good, 2)).toBe(0);
    expect(shareAt(TRUTH, TRUTH.good, 40)).toBeCloseTo(0.3, 10);
  });
});

describe("bestSafe", () => {
  it("counts only times at which loads are safe", () => {
    expect(bestSafe(TRUTH)).toBe(0.95);
    expect(bestSafe({ ...TRUTH, safeLoads: [0, 0, 0, 0, 0.99, 1] })).toBe(0.9);
    expect(bestSafe({ ...TRUTH, safeLoads: [0, 0, 0, 0, 0, 0.9] })).toBe(0);
  });
});

describe("scoreRows", () => {
  const of = (over: Partial<Forecast>, transfer: "own" | "smaller pan", trials = 15) =>
    scoreSetting({ transfer, trials, truth: TRUTH, forecast: { ...FORECAST, ...over } });
  const value = (rows: ReturnType<typeof scoreRows>, name: string): number | null =>
    (rows.find((row) => row.name === `worlds.${name}`) as { value: number | null }).value;

  it("gives intervals by their worst transfer kind and the rest by their own count", () => {
    const rows = scoreRows([
      of({}, "own"),
      of({ ready: false, core95: [1, 2], cardMin: 12 }, "own"),
      of({ core95: [1, 2], cardMin: 10, safeFromMin: 12 }, "smaller pan"),
    ]);
    expect(value(rows, "core95")).toBe(0);
    expect(value(rows, "closes95")).toBe(1);
    expect(value(rows, "safeLoads")).toBe(0.5);
    expect(value(rows, "safeFrom")).toBeCloseTo(1 / 3, 10);
    expect(value(rows, "chanceGap")).toBeCloseTo((0.065 + 0.49) / 2, 10);
    expect(value(rows, "readyShare")).toBe(0.5);
    expect(value(rows, "successOwn")).toBeCloseTo((0.925 + 0.95) / 2 / 0.95, 10);
    expect(value(rows, "successNearPan")).toBeCloseTo(0.5 / 0.95, 10);
  });

  it("does not let refusing everything win: no card, no row, no readiness", () => {
    const rows = scoreRows([of({ ready: false, cardMin: null, success: null, safeFromMin: null }, "own")]);
    expect(value(rows, "safeLoads")).toBeNull();
    expect(value(rows, "readyShare")).toBe(0);
    expect(value(rows, "successOwn")).toBeNull();
  });
});
