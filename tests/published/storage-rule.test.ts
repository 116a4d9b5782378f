import { storageLife } from "slabwright/safety";
import { expect, it } from "vitest";
import { comparison } from "./comparison";

// The rule worked out apart from the library in double precision: life(−12) = 365·3^−0.6 = 188.80788 days and
// life(−24) = 365·3^0.6 = 705.61145 days; shares of life add.
const rule = comparison({
  page: "storage",
  what: "share of life used by `storageLife`, and months left",
  against: "the additive rule worked out apart",
  source: "Van Arsdel W.B. and others (1969), Quality and Stability of Frozen Foods (from memory)",
});
const used = (...steps: [temperatureC: number, days: number][]): number =>
  storageLife({ steps: steps.map(([temperatureC, days]) => ({ temperatureC, days })), lifeDays: 365, q10: 3 }).used;

it("adds up shares of the life at each temperature", () => {
  rule.absolute(used([-18, 60], [-12, 10], [-24, 100]), 0.35906851026437336, 1e-12, "-");
  rule.absolute(used([-18, 30], [-10, 5]), 0.11518116007233825, 1e-12, "-");
  expect(used()).toBe(0);
});

it("has the life of colder and warmer freezers", () => {
  const months = (keptAtC: number): number =>
    storageLife({ steps: [], lifeDays: 365, q10: 3, keptAtC }).leftDays * (12 / 365);
  rule.absolute(months(-12), 6.207382295661438, 1e-10, "months");
  rule.absolute(months(-24), 23.198184539181153, 1e-10, "months");
});
