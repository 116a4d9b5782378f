import fc from "fast-check";
import { expect, it } from "vitest";
import { latestTime } from "../../../../kernel-lib/library/src/advice/card/latest-time";
import { GOOD_CHANCE } from "../../../../kernel-lib/library/src/crisp/window/card-time";

const timesMin = Array.from({ length: 121 }, (_, at) => at / 4);
const window = (success: (timeMin: number) => number, cardMin: number, longestMin = 30) =>
  ({
    chances: { timesMin, success: timesMin.map(success) },
    recommended: { cardMin, success: success(cardMin) },
    setting: { longestMin },
  }) as unknown as Parameters<typeof latestTime>[0];

it("ends where the chance falls, at the accepted time, and is none where that is less than a minute", () => {
  const until =
    (last: number) =>
    (timeMin: number): number =>
      timeMin <= last ? 0.97 : 0.5;
  expect(latestTime(window(until(14.3), 12))).toBe(14);
  expect(latestTime(window(until(12.8), 12))).toBeNull();
  expect(latestTime(window(until(25), 12, 15))).toBe(15);
  expect(latestTime(window(() => 0.8, 12)), "no good chance at the card's time").toBeNull();
  const dip = (timeMin: number): number => (timeMin > 13 && timeMin < 14 ? 0.6 : 0.97);
  expect(latestTime(window(dip, 12)), "not past a dip").toBe(13);
});

it("never names a moment between the card's time and it that is not good, whatever the chances", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0.85, max: 1, noNaN: true }), { minLength: 121, maxLength: 121 }),
      fc.integer({ min: 0, max: 60 }),
      fc.double({ min: 5, max: 30, noNaN: true }),
      (success, half, longestMin) => {
        const cardMin = half / 2;
        const given = window((timeMin) => success[Math.round(4 * timeMin)], cardMin, longestMin);
        const latest = latestTime(given);
        if (latest === null) return;
        expect(latest).toBeGreaterThanOrEqual(cardMin + 1);
        expect(latest).toBeLessThanOrEqual(longestMin);
        for (const [at, timeMin] of timesMin.entries())
          if (timeMin > cardMin && timeMin <= latest) expect(success[at]).toBeGreaterThanOrEqual(GOOD_CHANCE);
      },
    ),
  );
});
