import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  applyQTransposed,
  decomposeQr,
  inverseOfR,
  qrWorkspace,
} from "../../../../kernel-lib/library/src/statistics/linear-algebra/qr-decomposition";

type Columns = readonly (readonly number[])[];

function decompose(columns: Columns) {
  const rows = columns[0].length;
  const qr = qrWorkspace(rows, columns.length);
  decomposeQr(qr, Float64Array.from(columns.flat()));
  return qr;
}

/** Column pivots as Businger & Golub choose them, by Gram–Schmidt: the column of which most is left comes next. */
function greedyPivots(columns: Columns): { pivots: number[]; left: number[]; close: boolean } {
  const rest = columns.map((column) => [...column]);
  const pivots: number[] = [];
  const left: number[] = [];
  let close = false;
  const lengthOf = (column: readonly number[]): number => Math.hypot(...column);
  while (pivots.length < columns.length) {
    const open = columns.map((_, j) => j).filter((j) => !pivots.includes(j));
    const order = open.toSorted((i, j) => lengthOf(rest[j]) - lengthOf(rest[i]));
    const best = order[0];
    // a tie that rounding decides tells nothing
    if (order.length > 1 && lengthOf(rest[order[1]]) > 0.999 * lengthOf(rest[best])) close = true;
    pivots.push(best);
    const length = lengthOf(rest[best]);
    left.push(length);
    for (const j of open) {
      if (j === best || length === 0) continue;
      for (let twice = 0; twice < 2; twice++) {
        const along = rest[j].reduce((sum, value, i) => sum + value * rest[best][i], 0) / length ** 2;
        rest[j] = rest[j].map((value, i) => value - along * rest[best][i]);
      }
    }
  }
  return { pivots, left, close };
}

const entry = fc.double({ min: -10, max: 10, noNaN: true, noDefaultInfinity: true });
const matrices = fc
  .tuple(fc.integer({ min: 5, max: 9 }), fc.integer({ min: 2, max: 5 }))
  .chain(([rows, count]) =>
    fc.array(fc.array(entry, { minLength: rows, maxLength: rows }), { minLength: count, maxLength: count }),
  );

describe("decomposeQr", () => {
  it("brings forward the column of which most is left, at every step, as Gram–Schmidt finds it", () => {
    let told = 0;
    fc.assert(
      fc.property(matrices, (columns) => {
        const { pivots, left, close } = greedyPivots(columns);
        fc.pre(!close && Math.min(...left) > 1e-3);
        told++;
        const qr = decompose(columns);
        expect([...qr.pivot]).toEqual(pivots);
        left.forEach((length, k) => {
          expect(Math.abs(qr.diagonal[k])).toBeCloseTo(length, 8);
        });
      }),
      { numRuns: 300 },
    );
    expect(told).toBeGreaterThan(50);
  });
  it("takes off exactly what is done of each column, by hand", () => {
    const first = [10, 0, 0, 0];
    // 6² + 5² less 6² leaves 25, against 4.9² = 24.01, and the other way round
    expect([...decompose([first, [6, 5, 0, 0], [0, 0, 4.9, 0]]).pivot]).toEqual([0, 1, 2]);
    expect([...decompose([first, [6, 4.9, 0, 0], [0, 0, 5, 0]]).pivot]).toEqual([0, 2, 1]);
  });
  it("picks rightly where what is left of a column is a billionth of it, and updated lengths have lost their digits", () => {
    const base = [1, 2, 3, 4, 5, 6];
    const near = (scale: number, noise: readonly number[]): number[] =>
      base.map((value, i) => scale * value + 1e-8 * noise[i]);
    // both lie along the first; of the second more is left than of the third, though the third is the longer
    const columns = [
      base.map((value) => 1000 * value),
      near(1, [3, -3, 3, -3, 3, -3]),
      near(900, [1, -1, 1, -1, 1, -1]),
      [0, 0, 0, 0, 0, 1e-6],
    ];
    const { pivots } = greedyPivots(columns);
    expect(pivots.slice(0, 2)).toEqual([0, 3]);
    expect([...decompose(columns).pivot]).toEqual(pivots);
  });
  it("gives R with RᵀR the cross products, its inverse, and Q that keeps lengths", () => {
    fc.assert(
      fc.property(matrices, (columns) => {
        fc.pre(Math.min(...greedyPivots(columns).left) > 1e-2);
        const qr = decompose(columns);
        const p = columns.length;
        const R = (row: number, c: number): number =>
          row === c ? qr.diagonal[c] : row < c ? qr.packed[c * qr.rows + row] : 0;
        const inverse = inverseOfR(qr, p);
        for (let a = 0; a < p; a++) {
          for (let b = 0; b < p; b++) {
            let cross = 0;
            let unit = 0;
            for (let k = 0; k < p; k++) {
              cross += R(k, a) * R(k, b);
              unit += R(a, k) * inverse[k * p + b];
            }
            const given = columns[qr.pivot[a]].reduce((sum, value, i) => sum + value * columns[qr.pivot[b]][i], 0);
            expect(Math.abs(cross - given)).toBeLessThan(1e-8);
            expect(Math.abs(unit - (a === b ? 1 : 0))).toBeLessThan(1e-6);
          }
        }
        // Qᵀ turns each column into that of R
        columns.forEach((_, c) => {
          const turned = Float64Array.from(columns[qr.pivot[c]]);
          applyQTransposed(qr, turned);
          turned.forEach((value, row) => {
            expect(Math.abs(value - (row < p ? R(row, c) : 0))).toBeLessThan(1e-8);
          });
        });
      }),
      { numRuns: 200 },
    );
  });
  it("leaves a zero on the diagonal for a column that is zero or follows from the others", () => {
    const qr = decompose([
      [1, 2, 2],
      [0, 0, 0],
    ]);
    expect([...qr.pivot]).toEqual([0, 1]);
    expect(qr.diagonal[1]).toBe(0);
    expect(Math.abs(qr.diagonal[0])).toBeCloseTo(3, 12);
    const wide = decompose([
      [3, 0],
      [0, 2],
      [1, 1],
    ]);
    expect(wide.diagonal[2]).toBe(0);
  });
  it("keeps columns so small that their squares vanish", () => {
    const qr = decompose([
      [3e-180, 4e-180],
      [4e-190, -3e-190],
    ]);
    expect(Math.abs(qr.diagonal[0])).toBeCloseTo(5e-180, 190);
    expect(Math.abs(qr.diagonal[0]) / 5e-180).toBeCloseTo(1, 12);
  });
});
