import { curves } from "slabwright/fit";
import {
  boxBehnken,
  centralComposite,
  continuousDesign,
  designQuality,
  fractionalFactorial,
  fullFactorial,
  gradientModel,
  optimalDesign,
  polynomialTerms,
  termsModel,
} from "slabwright/plan";
import { describe, expect, it } from "vitest";
import { comparison } from "./comparison";
import witness from "./plan/r-determinants.json";

const plans = (what: string, against: string, source: string) =>
  comparison({ page: "next-trial", what, against, source });
const BOX_DRAPER = "Box M.J., Draper N.R. (1971), Biometrika 58, from memory";
const onGrid = plans(
  "determinant of D-optimal plans of 6 to 10 runs on the 3 × 3 grid",
  "the greatest over every choice of points, by whole numbers",
  "found by trying every choice",
);
const onSquare = plans(
  "determinant of D-optimal plans of 6 and 7 runs anywhere on the square",
  "the printed plans",
  BOX_DRAPER,
);
const composite = plans(
  "star distance of central composite plans",
  "printed distances",
  "Box & Draper, Response Surfaces, Mixtures, and Ridge Analyses, 2nd ed. 2007 (from memory)",
);
const curvePlans = plans(
  "places of D-optimal runs for curves",
  "the places worked out by hand",
  "Box & Lucas (1959), Biometrika 46, 77; Guest (1958)",
);
const quality = plans("determinant and variances of `designQuality`", "R on the same points", "R Core Team, R 4.2.2");

const quadratic = (k: number) => {
  const factors = [..."abcdefg"].slice(0, k);
  return termsModel({ factors, terms: polynomialTerms(factors) });
};

describe("D-optimal plans of the full quadratic in two factors on the 3 x 3 grid", () => {
  const grid = fullFactorial({ levels: [3, 3] });

  /** |XᵀX| by expanding whole numbers by fractions-free elimination (Bareiss 1968): exact, and no code of the library's. */
  function exactDeterminant(points: readonly (readonly number[])[]): number {
    const rows = points.map(([a, b]) => [1, a, b, a * b, a * a, b * b]);
    const m = rows[0].map((_, i) => rows[0].map((_, j) => rows.reduce((sum, row) => sum + row[i] * row[j], 0)));
    let before = 1;
    for (let k = 0; k < 5; k++) {
      // positive semidefinite: a zero pivot means a zero determinant
      if (m[k][k] === 0) return 0;
      for (let i = k + 1; i < 6; i++)
        for (let j = k + 1; j < 6; j++) m[i][j] = (m[i][j] * m[k][k] - m[i][k] * m[k][j]) / before;
      before = m[k][k];
    }
    return m[5][5];
  }

  /** The greatest determinant over every choice of n of the nine points, repeats allowed. */
  function bruteForce(n: number): number {
    let most = 0;
    const choose = (chosen: readonly number[]): void => {
      if (chosen.length === n) {
        most = Math.max(most, exactDeterminant(chosen.map((at) => grid[at])));
        return;
      }
      for (let at = chosen.at(-1) ?? 0; at < 9; at++) choose([...chosen, at]);
    };
    choose([]);
    return most;
  }

  // whole numbers, found by brute force over all choices; 6 and 7 are found again here (3,003 and 6,435 choices)
  it.each([
    [6, 256],
    [7, 960],
    [8, 2304],
    [9, 5184],
    [10, 9360],
  ])("%i runs reach %i", (runs, most) => {
    const { quality: reached, points } = optimalDesign({ candidates: grid, model: quadratic(2), runs });
    onGrid.relative(reached.determinant, most, 0.5e-10);
    expect(exactDeterminant(points)).toBe(most);
    if (runs <= 7) expect(bruteForce(runs)).toBe(most);
  });
});

describe("exact D-optimal plans of the full quadratic anywhere on the square, Box & Draper 1971 (from memory)", () => {
  const ranges = [
    [-1, 1],
    [-1, 1],
  ] as const;
  const determinantOf = (points: readonly (readonly number[])[]): number =>
    designQuality({ points, model: quadratic(2), region: points }).determinant;

  it("6 runs reach the plan with α = (4 − √13)/3, 267.737 where the grid has 256", () => {
    const a = (4 - Math.sqrt(13)) / 3;
    const known = [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [-a, -a],
      [1, 3 * a],
      [3 * a, 1],
    ];
    const { determinant } = continuousDesign({ model: quadratic(2), ranges, runs: 6 }).quality;
    onSquare.relative(determinant, determinantOf(known), 0.5e-6);
  });

  it("7 runs reach the corners with (−0.092, 0.092), (1, −0.067), (0.067, −1), to the digits of that plan", () => {
    const known = [
      [-1, -1],
      [1, -1],
      [-1, 1],
      [1, 1],
      [-0.092, 0.092],
      [1, -0.067],
      [0.067, -1],
    ];
    const { determinant } = continuousDesign({ model: quadratic(2), ranges, runs: 7 }).quality;
    expect(determinant).toBeGreaterThanOrEqual(determinantOf(known));
    onSquare.relative(determinant, determinantOf(known), 0.5e-5);
  });

  it.each([
    [8, 2304],
    [10, 9360],
  ])("%i runs better the %i of the grid, by the fortieth part at most", (runs, grid) => {
    const { quality } = continuousDesign({ model: quadratic(2), ranges, runs });
    expect(quality.determinant / grid).toBeGreaterThan(1.005);
    expect(quality.determinant / grid).toBeLessThan(1.026);
  });

  it("9 runs are the grid itself, 5184", () => {
    const { quality, points } = continuousDesign({ model: quadratic(2), ranges, runs: 9 });
    expect(quality.determinant).toBeCloseTo(5184, 6);
    expect(new Set(points.map(String)).size).toBe(9);
  });
});

describe("central composite plans, Box & Hunter 1957 and Box & Draper 2007 (from memory)", () => {
  it.each([
    [2, Math.SQRT2, 13, [3, 2]],
    [3, 1.68179, 20, [4, 2]],
    [4, 2, 31, [5, 2]],
    [5, 2.37841, 52, [8, 2]],
  ] as const)("%i factors: alpha %f, %i runs", (factors, alpha, runs, centres) => {
    const plan = centralComposite({ factors, centres });
    composite.absolute(plan.alpha, alpha, 5.01e-6, "-");
    expect(plan.points.length).toBe(runs);
  });

  it("5 factors on half a cube: alpha 2", () => {
    const plan = centralComposite({ factors: 5, generators: ["E=ABCD"], centres: [6, 1] });
    expect(plan.alpha).toBeCloseTo(2, 12);
    expect(plan.points.length).toBe(33);
  });

  it("3 factors in orthogonal blocks with 4 and 2 centres: alpha 1.633; 2 factors, alike centres: 1.414, rotatable too", () => {
    expect(centralComposite({ factors: 3, alpha: "blocks", centres: [4, 2] }).alpha).toBeCloseTo(1.633, 3);
    expect(centralComposite({ factors: 2, alpha: "blocks" }).alpha).toBeCloseTo(Math.SQRT2, 12);
  });
});

describe("Box-Behnken plans, Box & Behnken 1960 (run counts from memory)", () => {
  it.each([
    [3, 15],
    [4, 27],
    [5, 46],
    [6, 54],
    [7, 62],
  ])("%i factors: %i runs; lines, products and squares do not touch each other", (factors, runs) => {
    const points = boxBehnken({ factors });
    expect(points.length).toBe(runs);
    const sum = (of: (point: readonly number[]) => number): number =>
      points.reduce((total, point) => total + of(point), 0);
    const all = Array.from({ length: factors }, (_, at) => at);
    const squares = new Set(all.map((i) => sum((x) => x[i] ** 2)));
    expect(squares.size).toBe(1);
    const pairs = all.flatMap((i) => all.filter((j) => j > i).map((j) => [i, j]));
    const odd = [...all.map((i) => [i]), ...pairs];
    const value = (x: readonly number[], word: readonly number[]): number =>
      word.reduce((product, at) => product * x[at], 1);
    for (const one of odd) {
      expect(sum((x) => value(x, one))).toBe(0);
      for (const i of all) expect(sum((x) => value(x, one) * x[i] ** 2)).toBe(0);
      for (const other of odd) if (other !== one) expect(sum((x) => value(x, one) * value(x, other))).toBe(0);
    }
  });
});

describe("aliases of standard fractions, Box, Hunter & Hunter 2005, ch. 6 (from memory)", () => {
  it("2^(3-1), I = ABC: resolution 3", () => {
    const { definingRelation, resolution, aliases } = fractionalFactorial({ factors: 3, generators: ["C=AB"] });
    expect([definingRelation, resolution]).toEqual([["ABC"], 3]);
    expect(aliases).toEqual([
      ["A", "BC"],
      ["B", "AC"],
      ["C", "AB"],
    ]);
  });

  it("2^(4-1), D = ABC: resolution 4, pairs with pairs", () => {
    const { resolution, aliases } = fractionalFactorial({ factors: 4, generators: ["D=ABC"] });
    expect(resolution).toBe(4);
    expect(aliases.slice(4)).toEqual([
      ["AB", "CD"],
      ["AC", "BD"],
      ["AD", "BC"],
    ]);
  });

  it("2^(5-2), D = AB, E = AC: I = ABD = ACE = BCDE, resolution 3", () => {
    const { definingRelation, resolution, aliases } = fractionalFactorial({ factors: 5, generators: ["D=AB", "E=AC"] });
    expect([definingRelation, resolution]).toEqual([["ABD", "ACE", "BCDE"], 3]);
    expect(aliases).toEqual([
      ["A", "BD", "CE", "ABCDE"],
      ["B", "AD", "CDE", "ABCE"],
      ["C", "AE", "BDE", "ABCD"],
      ["D", "AB", "BCE", "ACDE"],
      ["E", "AC", "BCD", "ABDE"],
      ["BC", "DE", "ABE", "ACD"],
      ["BE", "CD", "ABC", "ADE"],
    ]);
  });

  it("2^(5-1), E = ABCD: resolution 5", () => {
    expect(fractionalFactorial({ factors: 5, generators: ["E=ABCD"] }).resolution).toBe(5);
  });

  it("2^(7-4), D = AB, E = AC, F = BC, G = ABC: each main effect with three pairs", () => {
    const plan = fractionalFactorial({ factors: 7, generators: ["D=AB", "E=AC", "F=BC", "G=ABC"] });
    expect(plan.points.length).toBe(8);
    expect(plan.resolution).toBe(3);
    expect(plan.definingRelation.length).toBe(15);
    expect(plan.definingRelation.filter((word) => word.length === 3)).toEqual([
      "ABD",
      "ACE",
      "AFG",
      "BCF",
      "BEG",
      "CDG",
      "DEF",
    ]);
    expect(plan.aliases.map((group) => group.filter((word) => word.length <= 2))).toEqual([
      ["A", "BD", "CE", "FG"],
      ["B", "AD", "CF", "EG"],
      ["C", "AE", "BF", "DG"],
      ["D", "AB", "CG", "EF"],
      ["E", "AC", "BG", "DF"],
      ["F", "AG", "BC", "DE"],
      ["G", "AF", "BE", "CD"],
    ]);
  });
});

describe("D-optimal plans for curves, by hand", () => {
  const tenths = (to: number): number[] => Array.from({ length: to + 1 }, (_, at) => at / 10);

  it("y = A e^(-kt): half the runs at 0, half at 1/k (Box & Lucas 1959)", () => {
    const model = gradientModel({ model: curves.firstOrderDecay, at: { start: 100, rate: 0.4 } });
    expect(optimalDesign({ candidates: tenths(200), model, runs: 6 }).points).toEqual([0, 0, 0, 2.5, 2.5, 2.5]);
  });

  it("y = top x/(half + x): half at the greatest x, half at half/(1 + 2 half/xmax), where d|X|/dx = 0", () => {
    const model = gradientModel({ model: curves.hyperbola, at: { top: 200, half: 6 } });
    expect(optimalDesign({ candidates: tenths(120), model, runs: 4 }).points).toEqual([3, 3, 12, 12]);
  });

  it("both again where runs may lie anywhere: 1/k and ±1/√5 to five digits", () => {
    const curve = gradientModel({ model: curves.firstOrderDecay, at: { start: 100, rate: 0.37 } });
    const decay = { terms: curve.terms, row: ([x]: readonly number[]) => curve.row(x) };
    const times = continuousDesign({ model: decay, ranges: [[0, 20]], runs: 4 }).points.flat();
    [0, 0, 1 / 0.37, 1 / 0.37].forEach((time, at) => {
      curvePlans.absolute(times[at], time, 0.5e-4, "-");
    });
    const cubic = termsModel({ factors: ["x"], terms: ["1", "x", "x^2", "x^3"] });
    const places = continuousDesign({ model: cubic, ranges: [[-1, 1]], runs: 8 }).points.flat();
    [-1, -1, ...[-1, -1, 1, 1].map((sign) => sign / Math.sqrt(5)), 1, 1].forEach((x, at) => {
      curvePlans.absolute(places[at], x, 0.5e-4, "-");
    });
  });

  it("a cubic on -1 to 1: the ends and ±1/√5, runs alike (Guest 1958)", () => {
    const candidates = [-1, -0.6, -1 / Math.sqrt(5), -0.3, 0, 0.3, 1 / Math.sqrt(5), 0.6, 1].map((x) => [x]);
    const model = termsModel({ factors: ["x"], terms: ["1", "x", "x^2", "x^3"] });
    const { points } = optimalDesign({ candidates, model, runs: 8 });
    expect(points.flat()).toEqual([-1, -1, ...[-1, -1, 1, 1].map((sign) => sign / Math.sqrt(5)), 1, 1]);
  });
});

/**
 * ln |XᵀX|, mean and greatest xᵀ(XᵀX)⁻¹x over the grid of three levels a factor, of the full quadratic, made by R 4.2.2 with
 * `plan/r-determinants.R`, which builds the points itself; twelve digits are stored.
 */
describe("designQuality beside R", () => {
  it.each(Object.entries(witness))("%s", (name, { logDet, average, largest }) => {
    const k = Number(name.at(-1));
    const points = name.startsWith("bbd")
      ? boxBehnken({ factors: k })
      : centralComposite({ factors: k, centres: [4, 2] }).points;
    const region = fullFactorial({ levels: Array.from({ length: k }, () => 3) });
    const found = designQuality({ points, model: quadratic(k), region });
    quality.absolute(found.logDeterminant, logDet, 0.5e-9, "-");
    quality.absolute(found.averageVariance, average, 0.5e-10, "-");
    quality.absolute(found.largestVariance, largest, 0.5e-9, "-");
  });
});
