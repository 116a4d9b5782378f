import { expect, test } from "vitest";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import {
  edgeShare,
  simulateEdgesIfTheyCount,
} from "../../../../kernel-lib/library/src/heat/solver/simulate-edges-if-they-count";
import { simulatePiece } from "../../../../kernel-lib/library/src/heat/solver/simulate-piece";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { foods } from "../foods";

const food = foods.reference;

test("the estimate of what edges do lies above what the two solvers show", () => {
  for (const cooling of [false, true])
    for (const coefficientWm2K of [15, 100])
      for (const thicknessMm of [8, 25])
        for (const ratio of [2, 4]) {
          const air = cooling
            ? { startC: 5, airC: -18, stopCoreC: -10, endMin: 2000 }
            : { startC: -18, airC: 204, stopCoreC: 74, endMin: 300 };
          const body = { food, thicknessMm, coefficientWm2K, drying: "none", cells: 8, ...air } as const;
          const end = { column: "coreC", value: air.stopCoreC } as const;
          const sides = [ratio * thicknessMm, 1000] as const;
          const piece = timeWhen(simulatePiece({ ...body, widthMm: sides[0], lengthMm: sides[1] }), end);
          const slab = timeWhen(simulateSlab(body), end);
          const estimate = edgeShare({ food, thicknessMm, sidesMm: sides, coefficientWm2K, cooling });
          expect(1 - piece / slab).toBeLessThan(estimate);
        }
});

test("the estimate is 1.9·e^(−β·Bi^0.35) for each pair of sides, by hand, with the conductivity of what is frozen while it cools", () => {
  const body = { food, thicknessMm: 10, sidesMm: [40, 30] as const, coefficientWm2K: 98 };
  // Bi = 98·5 mm/0.49 = 1
  expect(edgeShare({ ...body, cooling: false })).toBeCloseTo(1.9 * (Math.exp(-4) + Math.exp(-3)), 9);
  const biot = (98 * 0.005) / 1.5;
  expect(edgeShare({ ...body, cooling: true })).toBeCloseTo(
    1.9 * (Math.exp(-4 * biot ** 0.35) + Math.exp(-3 * biot ** 0.35)),
    9,
  );
});

test("the weaker face decides whether edges count, cooling by the first air against the start", () => {
  const tile = { food, thicknessMm: 12.7, startC: -18, airC: 204, endMin: 1, widthMm: 110, lengthMm: 110 };
  expect(simulateEdgesIfTheyCount({ ...tile, coefficientWm2K: 40 }).body).toBe("slab");
  expect(simulateEdgesIfTheyCount({ ...tile, coefficientWm2K: 40, coefficientBelowWm2K: 5 }).body).toBe("piece");
  const freezing = { ...tile, startC: 5, coefficientWm2K: 40 };
  const share = (cooling: boolean): number =>
    edgeShare({ food, thicknessMm: 12.7, sidesMm: [110, 110], coefficientWm2K: 40, cooling });
  expect(share(false)).toBeLessThan(0.005);
  expect(share(true)).toBeGreaterThan(0.005);
  const cold = [
    { timeMin: 0, airC: -18 },
    { timeMin: 10, airC: 30 },
  ];
  for (const airC of [-18, cold]) expect(simulateEdgesIfTheyCount({ ...freezing, airC }).body).toBe("piece");
  expect(simulateEdgesIfTheyCount({ ...freezing, airC: 204 }).body).toBe("slab");
  expect(() => simulateEdgesIfTheyCount({ ...freezing, airC: 204, widthMm: 0 })).toThrow("widthMm must be > 0 mm");
});

test("it takes the slab only where that is right, and says which", () => {
  const fryer = { food, thicknessMm: 12.7, startC: -18, airC: 204, coefficientWm2K: 40, endMin: 30, stopCoreC: 74 };
  expect(simulateEdgesIfTheyCount(fryer).body).toBe("slab");
  expect(simulateEdgesIfTheyCount({ ...fryer, widthMm: 30, lengthMm: 30 }).body).toBe("piece");
  const tile = simulateEdgesIfTheyCount({ ...fryer, widthMm: 100, lengthMm: 120 });
  expect(tile.body).toBe("slab");
  const solved = simulatePiece({ ...fryer, widthMm: 100, lengthMm: 120 });
  const core = { column: "coreC", value: 74 } as const;
  expect(Math.abs(timeWhen(tile, core) / timeWhen(solved, core) - 1)).toBeLessThan(5e-3);
  expect(() => simulateEdgesIfTheyCount({ ...fryer, widthMm: 30 })).toThrow("must both be given for a piece");
});
