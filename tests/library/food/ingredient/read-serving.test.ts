import { describe, expect, it } from "vitest";
import { readServing } from "../../../../kernel-lib/library/src/food/ingredient/read-serving";

describe("readServing", () => {
  it.each([
    ["30 g", 30, null],
    ["30g", 30, null],
    ["30", 30, null],
    ["1 oz (28 g)", 28, null],
    ["1/4 cup (30 g)", 30, "1/4 cup"],
    ["2/3 cup (55g)", 55, "2/3 cup"],
    ["30 g (1/4 cup)", 30, "1/4 cup"],
    ["about 2 tbsp (1.1 oz / 32 g)", 32, "2 tbsp"],
    ["2 tbsp (1.1oz/32g)", 32, "2 tbsp"],
    ["1 large (50 g)", 50, "1 large"],
    ["1 lb", 453.59237, null],
  ])("reads %s", (text, massG, measure) => {
    expect(readServing(text, null)).toEqual({ massG: expect.closeTo(massG, 6), measure });
  });

  it("takes a bare number in the heading's unit, and nothing without a mass", () => {
    expect(readServing("2", "oz")?.massG).toBeCloseTo(56.699, 3);
    for (const text of ["1/4 cup", "some", "0 g", "", "g", "(", "x".repeat(500)])
      expect(readServing(text, null)).toBeNull();
  });
});
