import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkpointName,
  checkpointOf,
  type KeptState,
  outdatedStates,
} from "../../../kernel-lib/host/src/server/checkpoint-names";

const HOUR = 3_600_000;
const NOW = Date.parse("2026-11-26T12:00:00Z");
const state = (atMs: number, bytes = 1000): KeptState => ({ name: `${atMs}`, id: `${atMs}`, atMs, bytes });

describe("checkpointName", () => {
  it("reads back as the time, for any notebook's name", () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 0, max: 4e12 }), (stem, atMs) => {
        expect(checkpointOf(stem, checkpointName(stem, atMs))?.atMs).toBe(atMs);
      }),
    );
    expect(checkpointName("a", NOW)).toBe("a-checkpoint-20261126T120000000Z.ipynb");
    for (const other of ["a-checkpoint.ipynb", "b-checkpoint-20261126T120000000Z.ipynb", "a-checkpoint-2026.ipynb"])
      expect(checkpointOf("a", other)).toBeNull();
    expect(checkpointOf("a", "a-checkpoint-20261326T120000000Z.ipynb")).toBeNull();
  });
});

describe("outdatedStates", () => {
  it("keeps all of the last hour, one an hour for a day and one a day after that", () => {
    const lastHour = Array.from({ length: 12 }, (_, at) => state(NOW - at * 0.08 * HOUR));
    const day = Array.from({ length: 12 }, (_, at) => [
      state(NOW - (2 + at) * HOUR - 60_000),
      state(NOW - (2 + at) * HOUR - 120_000),
    ]).flat();
    const outdated = outdatedStates([...day, ...lastHour], NOW);
    expect(outdated.map(({ atMs }) => atMs)).toEqual(day.filter((_, at) => at % 2 === 1).map(({ atMs }) => atMs));
    const days = [3, 3.2, 3.4, 90].map((age) => state(NOW - age * 24 * HOUR));
    expect(outdatedStates([...lastHour, ...days], NOW).map(({ atMs }) => (NOW - atMs) / (24 * HOUR))).toEqual([
      3.2, 3.4, 90,
    ]);
  });

  it("never lets the newest two go, and holds the rest to what may be kept in all", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 100 * 24 }), fc.integer({ min: 1, max: 4e8 })), {
          selector: ([age]) => age,
        }),
        (ages) => {
          const states = ages.map(([age, bytes]) => state(NOW - age * HOUR, bytes));
          const gone = new Set(outdatedStates(states, NOW));
          const kept = states.filter((one) => !gone.has(one)).sort((a, b) => b.atMs - a.atMs);
          const newest = states.toSorted((a, b) => b.atMs - a.atMs).slice(0, 2);
          expect(kept.slice(0, newest.length)).toEqual(newest);
          const rest = kept.slice(2).reduce((sum, { bytes }) => sum + bytes, 0);
          expect(rest).toBeLessThanOrEqual(500e6);
        },
      ),
    );
  });
});
