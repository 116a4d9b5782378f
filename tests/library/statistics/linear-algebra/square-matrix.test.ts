import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  dot,
  identity,
  product,
  times,
} from "../../../../kernel-lib/library/src/statistics/linear-algebra/square-matrix";

const number = fc.integer({ min: -9, max: 9 });
const three = (length: number): fc.Arbitrary<Float64Array> =>
  fc.array(number, { minLength: length, maxLength: length }).map((values) => Float64Array.from(values));

describe("square matrices row by row", () => {
  it("multiply as rows into columns", () => {
    expect([...product(Float64Array.of(1, 2, 3, 4), Float64Array.of(5, 6, 7, 8), 2)]).toEqual([19, 22, 43, 50]);
    expect([...times(Float64Array.of(1, 2, 3, 4), Float64Array.of(5, 6), 2)]).toEqual([17, 39]);
    expect(dot([1, 2, 3], [4, 5, 6])).toBe(32);
  });

  it("keep what the unit matrix multiplies, and one after the other is their product", () => {
    fc.assert(
      fc.property(three(9), three(9), three(3), (a, b, v) => {
        expect([...product(identity(3), a, 3)].map((value) => value + 0)).toEqual([...a].map((value) => value + 0));
        expect([...times(product(a, b, 3), v, 3)]).toEqual([...times(a, times(b, v, 3), 3)]);
      }),
    );
  });
});
