import { expect, it } from "vitest";
import { writtenFractions } from "../../../../kernel-lib/library/src/units/typed/written-fractions";

it.each([
  ["1½", "1 1/2"],
  ["⅜ in", " 3/8 in"],
  ["7⁄16", "7/16"],
  ["2 lb 10 oz", "2 lb 10 oz"],
])("writes %j out", (typed, written) => {
  expect(writtenFractions(typed)).toBe(written);
});
