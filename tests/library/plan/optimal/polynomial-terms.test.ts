import { polynomialTerms } from "slabwright/plan";
import { expect, it } from "vitest";

it("polynomialTerms: as many terms as the form has, and no other forms", () => {
  expect(polynomialTerms(["a", "b", "c"], "linear")).toEqual(["1", "a", "b", "c"]);
  expect(polynomialTerms(["a", "b", "c"], "interactions").slice(4)).toEqual(["a*b", "a*c", "b*c"]);
  for (const k of [1, 2, 5, 8])
    expect(polynomialTerms([..."abcdefgh"].slice(0, k)).length).toBe(((k + 1) * (k + 2)) / 2);
  expect(() => polynomialTerms([])).toThrow("at least one factor");
  expect(() => polynomialTerms(["a"], "cubic" as never)).toThrow('"linear", "interactions" or "quadratic"');
});
