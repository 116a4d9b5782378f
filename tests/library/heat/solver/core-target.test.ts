import { expect, test } from "vitest";
import { coreTarget } from "../../../../kernel-lib/library/src/heat/solver/core-target";
import { coreLimit } from "../../../../kernel-lib/library/src/safety/core-limit";

test("without a limit of the caller's the strictest core limit stands, with its source", () => {
  expect(coreTarget().limitC).toBe(coreLimit().limitC);
  expect(coreTarget().source).toBe(coreLimit().source);
  expect(coreTarget(80)).toMatchObject({ limitC: 80, source: "limit given by the caller" });
  expect(coreTarget(80).caution).toContain("probe the coldest part");
});
