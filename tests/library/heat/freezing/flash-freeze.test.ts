import { describe, expect, test } from "vitest";
import { flashFreeze } from "../../../../kernel-lib/library/src/heat/freezing/flash-freeze";
import { foods } from "../foods";

const food = foods.reference;
const pan = { food, thicknessMm: 10, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 };

describe("flashFreeze", () => {
  test("pieces freeze sooner than their slab", () => {
    const slab = flashFreeze({ ...pan, coefficientBelowWm2K: 9 });
    const piece = flashFreeze({ ...pan, coefficientBelowWm2K: 9, widthMm: 30, lengthMm: 30 });
    expect(piece.run.body).toBe("piece");
    expect(piece.timeMin).toBeLessThan(0.8 * slab.timeMin);
    expect(() => flashFreeze({ ...pan, airC: -8 })).toThrow("the core tends to -8 °C");
  });

  test("air within half a degree of the core is refused, colder air is not", () => {
    for (const airC of [-9.8, -10.2, -10.5]) expect(() => flashFreeze({ ...pan, airC })).toThrow("airC must be below");
    const slow = flashFreeze({ ...pan, airC: -11 });
    expect(slow.timeMin).toBeGreaterThan(flashFreeze(pan).timeMin);
    expect(slow.latestMin).toBeLessThan(Number.POSITIVE_INFINITY);
  });
});
