import fc from "fast-check";
import { clockText, parseClock } from "slabwright/units";
import { describe, expect, test } from "vitest";

describe("clockText and parseClock", () => {
  test("every minute of a day is read back as it was written, in both ways", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1439 }),
        fc.constantFrom("us" as const, "metric" as const),
        (min, units) => {
          expect(parseClock(clockText(min, units), "at")).toBe(min);
        },
      ),
    );
  });

  test.each([
    [0, "0:00", "12:00 am"],
    [720, "12:00", "12:00 pm"],
    [779.6, "13:00", "1:00 pm"],
    [1440, "0:00 on day 2", "12:00 am on day 2"],
    [2 * 1440 + 65, "1:05 on day 3", "1:05 am on day 3"],
  ])("%d minutes", (min, metric, us) => {
    expect([clockText(min, "metric"), clockText(min, "us")]).toEqual([metric, us]);
  });
});
