import fc from "fast-check";
import { coolingCheck } from "slabwright/safety";
import { describe, expect, test } from "vitest";

/** A core that falls as e^(−t/τ) from `fromC` towards `airC`, read at these times. */
const readings = (timesMin: readonly number[], fromC: number, airC: number, tauMin: number) => ({
  timesMin,
  temperaturesC: timesMin.map((min) => airC + (fromC - airC) * Math.exp(-min / tauMin)),
});
/** When that core is at a temperature: τ·ln((from − air)/(T − air)). */
const exactly = (atC: number, fromC: number, airC: number, tauMin: number): number =>
  tauMin * Math.log((fromC - airC) / (atC - airC));

describe("coolingCheck", () => {
  test("is never kinder than the exact times of an exponential, and hits them with close readings", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 58, max: 90, noNaN: true }),
        fc.double({ min: -20, max: 4, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        fc.integer({ min: 1, max: 40 }),
        (fromC, airC, tauMin, everyMin) => {
          const endMin = exactly(5, fromC, airC, tauMin) + 2 * everyMin;
          const timesMin = Array.from({ length: Math.ceil(endMin / everyMin) + 1 }, (_, at) => at * everyMin);
          const { verdict, stages } = coolingCheck(readings(timesMin, fromC, airC, tauMin));
          const start = exactly(57, fromC, airC, tauMin);
          const took = [21, 5].map((atC) => exactly(atC, fromC, airC, tauMin) - start);
          const inTime = took[0] <= 120 && took[1] <= 360;
          if (verdict === "passes") expect(inTime).toBe(true);
          if (verdict === "fails") expect(inTime).toBe(false);
          for (const [at, { tookMin }] of stages.entries()) {
            const [least, most] = tookMin as readonly [number, number];
            expect(least - 1e-9).toBeLessThanOrEqual(took[at]);
            expect(most + 1e-9).toBeGreaterThanOrEqual(took[at]);
            expect(most - least).toBeLessThanOrEqual(2 * everyMin + 1e-9);
          }
        },
      ),
    );
  });

  test.each([
    ["exactly 2 h and 6 h", [0, 120, 360], [57, 21, 5], "passes"],
    ["a minute over 2 h, with the readings to show it", [0, 0.5, 120.6, 121, 360], [57, 56.9, 21.1, 21, 5], "fails"],
    ["a minute over 6 h", [0, 0.5, 100, 360.6, 361], [57, 56.9, 21, 5.1, 5], "fails"],
    ["warm again after it was cold", [0, 60, 100, 150, 300], [60, 30, 20, 23, 4], "not enough data"],
    ["warm again for long", [0, 60, 100, 200, 230, 300], [60, 30, 20, 23, 23, 4], "fails"],
    ["first read when it was below 57", [0, 30, 200], [50, 20, 4], "not enough data"],
    ["first read when it was below 57, and slow all the same", [0, 130, 200], [50, 22, 4], "fails"],
    ["not cold yet, in time so far", [0, 30, 60], [60, 40, 25], "not enough data"],
    ["one reading", [0], [60], "not enough data"],
  ] as const)("%s", (_, timesMin, temperaturesC, verdict) => {
    expect(coolingCheck({ timesMin, temperaturesC }).verdict).toBe(verdict);
  });

  test("what was made from ingredients at room temperature has 4 h", () => {
    const from = "ambient" as const;
    expect(coolingCheck({ timesMin: [0, 100, 240], temperaturesC: [20, 12, 5], from }).verdict).toBe("passes");
    expect(coolingCheck({ timesMin: [0, 241, 250], temperaturesC: [20, 6, 5], from }).verdict).toBe("fails");
    expect(coolingCheck({ timesMin: [0, 200, 250], temperaturesC: [20, 6, 5], from }).verdict).toBe("not enough data");
  });

  test("says what to do, with source and caution, and passes nothing on silence", () => {
    const failed = coolingCheck({ timesMin: [0, 10, 150, 300], temperaturesC: [60, 55, 25, 4] });
    expect(failed.sentence).toBe("Not cooled in time: 57 to 21 °C (135 to 70 °F) in 140 to 300 min, 2 h allowed.");
    expect(failed.todo).toMatch(/^Throw it away/);
    const open = coolingCheck({ timesMin: [0], temperaturesC: [60] });
    expect(open.todo).toMatch(/^Take it as not cooled in time/);
    expect(open.source).toMatch(/3-501\.14/);
    expect(open.caution).toMatch(/Local food codes/);
  });

  test("refuses what is no trace", () => {
    expect(() => coolingCheck({ timesMin: [], temperaturesC: [] })).toThrow(/must hold readings/);
    expect(() => coolingCheck({ timesMin: [0, 0], temperaturesC: [60, 50] })).toThrow(/time 2 must be later/);
    expect(() => coolingCheck({ timesMin: [0, 5], temperaturesC: [60, Number.NaN] })).toThrow(/temperature 2 must be/);
  });
});
