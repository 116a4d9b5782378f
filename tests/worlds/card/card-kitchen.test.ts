import { describe, expect, it } from "vitest";
import { COURSE_RANGE } from "../plan/course";
import { cardKitchen } from "./card-kitchen";
import { cardLog } from "./card-log";

const kitchens = Array.from({ length: 120 }, (_, seed) => cardKitchen(seed));

describe("cardKitchen", () => {
  it("is the same for the same seed, and many kinds over many", () => {
    expect(cardKitchen(3).setting).toEqual(kitchens[3].setting);
    expect(cardKitchen(3).plan.world.scatter).toEqual(kitchens[3].plan.world.scatter);
    const of = <T>(kind: (kitchen: (typeof kitchens)[number]) => T): number => new Set(kitchens.map(kind)).size;
    expect(of(({ plan }) => plan.world.seed)).toBe(16);
    expect(of(({ habits }) => habits.tidy)).toBe(2);
    expect(of(({ habits }) => habits.trials)).toBe(21);
    expect(of(({ plan }) => plan.world.scatter.run)).toBe(120);
    expect(Math.min(...kitchens.map(({ habits }) => habits.trials))).toBe(4);
  });

  it("stays where the courses were simulated, its thickest logged slab and its other setpoints too", () => {
    for (const { setting, plan } of kitchens) {
      const { product } = plan.world;
      expect(1.2 * setting.thicknessMm).toBeLessThan(COURSE_RANGE.thickness[1] * product.thicknessMm);
      expect(0.82 * setting.thicknessMm).toBeGreaterThan(COURSE_RANGE.thickness[0] * product.thicknessMm);
      expect(Math.abs(setting.setpointC - product.setpointC) + 12).toBeLessThanOrEqual(COURSE_RANGE.setpointK);
      expect(setting.loadFraction).toBeGreaterThanOrEqual(COURSE_RANGE.load[0]);
      expect(setting.loadFraction + 0.15).toBeLessThanOrEqual(COURSE_RANGE.load[1]);
    }
  });
});

describe("cardLog", () => {
  it("keeps as many trials as the kitchen does, looked at until crisp, and read as its habits are", () => {
    const logs = kitchens.slice(0, 12).map((kitchen) => [kitchen, cardLog(kitchen)] as const);
    for (const [kitchen, log] of logs) {
      expect(log.length).toBe(kitchen.habits.trials);
      for (const { looksMin, timeMin, crispMin, notCrispMin } of log) {
        expect(looksMin.every((look) => look > 0 && look < timeMin)).toBe(true);
        if (crispMin !== null && notCrispMin !== null) expect(crispMin).toBeGreaterThan(notCrispMin);
      }
      if (kitchen.habits.tidy) expect(log.every(({ outCoreC }) => outCoreC !== null)).toBe(true);
    }
    const sloppy = logs.filter(([{ habits }]) => !habits.tidy).flatMap(([, log]) => log);
    expect(sloppy.some(({ outCoreC }) => outCoreC === null)).toBe(true);
    expect(sloppy.every(({ probesMm }) => probesMm.length === 2)).toBe(true);
    expect(sloppy.every(({ outCoreC }) => outCoreC === null || Number.isInteger(outCoreC))).toBe(true);
    expect(cardLog(kitchens[0])).toEqual(logs[0][1]);
  });
});
