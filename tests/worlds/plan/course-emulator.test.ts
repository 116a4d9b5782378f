import { readdirSync, statSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { storedWorlds } from "../stored-world";
import { COURSES, type CoursePlace, courseAt, restedAt } from "./course";
import { levelAt, minuteOf, rateAt, restedCore, storedCourses } from "./course-emulator";
import { planKitchen } from "./plan-ways";
import { COOLED_C, lostMin, PALED_C } from "./run-trial";

// cauliflower bites, the quickest to simulate; bare and turned
const kitchen = planKitchen(1);
const { world, stored, emulator } = kitchen;
const { levels } = emulator.courses;
const place = (over: Partial<CoursePlace> = {}): CoursePlace => ({
  coefficient: 1,
  coat: 1,
  thicknessMm: world.product.thicknessMm,
  setpointC: world.product.setpointC,
  loadFraction: world.product.loadFraction,
  ...over,
});
const PLACES = [
  place(),
  place({ coefficient: 0.87, thicknessMm: 0.8 * world.product.thicknessMm }),
  place({ coefficient: 1.12, thicknessMm: 1.28 * world.product.thicknessMm, setpointC: world.product.setpointC - 9 }),
];

describe("stored courses", () => {
  it("are there for every world, small", () => {
    const folder = new URL("courses/", import.meta.url);
    const files = readdirSync(folder);
    expect(files.sort()).toEqual(
      storedWorlds()
        .map(({ product, seed }) => `${product}-${seed}.json`)
        .sort(),
    );
    expect(files.reduce((sum, name) => sum + statSync(new URL(name, folder)).size, 0)).toBeLessThan(1e6);
  });

  it("come out the same when one is made anew", () => {
    const { pieces } = storedCourses(stored.product, stored.seed);
    const anew = courseAt(world, stored, levels, pieces[3].place);
    for (const of of COURSES)
      for (const [at, minute] of anew[of].entries())
        if (minute !== null) expect(Math.abs((pieces[3].minutes[of][at] as number) / minute - 1)).toBeLessThan(1e-4);
  });
});

describe("courseEmulator", () => {
  it("is within 2 % of fresh simulations, and half a per cent at half of the levels; the faintest browning, score 0.5, apart", () => {
    const errors = PLACES.flatMap((each) => {
      const [real, near] = [courseAt(world, stored, levels, each), emulator.minutesAt(each)];
      return COURSES.flatMap((of) =>
        real[of].flatMap((minute, at) =>
          minute === null || (of === "brownScore" && at === 0) ? [] : [Math.abs(near[of][at] / minute - 1)],
        ),
      );
    }).sort((one, other) => one - other);
    expect(errors.length).toBeGreaterThan(100);
    expect(errors[errors.length - 1]).toBeLessThan(0.02);
    expect(errors[errors.length >> 1]).toBeLessThan(0.005);
  });

  it("has the core at taking out to 1 K and at its highest to 2.5 K, and the loss a minute later to half a point", () => {
    for (const [at, timeMin] of [6.5, 5, 9].entries()) {
      const each = PLACES[at];
      const real = restedAt(world, stored, each, timeMin);
      const near = emulator.minutesAt(each);
      const { outC, restedC } = restedCore(emulator.after, {
        coreC: levelAt(levels.coreC, near.coreC, timeMin),
        rateKMin: rateAt(levels.coreC, near.coreC, timeMin),
        thicker: each.thicknessMm / world.product.thicknessMm,
      });
      expect(Math.abs(outC - real.outC)).toBeLessThan(1);
      expect(Math.abs(restedC - real.restedC)).toBeLessThan(2.5);
      const weighed = levelAt(levels.lossPercent, near.lossPercent, timeMin + emulator.after.lossMin);
      expect(Math.abs(weighed - real.weighedPercent)).toBeLessThan(0.5);
    }
  });

  it("agrees with the stored truth about the typical piece of the own setting, to 2 %", () => {
    for (const at of [1, 2, 13]) {
      const other = planKitchen(at);
      const { typical } = other.stored.settings[0].truth;
      const minutes = other.emulator.minutesAt({
        ...place(),
        thicknessMm: other.world.product.thicknessMm,
        setpointC: other.world.product.setpointC,
        loadFraction: other.world.product.loadFraction,
      });
      const { dryMm, brownRate } = other.emulator.courses.levels;
      expect(Math.abs(minuteOf(dryMm, minutes.dryMm, other.world.crispMm) / typical.crispMin - 1)).toBeLessThan(0.02);
      expect(Math.abs(minuteOf(brownRate, minutes.brownRate, 1) / typical.brownMin - 1)).toBeLessThan(0.02);
    }
  });
});

describe("lostMin", () => {
  it("is what looks cost in a fresh simulation, to an eighth of a minute", () => {
    const { crispMin } = stored.settings[0].truth.typical;
    const looksMin = [0.5, 0.7].map((part) => part * crispMin);
    const plain = courseAt(world, stored, levels, place());
    const looked = courseAt(
      world,
      stored,
      levels,
      place(),
      looksMin.map((look) => 60 * look),
    );
    const later = (of: "coreC" | "dryMm" | "lossPercent" | "brownRate", level: number): number =>
      (looked[of][level] as number) - (plain[of][level] as number);
    const lost = (surfaceC: number): number => lostMin(kitchen, { place: place(), looksMin, minute: 99, surfaceC });
    expect(lost(COOLED_C)).toBeGreaterThan(0.3);
    for (const [of, level] of [
      ["coreC", 8],
      ["dryMm", 8],
      ["lossPercent", 7],
    ] as const)
      expect(Math.abs(later(of, level) - lost(COOLED_C))).toBeLessThan(0.125);
    expect(Math.abs(later("brownRate", 2) - lost(PALED_C))).toBeLessThan(0.125);
  });
});
