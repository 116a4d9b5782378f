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
