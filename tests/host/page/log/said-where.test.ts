/// <reference lib="dom" />
import { expect, it } from "vitest";
import { saidWhere } from "../../../../kernel-lib/host/page/log/said-where";

it("puts each sentence to the column that it names, and loses none", () => {
  const { at, elsewhere } = saidWhere(
    {
      problems: [
        'the trial row 1, column thickness_mm: expected numbers in mm, got "nine"',
        "the trial: expected a column time_min (a time), got none",
        "the kitchen is not sound",
      ],
      notices: [
        "trials/a.csv row 3, column thickness_mm: has a reading over 40 mm (44 mm)",
        "row 3, column unknown: x",
      ],
    },
    ["thickness_mm", "time_min"],
  );
  expect(at.get("thickness_mm")).toEqual({
    problems: ['expected numbers in mm, got "nine"'],
    notices: ["has a reading over 40 mm (44 mm)"],
  });
  expect(at.get("time_min")?.problems).toEqual(["the trial: expected a column time_min (a time), got none"]);
  expect(elsewhere).toEqual({ problems: ["the kitchen is not sound"], notices: ["row 3, column unknown: x"] });
});
