import { describe, expect, it } from "vitest";
import { cardTime, GOOD_CHANCE } from "../../../../kernel-lib/library/src/crisp/window/card-time";
import { type PieceTimes, successOverTime } from "../../../../kernel-lib/library/src/crisp/window/success-over-time";
import { seededRandom } from "../../../../kernel-lib/library/src/statistics/random/seeded-random";

const COUNT = 400;
const timesMin = Array.from({ length: 2401 }, (_, step) => step / 100);

/** Pieces that open and close as told, their cores long safe unless said otherwise. */
function pieces(
  opens: (at: number) => number,
  closes: (at: number) => number,
  core: (at: number) => number = () => 1,
): PieceTimes {
  const times = (of: (at: number) => number): Float64Array => Float64Array.from({ length: COUNT }, (_, at) => of(at));
  return {
    coreMin: times(core),
    crispMin: times(opens),
    opensMin: times((at) => Math.max(core(at), opens(at))),
    closesMin: times(closes),
    typicalCoreMin: times(core),
    scatter: { run: 0.01, piece: 0.01, pieces: 12, doubt: 0 },
  };
}

const cardOf = (drawn: PieceTimes, longestMin = 24) => {
  const chances = successOverTime(drawn, timesMin);
  return { ...cardTime({ pieces: drawn, chances, longestMin }), safeFromMin: chances.safeFromMin };
};

describe("cardTime", () => {
  it("rounds up to half a minute where the window is wide, and says what that time does", () => {
    const drawn = pieces(
      (at) => 8 + at / COUNT,
      () => 15,
    );
    const card = cardOf(drawn);
    expect(card.timeMin).toBeCloseTo(8.995, 1);
    expect(card.cardMin).toBe(9);
    expect(card.success).toBe(successOverTime(drawn, [9]).success[0]);
    expect(card.safe).toBe(1);
  });

  it.each([
    [10.9, 10.5],
    [10.4, 10.25],
    [10.2, 10.1],
  ])("of a window from 10.02 to %d min takes the coarsest step that still does: %d min", (closesMin, cardMin) => {
    const card = cardOf(
      pieces(
        () => 10.02,
        () => closesMin,
      ),
    );
    expect(card).toMatchObject({ cardMin, success: 1 });
  });

  it("takes a finer step rather than pass the accepted time", () => {
    const drawn = pieces(
      () => 10.1,
      () => 15,
    );
    expect(cardOf(drawn, 10.4).cardMin).toBe(10.25);
    expect(cardOf(drawn, 10.5).cardMin).toBe(10.5);
  });

  it("keeps to the accepted time when that is good enough, and looks past it only when it is not", () => {
    const late = (share: number) => (at: number) => (at < share * COUNT ? 8 : 14);
    const good = cardOf(
      pieces(late(GOOD_CHANCE), () => 20),
      12,
    );
    expect(good).toMatchObject({ cardMin: 8, success: GOOD_CHANCE });
    const poor = cardOf(
      pieces(late(GOOD_CHANCE - 0.05), () => 20),
      12,
    );
    expect(poor).toMatchObject({ cardMin: 14, success: 1 });
  });

  it("never prints a time before the cores are safe, though every piece were done sooner", () => {
    const card = cardOf(
      pieces(
        () => 6,
        () => 9,
        () => 10,
      ),
    );
    expect(card.success).toBe(0);
    expect(card.safeFromMin).toBeGreaterThan(10);
    expect(card.cardMin).toBeGreaterThanOrEqual(card.safeFromMin);
  });

  it("lies on the best time or less than half a minute after it, never before the safe one, in 200 drawn loads", () => {
    const random = seededRandom(5);
    for (let load = 0; load < 200; load++) {
      const [opens, width, core] = [4 + 8 * random.uniform(), 6 * random.uniform(), 3 + 8 * random.uniform()];
      const drawn = pieces(
        () => opens * Math.exp(random.normal(0, 0.05)),
        () => (opens + width) * Math.exp(random.normal(0, 0.05)),
        () => core * Math.exp(random.normal(0, 0.03)),
      );
      const { timeMin, cardMin, safeFromMin } = cardOf(drawn);
      expect(cardMin).toBeGreaterThanOrEqual(safeFromMin - 1e-6);
      expect(cardMin).toBeGreaterThanOrEqual(timeMin - 1e-6);
      expect(cardMin - timeMin).toBeLessThan(0.5);
    }
  });
});
