import fc from "fast-check";
import { fitSurface, ridgePath, surfaceAt } from "slabwright/fit";
import { centralComposite } from "slabwright/plan";
import { describe, expect, it } from "vitest";

const factors = ["a", "b", "c"];
const { points } = centralComposite({ factors: 3, centres: [2, 2] });
const number = fc.double({ min: -3, max: 3, noNaN: true });

/** A surface of given slopes, twists and squares. */
function surfaceOf([a, b, c, ab, ac, bc, aa, bb, cc]: readonly number[]) {
  const y = points.map(
    ([x, w, z], at) =>
      a * x +
      b * w +
      c * z +
      ab * x * w +
      ac * x * z +
      bc * w * z +
      aa * x * x +
      bb * w * w +
      cc * z * z +
      0.01 * (at % 4),
  );
  return fitSurface({ factors, points, y });
}

describe("ridgePath", () => {
  it("lies at its radius, and no other point there is higher (or lower)", () => {
    fc.assert(
      fc.property(
        fc.array(number, { minLength: 9, maxLength: 9 }),
        fc.array(fc.tuple(number, number, number), { minLength: 20, maxLength: 20 }),
        fc.constantFrom("highest" as const, "lowest" as const),
        (coefficients, directions, towards) => {
          const fit = surfaceOf(coefficients);
          for (const { radius, point, value } of ridgePath({ fit, radii: [0.4, 1.2], towards })) {
            expect(Math.hypot(point[0], point[1], point[2])).toBeCloseTo(radius, 9);
            for (const direction of directions) {
              const size = Math.hypot(direction[0], direction[1], direction[2]);
              if (size < 1e-3) continue;
              const other = surfaceAt(
                fit,
                direction.map((part) => (part * radius) / size),
              ).value;
              if (towards === "highest") expect(other).toBeLessThanOrEqual(value + 1e-8);
              else expect(other).toBeGreaterThanOrEqual(value - 1e-8);
            }
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("finds the top axis where no slope points along it", () => {
    // exactly symmetric: no slope at all, bends 1, -1, -2
    const y = points.map(([x, w, z]) => 5 + x * x - w * w - 2 * z * z);
    const [{ point, value }] = ridgePath({ fit: fitSurface({ factors, points, y }), radii: [1] });
    expect(Math.abs(point[0])).toBeCloseTo(1, 6);
    expect(value).toBeCloseTo(6, 9);
  });

  it("stays in the middle at radius 0, and its doubt grows with the radius", () => {
    const path = ridgePath({ fit: surfaceOf([1, 1, 0, 0.2, 0, 0, -1, -1, -1]) });
    expect(path[0].point).toEqual([0, 0, 0]);
    expect(path[path.length - 1].standardError).toBeGreaterThan(path[0].standardError);
  });
});
