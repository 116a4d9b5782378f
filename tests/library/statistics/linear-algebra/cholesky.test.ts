import { describe, expect, it } from "vitest";
import {
  choleskyFactor,
  choleskyOrNull,
  inverseFrom,
  solveLower,
  solveUpper,
} from "../../../../kernel-lib/library/src/statistics/linear-algebra/cholesky";

// L = [[2, 0, 0], [6, 1, 0], [-8, 5, 3]], L Lᵀ by hand
const matrix = Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);

describe("choleskyFactor", () => {
  it("finds the triangle, solves and inverts, by hand", () => {
    const lower = choleskyFactor(matrix, 3);
    expect([...lower]).toEqual([2, 0, 0, 6, 1, 0, -8, 5, 3]);
    // matrix · (1, 2, 3)
    const right = Float64Array.of(4 + 24 - 48, 12 + 74 - 129, -16 - 86 + 294);
    const solution = solveUpper(lower, 3, solveLower(lower, 3, right));
    [1, 2, 3].forEach((value, i) => {
      expect(solution[i]).toBeCloseTo(value, 10);
    });
    const inverse = inverseFrom(lower, 3);
    for (let i = 0; i < 3; i++) {
      for (let j = 0; j < 3; j++) {
        const entry = [0, 1, 2].reduce((sum, k) => sum + matrix[3 * i + k] * inverse[3 * k + j], 0);
        expect(entry).toBeCloseTo(i === j ? 1 : 0, 9);
      }
    }
  });
  it("refuses a matrix that is not positive definite", () => {
    expect(() => choleskyFactor(Float64Array.of(1, 2, 2, 1), 2)).toThrow(
      "choleskyFactor: matrix must be positive definite, got [1,2,2,1]",
    );
  });
});

describe("choleskyOrNull", () => {
  it("gives none where a direction falls, is open, or is open within `smallest`", () => {
    expect(choleskyOrNull(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
    expect(choleskyOrNull(Float64Array.of(1, 1, 1, 1), 2)).toBeNull();
    const nearly = Float64Array.of(1, 1, 1, 1 + 1e-12);
    expect(choleskyOrNull(nearly, 2)).not.toBeNull();
    expect(choleskyOrNull(nearly, 2, 1e-11)).toBeNull();
    expect(choleskyOrNull(Float64Array.of(Number.NaN), 1)).toBeNull();
    expect(choleskyOrNull(Float64Array.of(Number.POSITIVE_INFINITY), 1)).toBeNull();
  });
});
