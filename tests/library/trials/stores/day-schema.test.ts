import { describe, expect, test } from "vitest";
import { daySchema } from "../../../../kernel-lib/library/src/trials/stores/day-schema";

describe("daySchema", () => {
  test("keeps a day as 2026-03-14, however it was typed, and refuses one that may be two", () => {
    for (const typed of ["2026-03-14", "14 Mar 2026", "3/14/2026"]) expect(daySchema().parse(typed)).toBe("2026-03-14");
    expect(daySchema().safeParse("3/4/2026").error?.issues[0].message).toMatch(/this may be 2026-03-04 or 2026-04-03$/);
    expect(daySchema().safeParse("soon").success).toBe(false);
  });
});
