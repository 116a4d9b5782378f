import { describe, expect, it } from "vitest";
import {
  dependentTerm,
  factorOf,
  momentsOf,
  rowsOf,
} from "../../../../kernel-lib/library/src/plan/optimal/design-model";

describe("design model", () => {
  it("puts rows one after the other, and sums their products", () => {
    const rows = rowsOf("here", { terms: ["1", "x"], row: ([x]: readonly number[]) => [1, x] }, [[2], [3]]);
    expect([...rows]).toEqual([1, 2, 1, 3]);
    expect([...momentsOf(rows, 2)]).toEqual([2, 5, 5, 13]);
  });

  it.each([
    ["the second follows from the first", (x: number) => [1, 1, x], 1],
    ["the last follows from the others", (x: number) => [1, x, 3 - 2 * x], 2],
    ["the first is nothing", (x: number) => [0, x, x * x], 0],
  ])("%s", (_, row, place) => {
    const rows = rowsOf("here", { terms: ["p", "q", "r"], row }, [1, 2, 3, 4]);
    const moments = momentsOf(rows, 3);
    expect(factorOf(moments, 3)).toBeNull();
    expect(dependentTerm(moments, 3)).toBe(place);
  });

  it("refuses rows of another length, or that are no numbers, with the point", () => {
    expect(() => rowsOf("here", { terms: ["1"], row: () => [1, 2] }, [7])).toThrow(
      'here must give a row of 1 finite numbers at every point, one for each term, got {"point":7,"row":[1,2]}',
    );
    expect(() => rowsOf("here", { terms: ["1"], row: () => [Number.POSITIVE_INFINITY] }, [7])).toThrow(
      "finite numbers",
    );
  });
});
