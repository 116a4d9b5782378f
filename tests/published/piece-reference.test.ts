import { describe, expect, test } from "vitest";
import type { ThermalModel } from "../../kernel-lib/library/src/food/thermal/thermal-properties";
import { brickSeriesSolution } from "../../kernel-lib/library/src/heat/formulas/series-solution";
import { coreTime } from "../../kernel-lib/library/src/heat/solver/core-time";
import { timeWhen } from "../../kernel-lib/library/src/heat/solver/heat-run";
import { simulatePiece } from "../../kernel-lib/library/src/heat/solver/simulate-piece";
import { foods } from "../library/heat/foods";
import { comparison } from "./comparison";
import reference from "./piece-reference/reference.json";

/** What `simulatePiece` and `coreTime` promise at their default grid [-]. */
const PROMISED = 5e-3;
/** How early a time may be: as much as the references themselves may be off [-]. */
const EARLIEST = 2e-3;

const pieces = (what: string, against: string, source: string) =>
  comparison({ page: "heating-and-freezing", what, against, source });
const FINE =
  "enthalpy finite volumes on even fine grids, computed for this check; Meyer, Balsara & Aslam (2012) for the stages";
const heatedPieces = pieces(
  "core times of pieces heated from −18 °C, sides 1 to 10 thicknesses, default grid",
  "even fine grids, carried on to no cell width",
  FINE,
);
const frozenPieces = pieces(
  "core times of pieces frozen from 5 °C, default grid",
  "even fine grids, carried on to no cell width",
  FINE,
);

type Piece = (typeof reference.pieces)[number];
const foodOf = (piece: Piece): ThermalModel => reference.foods[piece.food as keyof typeof reference.foods];
const nameOf = ({ way, thicknessMm, widthMm, lengthMm, coefficientWm2K, food }: Piece): string =>
  `${way} ${thicknessMm} × ${widthMm} × ${lengthMm} mm, ${coefficientWm2K} W/(m²·K), ${food}`;
const sizeOf = ({ thicknessMm, widthMm, lengthMm, coefficientWm2K }: Piece) => ({
  thicknessMm,
  widthMm,
  lengthMm,
  coefficientWm2K,
});
const heated = reference.pieces.filter(({ way }) => way === "heating");
const frozen = reference.pieces.filter(({ way }) => way === "freezing");

describe("core times of pieces, aspect ratios 1 to 10 (even fine grids, make.c beside reference.json)", () => {
  test("the references cover aspect ratios 1 to 10 and Biot numbers over a factor of 40, and have settled", () => {
    const aspects = reference.pieces.flatMap(({ thicknessMm, widthMm, lengthMm }) => [
      widthMm / thicknessMm,
      lengthMm / thicknessMm,
    ]);
    expect([Math.min(...aspects), Math.max(...aspects)]).toEqual([1, 10]);
    const biots = reference.pieces.map(({ thicknessMm, coefficientWm2K }) => thicknessMm * coefficientWm2K);
    expect(Math.max(...biots) / Math.min(...biots)).toBeGreaterThan(40);
    for (const { column, change } of reference.pieces.flatMap(({ times }) => times))
      expect(Math.abs(change)).toBeLessThan(column === "thawed" || column === "meanC" ? 4e-3 : 2.5e-3);
  });

  for (const piece of heated)
    test(`${nameOf(piece)}: within 0.5 % at the default grid, late rather than early, and thawed`, () => {
      const food = foodOf(piece);
      const core = coreTime({ ...sizeOf(piece), food, startC: -18, airC: 204, drying: "boiling-surface" });
      for (const { column, valueC, seconds } of piece.times) {
        const thaw = column === "thawed";
        const found = 60 * (thaw ? (core.thawedMin as number) : timeWhen(core.run, { column: "coreC", value: valueC }));
        const hard = piece.thicknessMm * piece.coefficientWm2K > 1000;
        heatedPieces.relative(found, seconds, thaw && hard ? 2 * PROMISED : PROMISED);
        if (!thaw) expect(found / seconds - 1, `${valueC} °C`).toBeGreaterThan(-EARLIEST);
        if (valueC !== 74) continue;
        expect(60 * core.gridRangeMin[0]).toBeLessThan(seconds);
        expect(60 * core.gridRangeMin[1]).toBeGreaterThan(seconds);
      }
    });

  for (const piece of frozen)
    test(`${nameOf(piece)}: within 0.5 % at the default grid, late rather than early`, () => {
      const endMin = Math.max(...piece.times.map(({ seconds }) => seconds)) / 30;
      const food = foodOf(piece);
      const run = simulatePiece({
        ...sizeOf(piece),
        food,
        startC: 5,
        airC: -18,
        drying: "none",
        endMin,
        stopCoreC: -10.2,
      });
      for (const { column, valueC, seconds } of piece.times) {
        const found = 60 * timeWhen(run, { column: column as "coreC" | "meanC", value: valueC });
        // the mean holds edges and corners too
        const within = column === "meanC" ? 0.012 : PROMISED;
        frozenPieces.relative(found, seconds, within);
        expect(found / seconds - 1, `${column} ${valueC} °C`).toBeGreaterThan(-EARLIEST);
      }
    });
});

describe("constant properties against the exact product series (Carslaw & Jaeger 1959), default grid", () => {
  const plain = { conductivityWmK: 0.45, densityKgM3: 1050, specificHeatKJkgK: 3.4 };
  for (const [width, length] of [
    [1, 1],
    [2, 5],
    [3.75, 3.75],
    [1, 10],
    [10, 10],
  ])
    for (const coefficientWm2K of [10, 40, 100])
      test(`1 : ${width} : ${length}, 12 mm, ${coefficientWm2K} W/(m²·K): within 0.5 %, late rather than early`, () => {
        const box = { thicknessMm: 12, widthMm: 12 * width, lengthMm: 12 * length, coefficientWm2K };
        const run = simulatePiece({
          ...box,
          food: foods.withoutIce,
          startC: 4,
          airC: 190,
          endMin: 60,
          stopCoreC: 85,
          drying: "none",
        });
        const found = timeWhen(run, { column: "coreC", value: 74 });
        const coreAt = (timeMin: number): number =>
          190 - 186 * brickSeriesSolution({ ...box, ...plain, timeMin }).centre;
        // a time that is off by 0.5 % at most has the exact core on both sides of 74 °C
        expect(coreAt(found * (1 + EARLIEST))).toBeGreaterThan(74);
        expect(coreAt(found / (1 + PROMISED))).toBeLessThan(74);
      });
});
