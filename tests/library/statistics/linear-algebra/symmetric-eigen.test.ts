import { symmetricEigen } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

describe("symmetricEigen", () => {
  it("takes a matrix apart into values and vectors that make it again", () => {
    const matrix = [
      [4, 1, -2, 0.5],
      [1, 3, 0, 1],
      [-2, 0, 5, -1],
      [0.5, 1, -1, 2],
    ];
    const { values, vectors } = symmetricEigen(matrix);
    for (let i = 0; i < 4; i++) {
      for (let j = 0; j < 4; j++) {
        const again = values.reduce((sum, value, k) => sum + value * vectors[k][i] * vectors[k][j], 0);
        expect(again).toBeCloseTo(matrix[i][j], 12);
        const dot = vectors[i].reduce((sum, entry, k) => sum + entry * vectors[j][k], 0);
        expect(dot).toBeCloseTo(i === j ? 1 : 0, 12);
      }
    }
    expect([...values].sort((one, other) => other - one)).toEqual([...values]);
  });
});
