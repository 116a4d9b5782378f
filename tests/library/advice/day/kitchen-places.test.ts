import { kitchenPlaces, recoveryMin } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { describe, expect, test } from "vitest";

const kitchen = loadKitchen();
const bare = { ...kitchen, day: {}, traces: [] };
const halfSheet = kitchen.pans.filter(({ id }) => id === "half-sheet");

describe("kitchenPlaces", () => {
  test("a call goes before the kitchen's file, and the file before what is usual", () => {
    const day = { hands: 3, opens: "7:00", freezerC: -22, minutes: { cut: 5 } };
    const own = { ...bare, day };
    const places = kitchenPlaces({ kitchen: own, given: { hands: 1, minutes: { mix: 9 } }, where: "test" });
    expect(places).toMatchObject({ hands: 1, opensMin: 420, closesMin: 1020, freezerC: -22 });
    expect(places.minutes).toMatchObject({ cut: 5, mix: 9, spread: 8 });
    expect(places.standIns).toMatch(
      /Not said, and so as usual \(our judgement\): 4 places in the freezer, a freezer that takes away 80 W/,
    );
    expect(places.standIns).not.toMatch(/hands/);
  });

  test("places follow from shelves and pans, upwards as far as the clear height lets them", () => {
    const shelf = { shelf: { lengthMm: 900, widthMm: 460 }, shelves: 2 };
    const places = (more: object) =>
      kitchenPlaces({ kitchen: bare, given: { ...shelf, ...more }, pans: halfSheet, where: "test" });
    // a half sheet with its rim is 441 by 314 mm: two side by side, and pans of 25 mm every 55 mm
    expect(places({ shelfClearMm: 210 })).toMatchObject({ freezerPlaces: 4, stackUpTo: 3 });
    expect(places({})).toMatchObject({ freezerPlaces: 4, stackUpTo: 1 });
    expect(places({ shelfClearMm: 210, stackUpTo: 2 }).stackUpTo).toBe(2);
    expect(places({ freezerPlaces: 7 }).freezerPlaces).toBe(7);
  });

  test("a logged pull-down stands for what the freezer removes, surer than a guess", () => {
    const pullDown = { waterKg: 2, fromC: 15, toC: -10, minutes: 300 };
    const logged = kitchenPlaces({ kitchen: bare, given: { pullDown }, where: "test" });
    expect(logged.freezerRemovesW).toBeCloseTo(46.3, 1);
    expect(logged.removesError).toBeLessThan(kitchenPlaces({ kitchen: bare, where: "test" }).removesError);
    expect(logged.standIns).not.toMatch(/takes away/);
  });

  test("what is said is in the kitchen's own units", () => {
    expect(kitchenPlaces({ kitchen: { ...bare, units: "us" }, where: "test" }).standIns).toMatch(
      /freezer air at 0 °F \(-18 °C\).*22 lb/,
    );
  });
});

describe("recoveryMin", () => {
  const trial = kitchen.trials.find(
    ({ applianceId }) => applianceId === "small-basket",
  ) as (typeof kitchen.trials)[number];
  const withAir = (air: readonly number[]) => ({
    trials: kitchen.trials,
    traces: [
      {
        trialId: trial.trialId,
        trace: {
          ...kitchen.traces[0].trace,
          timeMin: air.map((_, at) => at),
          channels: [{ name: "air", temperatureC: air.map((below) => trial.setpointC - below) }],
        },
      },
    ],
  });

  test("is when the air is back within 5 K of the setting, and stays", () => {
    expect(recoveryMin(withAir([0, 30, 20, 8, 3, 1, 0]), "small-basket")).toBe(4);
    expect(recoveryMin(withAir([2, 1, 3, 2]), "small-basket")).toBe(0);
    expect(recoveryMin(withAir([0, 30, 3, 9, 4, 0]), "small-basket")).toBe(4);
  });

  test("no file, another appliance, or air that never came back tell nothing", () => {
    expect(recoveryMin({ trials: kitchen.trials, traces: [] }, "small-basket")).toBeNull();
    expect(recoveryMin(withAir([0, 30, 3]), "fan-oven")).toBeNull();
    expect(recoveryMin(withAir([30, 30, 30]), "small-basket")).toBeNull();
  });
});
