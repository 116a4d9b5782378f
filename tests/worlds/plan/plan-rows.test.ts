import { describe, expect, it } from "vitest";
import {
  firstStop,
  meanLost,
  median,
  planRows,
  settledAfter,
  trialsToSettle,
  trialsToStay,
  unsafeShare,
} from "./plan-rows";
import type { PlanWay } from "./plan-ways";

const way = (policy: string, settled: string, stopAt = -1): PlanWay => ({
  policy,
  product: "any",
  world: 1,
  seed: 1,
  question: "time",
  asked: [],
  printed: [...settled].map((mark, at) => ({
    cardMin: 10,
    thicknessMm: 12,
    claimed: 0.9,
    lost: mark === "+" ? 0 : 0.2,
    offMin: mark === "+" ? 0 : 3,
    safeLoads: mark === "+" ? 1 : 0.5,
    settled: mark === "+",
    stop: policy === "nextTrial" ? at === stopAt : null,
  })),
});

describe("planRows", () => {
  it("counts trials until settled, and until it stays so", () => {
    expect(trialsToSettle(way("random", "..+.++"))).toBe(2);
    expect(trialsToStay(way("random", "..+.++"))).toBe(4);
    expect(trialsToStay(way("random", "..+.+."))).toBe(Number.POSITIVE_INFINITY);
    expect(trialsToSettle(way("random", "......"))).toBe(Number.POSITIVE_INFINITY);
    expect(settledAfter([way("random", "..+"), way("random", ".++")], 1)).toBe(0.5);
    expect(meanLost([way("random", "..+"), way("random", ".++")], 1)).toBe(0.1);
    expect(unsafeShare([way("random", "..+"), way("random", ".++")])).toBe(0.5);
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(firstStop(way("nextTrial", "..+", 1))).toEqual({ trials: 1, settled: false });
    expect(firstStop(way("nextTrial", "..+"))).toBeNull();
  });

  it("compares with the best of the others, and finds false stops", () => {
    const [saved, stops] = planRows([
      way("nextTrial", ".++++", 1),
      way("nextTrial", "...++", 2),
      way("mostGain", "..+++"),
      way("random", "....+"),
      way("random", "....+"),
      way("grid", ".....".replace(/.$/, "+")),
      way("grid", "....."),
    ]);
    expect(saved.value).toBeCloseTo(1 - 2 / 4, 12);
    expect(stops.value).toBe(0.5);
  });
});
