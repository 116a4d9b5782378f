import { describe, expect, it } from "vitest";
import { cardRows, shareInterval95 } from "./card-rows";
import type { HeldCard } from "./hold-card";

const CARD: HeldCard = {
  seed: 1,
  product: "cod-squares",
  world: 2001,
  raw: true,
  tidy: true,
  trials: 20,
  ready: true,
  unmet: [],
  cardMin: 14,
  coreByMin: 12,
  coreMin: 9,
  trueCoreMin: 8,
  trueCoreByMin: 10,
  loads: 4000,
  coldAtCard: 0,
  coldAtCoreBy: 40,
  success: 0.95,
};

describe("shareInterval95", () => {
  it("is Clopper and Pearson's: closed forms at the ends, and binomial tails of 2.5 % between", () => {
    expect(shareInterval95(0, 10)).toEqual([0, expect.closeTo(1 - 0.025 ** 0.1, 9)]);
    expect(shareInterval95(10, 10)).toEqual([expect.closeTo(0.025 ** 0.1, 9), 1]);
    const [low, high] = shareInterval95(2, 12);
    const upTo = (count: number, share: number): number => {
      let [sum, term] = [0, (1 - share) ** 12];
      for (let at = 0; at <= count; at++) {
        sum += term;
        term *= ((12 - at) / (at + 1)) * (share / (1 - share));
      }
      return sum;
    };
    expect(1 - upTo(1, low)).toBeCloseTo(0.025, 9);
    expect(upTo(2, high)).toBeCloseTo(0.025, 9);
  });
});

describe("cardRows", () => {
  const value = (cards: readonly HeldCard[], name: string): number | null | undefined =>
    cardRows(cards).find((row) => row.name === name)?.value;

  it("counts kitchens with more than one cold load in a hundred, each time and the unready apart", () => {
    const cards = [CARD, { ...CARD, coldAtCoreBy: 41 }, { ...CARD, ready: false, coldAtCard: 400 }];
    expect(value(cards, "promise.ready.card")).toBe(0);
    expect(value(cards, "promise.ready.coreBy")).toBe(0.5);
    expect(value(cards, "promise.notReady.card")).toBe(1);
    expect(value([CARD], "promise.notReady.card")).toBeUndefined();
    expect(value(cards, "late.ready.card")).toBe(4);
    expect(value(cards, "late.ready.coreBy")).toBe(2);
    expect(value(cards, "late.ready.clock")).toBeCloseTo(0.125, 10);
  });
});
