// Time, temperature and tolerance: the additive rule of W. B. Van Arsdel, M. J. Copley, R. L. Olson (1969), Quality and
// Stability of Frozen Foods, from memory; life(T) = life(-18 °C)·Q10^((-18 - T)/10). storage-life/reference.json was worked out
// from these two equations in double precision by a program of its own that shares no code with the library. Tolerance: 12 digits.
import { storageLife } from "slabwright/safety";
import { describe, expect, it } from "vitest";
import reference from "./storage-life/reference.json";

const { lifeDays, q10 } = reference;

describe("storage life against the additive rule", () => {
  it.each(reference.histories)("$name", ({ steps, used }) => {
    expect(Math.abs(storageLife({ steps, lifeDays, q10 }).used / used - 1)).toBeLessThan(1e-12);
  });

  it.each(reference.kept)("kept at $temperatureC °C", ({ temperatureC, leftDays }) => {
    const left = storageLife({ steps: [], lifeDays, q10, keptAtC: temperatureC }).leftDays;
    expect(Math.abs(left / leftDays - 1)).toBeLessThan(1e-12);
  });

  it("what is left is what was used up, held against the whole", () => {
    for (const { steps, used } of reference.histories) {
      const life = storageLife({ steps, lifeDays, q10 });
      expect(life.leftDays).toBeCloseTo((1 - used) * lifeDays, 9);
    }
  });
});
