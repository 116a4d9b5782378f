import { describe, expect, test } from "vitest";
import { freezingTimePham } from "../../../../kernel-lib/library/src/heat/formulas/freezing-time-pham";
import { freezeToCut } from "../../../../kernel-lib/library/src/heat/freezing/freeze-to-cut";
import { valueAt } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { foods } from "../foods";

const food = foods.reference;
const pan = { food, thicknessMm: 10, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 };

describe("freezeToCut", () => {
  test("at its times the slab is at its limits", () => {
    const found = freezeToCut(pan);
    expect(valueAt(found.run, "meanC", found.firm.timeMin)).toBeCloseTo(-3, 6);
    expect(valueAt(found.run, "coreC", found.hardThrough?.timeMin as number)).toBeCloseTo(-10, 6);
    expect(found.firm.earliestMin).toBeLessThan(found.firm.timeMin);
    expect(found.firm.latestMin).toBeGreaterThan(found.firm.timeMin);
    expect(found.limitsFrom).toBe("common practice, no source");
    expect(found.notes[0]).toContain("common practice without a source");
  });

  test("hard through agrees with Pham's formula for a slab with equal faces, within 3 %", () => {
    const even = { food, thicknessMm: 25, airC: -18, coefficientWm2K: 25, startC: 5 };
    const pham = freezingTimePham(even).timeMin;
    const found = freezeToCut({ ...even, hardThroughC: -10 }).hardThrough?.timeMin as number;
    expect(Math.abs(found / pham - 1)).toBeLessThan(0.03);
  });

  test("a thick slab in a fierce freezer is brittle outside before it is firm inside, and is told to temper", () => {
    const found = freezeToCut({ ...pan, thicknessMm: 40, airC: -35, coefficientWm2K: 120, coefficientBelowWm2K: 120 });
    expect(found.cutsOnTheWay).toBe(false);
    expect(found.notes.join(" ")).toContain("freeze it hard, then temper");
  });

  test("slabs that touch freeze as one thick slab", () => {
    const one = freezeToCut(pan).firm.timeMin;
    const two = freezeToCut({ ...pan, touching: 2 }).firm.timeMin;
    expect(two / one).toBeGreaterThan(1.9);
    expect(two / one).toBeLessThan(2.6);
  });

  test("a gentle freezer that never hardens the core says so", () => {
    const found = freezeToCut({ ...pan, airC: -9 });
    expect(found.hardThrough).toBeUndefined();
    expect(found.notes.join(" ")).toContain("At -9 °C (16 °F) the freezer cannot take the core to -10 °C (14 °F).");
  });

  test("air that cannot firm the slab is refused with what its mean tends to", () => {
    expect(() => freezeToCut({ ...pan, airC: -2 })).toThrow(
      "must be below -3 °C to firm the slab; its mean tends to -2 °C",
    );
    expect(() => freezeToCut({ ...pan, startC: -5 })).toThrow("from the freezing point up");
    expect(() => freezeToCut({ ...pan, limits: { softAboveC: -3, brittleBelowC: -2 } })).toThrow(
      "must be below softAboveC",
    );
    expect(() => freezeToCut({ ...pan, limits: { softAboveC: -0.5, brittleBelowC: -6 } })).toThrow(
      "below the mix's freezing point",
    );
  });

  test("brittle is when the coldest place of the middle passes the limit, between the rows of the run", () => {
    const found = freezeToCut({ ...pan, thicknessMm: 40, airC: -35, coefficientWm2K: 120, coefficientBelowWm2K: 120 });
    const { run, brittle, limits } = found;
    const coldest = run.profile.temperatureC.map((row) => Math.min(...row));
    const after = coldest.findIndex((temperatureC) => temperatureC <= limits.brittleBelowC);
    expect(after).toBeGreaterThan(0);
    const share = (brittle!.timeMin - run.timeMin[after - 1]) / (run.timeMin[after] - run.timeMin[after - 1]);
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1);
    expect(coldest[after - 1] + share * (coldest[after] - coldest[after - 1])).toBeCloseTo(limits.brittleBelowC, 8);
    expect(brittle!.earliestMin).toBeLessThan(brittle!.timeMin);
    expect(brittle!.latestMin).toBeGreaterThan(brittle!.timeMin);
  });

  test("where no part ever is brittle there is no such time, and the note says so; elsewhere neither", () => {
    const limits = { softAboveC: -3, brittleBelowC: -9 };
    const gentle = freezeToCut({ ...pan, airC: -8, limits });
    expect(gentle.brittle).toBeUndefined();
    expect(gentle.cutsOnTheWay).toBe(true);
    expect(gentle.notes.join(" ")).toContain("No part gets colder than -9 °C (16 °F) by the end of the run.");
    const cold = freezeToCut({ ...pan, limits });
    expect(cold.brittle!.timeMin).toBeGreaterThan(cold.firm.timeMin);
    expect(cold.cutsOnTheWay).toBe(true);
    expect(cold.notes.join(" ")).not.toContain("No part gets colder");
  });

  test("slabs touch in whole numbers, from one", () => {
    for (const touching of [0, 1.5, -2]) {
      expect(() => freezeToCut({ ...pan, touching })).toThrow(
        `freezeToCut: touching must be a whole number from 1, got ${touching}`,
      );
    }
  });

  test("a core within half a degree of the air is never hard through", () => {
    expect(freezeToCut({ ...pan, airC: -10.5 }).hardThrough).toBeUndefined();
    expect(freezeToCut({ ...pan, airC: -10.6 }).hardThrough!.timeMin).toBeGreaterThan(0);
  });

  test("limits of one's own are not called common practice, and air at the limit does not firm a slab", () => {
    const own = freezeToCut({ ...pan, limits: { softAboveC: -3, brittleBelowC: -9 } });
    expect(own.limitsFrom).toBe("caller");
    expect(own.notes.join(" ")).not.toContain("common practice");
    expect(() => freezeToCut({ ...pan, airC: -3 })).toThrow("must be below -3 °C to firm the slab");
    expect(() => freezeToCut({ ...pan, limits: { softAboveC: food.freezingPointC, brittleBelowC: -6 } })).toThrow(
      "below the mix's freezing point",
    );
  });
});
