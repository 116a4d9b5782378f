import { expect, it } from "vitest";
import { type Closeness, checkTable, closenessIn } from "../../kernel-lib/reference/src/check-table";

const about = { page: "p", what: "a | b", against: "c", source: "s" };
const result = (compared: Closeness[], status = "passed") => ({
  testResults: [
    { name: "one.test.ts", status, assertionResults: [{ fullName: "holds", status, meta: { compared } }] },
    { name: "two.test.ts", status: "passed", assertionResults: [{ fullName: "else", status: "passed", meta: {} }] },
  ],
});

it("shows the worst of the cases that are alike, and what they are held to", () => {
  const compared: Closeness[] = [
    { ...about, measure: "relative", found: 0.00123, heldTo: 0.01 },
    { ...about, measure: "relative", found: 0.00045, heldTo: 0.02 },
    { ...about, measure: "K", found: 2.5e-7, heldTo: 1e-6 },
    { ...about, measure: "digits", found: 7.46, heldTo: 6 },
    { ...about, measure: "digits", found: 9, heldTo: 8 },
    { ...about, measure: "equal", found: 0, heldTo: 0 },
    { ...about, page: "other", measure: "K", found: 1, heldTo: 2 },
  ];
  expect(
    checkTable(closenessIn(result(compared)), "p")
      .replaceAll("\u00a0", "_")
      .split("\n")
      .slice(2),
  ).toEqual([
    "| a \\| b; with c | 2 | 0.123_% | 1 to 2_% |",
    "| a \\| b; with c | 1 | 2.5_×_10⁻⁷_K | 1.0_×_10⁻⁶_K |",
    "| a \\| b; with c | 2 | 7.5_digits_alike | 6 to 8_digits |",
    "| a \\| b; with c | 1 | all_equal | equal |",
  ]);
});

it("takes nothing from checks that do not hold, and makes no table of nothing", () => {
  expect(() => closenessIn(result([], "failed"))).toThrow("these do not: holds");
  expect(() => checkTable([], "p")).toThrow('"p"');
});
