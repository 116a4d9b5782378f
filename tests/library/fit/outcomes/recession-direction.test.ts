import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recessionDirection } from "../../../../kernel-lib/library/src/fit/outcomes/recession-direction";

const whole = fc.integer({ min: -3, max: 3 });
const row = fc.tuple(whole, whole, whole);
const rows = fc.array(row, { minLength: 3, maxLength: 9 });
type Row = readonly [number, number, number];

const dot = (a: Row, b: Row): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Row, b: Row): Row => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * In whole numbers, without rounding: a cone {d: every row · d >= 0} of rows that span the space has, unless it is the
 * origin alone, an edge that is at right angles to two of them.
 */
function hasDirection(given: readonly Row[]): boolean {
  const edges = given.flatMap((a) => given.map((b) => cross(a, b))).filter((edge) => edge.some((entry) => entry !== 0));
  return edges.some((edge) => given.every((one) => dot(one, edge) >= 0) && given.some((one) => dot(one, edge) > 0));
}

function spans(given: readonly Row[]): boolean {
  return given.some((a) => given.some((b) => given.some((c) => dot(a, cross(b, c)) !== 0)));
}

describe("recessionDirection", () => {
  it("finds one exactly where whole-number geometry finds one", () => {
    let found = 0;
    let none = 0;
    fc.assert(
      fc.property(rows, (given) => {
        fc.pre(spans(given));
        const direction = recessionDirection(given);
        expect(direction !== null).toBe(hasDirection(given));
        if (direction === null) none++;
        else {
          found++;
          const rises = given.map((one) => dot(one, direction as Row));
          expect(Math.min(...rises)).toBeGreaterThan(-1e-7);
          expect(Math.max(...rises)).toBeGreaterThan(1e-7);
        }
      }),
      { numRuns: 2000 },
    );
    // the cases are of both kinds
    expect(found).toBeGreaterThan(200);
    expect(none).toBeGreaterThan(200);
  });
  it("takes a gap of one part in a million for a gap, and a touch for none", () => {
    const outcomes = (last: number): number[][] => [
      [-1, -1],
      [-1, -2],
      [1, 3],
      [1, 2 + last],
    ];
    expect(recessionDirection(outcomes(1e-6))).not.toBeNull();
    expect(recessionDirection(outcomes(0))).not.toBeNull();
    expect(recessionDirection(outcomes(-1e-6))).toBeNull();
  });
  it("does not mind how long rows are", () => {
    const none = [
      [1, 0],
      [-1, 1],
      [-1, -1],
    ];
    const some = [
      [1, 0],
      [1, 1],
      [-1, 2],
    ];
    for (const length of [1e-9, 1e-3, 1e6]) {
      expect(recessionDirection(none.map((row) => row.map((entry) => length * entry)))).toBeNull();
      const found = recessionDirection(some.map((row, i) => (i === 0 ? row : row.map((entry) => length * entry))));
      expect(found).not.toBeNull();
    }
    // a row too short to matter would leave a way: the second holds it back, however short
    expect(recessionDirection([[1], [-1e-6]])).toBeNull();
  });
  it("finds none among rows that are all zero", () => {
    expect(recessionDirection([[0, 0]])).toBeNull();
    expect(recessionDirection([])).toBeNull();
  });
});
