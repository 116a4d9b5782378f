import fc from "fast-check";
import { type Floor, type LyingPiece, type WholePieces, wholePieces } from "slabwright/pan";
import { describe, expect, test } from "vitest";

const floors: fc.Arbitrary<Floor> = fc.oneof(
  fc.record({ shape: fc.constant("round" as const), diameterMm: fc.double({ min: 100, max: 350, noNaN: true }) }),
  fc.record({
    shape: fc.constant("rectangle" as const),
    lengthMm: fc.double({ min: 100, max: 450, noNaN: true }),
    widthMm: fc.double({ min: 100, max: 350, noNaN: true }),
  }),
);
const pieces: fc.Arbitrary<LyingPiece> = fc.oneof(
  fc.record({
    lengthMm: fc.double({ min: 20, max: 90, noNaN: true }),
    widthMm: fc.double({ min: 20, max: 60, noNaN: true }),
  }),
  fc.record({ diameterMm: fc.double({ min: 20, max: 90, noNaN: true }) }),
);

/** Whether all lie on the floor and none on another, by their corners and middles alone. */
function expectLying({ places }: WholePieces, floor: Floor, piece: LyingPiece, gapMm: number): void {
  const round = "diameterMm" in piece;
  const half = (turned: boolean): readonly [number, number] => {
    if (round) return [piece.diameterMm / 2, piece.diameterMm / 2];
    return turned ? [piece.widthMm / 2, piece.lengthMm / 2] : [piece.lengthMm / 2, piece.widthMm / 2];
  };
  let [out, apart] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const [at, { xMm, yMm, turned }] of places.entries()) {
    const [a, b] = half(turned);
    const [x, y] = [Math.abs(xMm), Math.abs(yMm)];
    if (floor.shape === "rectangle") out = Math.max(out, x + a - floor.lengthMm / 2, y + b - floor.widthMm / 2);
    else out = Math.max(out, (round ? Math.hypot(x, y) + a : Math.hypot(x + a, y + b)) - floor.diameterMm / 2);
    for (const other of places.slice(0, at)) {
      const [c, d] = half(other.turned);
      const [dx, dy] = [Math.abs(other.xMm - xMm), Math.abs(other.yMm - yMm)];
      apart = Math.min(apart, round ? Math.hypot(dx, dy) - 2 * a : Math.max(dx - a - c, dy - b - d));
    }
  }
  expect(out).toBeLessThanOrEqual(1e-5);
  expect(apart).toBeGreaterThanOrEqual(gapMm - 1e-5);
}

describe("wholePieces", () => {
  test("all that are counted lie whole on the floor and none on another", () => {
    fc.assert(
      fc.property(floors, pieces, fc.constantFrom(0, 5), (floor, piece, gapMm) => {
        const found = wholePieces({ floor, piece, gapMm });
        expect(found.places).toHaveLength(found.pieces);
        expectLying(found, floor, piece, gapMm);
        expect(found.pieces).toBeLessThanOrEqual(found.byArea);
        expect(found.coverFraction).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: 30 },
    );
  });

  // smallest circles that hold n unit squares: E. Friedman, Packing unit squares in circles; n discs: R. L. Graham and others
  // (1998), Discrete Mathematics 181:139-154. Both from memory; only arrangements in rows, which ours can reach.
  test.each([
    [1, Math.SQRT1_2],
    [2, Math.sqrt(5) / 2],
    [3, (5 * Math.sqrt(17)) / 16],
    [4, Math.SQRT2],
    [5, Math.sqrt(10) / 2],
    [7, Math.sqrt(13) / 2],
  ])("%d squares fit a circle that just holds them, and not a smaller one", (count, radius) => {
    const inCircle = (share: number): number =>
      wholePieces({
        floor: { shape: "round", diameterMm: 2 * 30 * radius * share },
        piece: { lengthMm: 30, widthMm: 30 },
      }).pieces;
    expect(inCircle(1 + 1e-6)).toBeGreaterThanOrEqual(count);
    expect(inCircle(1 - 1e-3)).toBeLessThan(count);
  });

  test.each([
    [2, 2],
    [3, 1 + 2 / Math.sqrt(3)],
    [4, 1 + Math.SQRT2],
    [7, 3],
  ])("%d discs fit a circle that just holds them, and not a smaller one", (count, ratio) => {
    const inCircle = (share: number): number =>
      wholePieces({ floor: { shape: "round", diameterMm: 30 * ratio * share }, piece: { diameterMm: 30 } }).pieces;
    expect(inCircle(1 + 1e-6)).toBeGreaterThanOrEqual(count);
    expect(inCircle(1 - 1e-3)).toBeLessThan(count);
  });

  test("counts by rows: offset rows of discs, and a turned block that fills what is left", () => {
    const tray = { shape: "rectangle", lengthMm: 200, widthMm: 190 } as const;
    // straight rows hold 4 × 3, offset rows 4 + 3 + 4 + 3
    expect(wholePieces({ floor: tray, piece: { diameterMm: 50 } }).pieces).toBe(14);
    const box = { shape: "rectangle", lengthMm: 50, widthMm: 40 } as const;
    // one way 4, the other 3; two one way beside two the other hold 5 only where both are mixed
    expect(wholePieces({ floor: box, piece: { lengthMm: 25, widthMm: 15 } }).pieces).toBe(5);
  });

  test("refuses sizes that are slips", () => {
    const floor = { shape: "round", diameterMm: 228 } as const;
    expect(() => wholePieces({ floor, piece: { diameterMm: 1 } })).toThrow(
      /piece.diameterMm must be between 3 and 5000 mm/,
    );
    expect(() => wholePieces({ floor: { ...floor, diameterMm: 0 }, piece: { diameterMm: 30 } })).toThrow(
      /floor.diameterMm/,
    );
    expect(wholePieces({ floor, piece: { lengthMm: 300, widthMm: 300 } }).pieces).toBe(0);
  });
});
