import { readdirSync, readFileSync, statSync } from "node:fs";
import { formulaComposition, parseIngredients } from "slabwright/food";
import { describe, expect, it } from "vitest";
import { makeWorld, SEEDS, seedOf, transfersOf } from "./make-worlds";
import { PRODUCTS, type Product } from "./products";
import { emulatorErrorAt, pieceEmulator } from "./setting-truth";
import { storedWorlds, TRANSFERS } from "./stored-world";
import { drawWorld, limitOf, ownCut } from "./world";
import { worldKitchen } from "./world-kitchen";
import { LOG_SIZES } from "./world-log";

const WORLDS = storedWorlds();
const cauliflower = PRODUCTS.find(({ id }) => id === "cauliflower-bites") as Product;

describe("stored worlds", () => {
  it("are all there, small, with every transfer", () => {
    expect(WORLDS.map(({ product, seed }) => `${product} ${seed}`).sort()).toEqual(
      PRODUCTS.flatMap(({ id }) => SEEDS.map((seed) => `${id} ${seed}`)).sort(),
    );
    for (const { settings, trials } of WORLDS) {
      expect(settings.map(({ transfer }) => transfer)).toEqual([...TRANSFERS]);
      expect(trials.length).toBe(Math.max(...LOG_SIZES));
    }
    const folder = new URL("truth/", import.meta.url);
    const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(new URL(name, folder)).size, 0);
    expect(bytes).toBeLessThan(1.5e6);
  });

  it("come out the same when a part is made anew", () => {
    const stored = WORLDS.find(({ product, seed }) => product === cauliflower.id && seed === 1);
    const anew = makeWorld(cauliflower, 1, ["own", "hotter"]);
    expect(anew.trials).toEqual(stored?.trials);
    expect(anew.pans).toEqual(stored?.pans);
    for (const made of anew.settings) {
      const kept = stored?.settings.find(({ transfer }) => transfer === made.transfer);
      expect(kept?.truth).toEqual(made.truth);
    }
  }, 300_000);

  it("interpolate between simulated pieces to 1 %, and to 1.5 % in the two settings in a hundred that are worst", () => {
    const errors = WORLDS.flatMap(({ settings }) => settings.map(({ truth }) => truth.emulatorError));
    expect(errors.filter((error) => error < 0.01).length / errors.length).toBeGreaterThan(0.98);
    expect(Math.max(...errors)).toBeLessThan(0.015);
  });

  it("hold shares that rise as they should", () => {
    for (const { settings } of WORLDS)
      for (const { truth } of settings) {
        const { timesMin, safePieces, safeLoads, good } = truth;
        for (let at = 1; at < timesMin.length; at++) {
          expect(timesMin[at]).toBeGreaterThan(timesMin[at - 1]);
          expect(safePieces[at]).toBeGreaterThanOrEqual(safePieces[at - 1]);
          expect(safeLoads[at]).toBeGreaterThanOrEqual(safeLoads[at - 1]);
        }
        // a load is safe less often than a piece, and nothing is good that is not safe
        expect(safeLoads.every((share, at) => share <= safePieces[at] + 1e-4)).toBe(true);
        expect(good.every((share, at) => share <= safePieces[at] + 1e-4)).toBe(true);
      }
  });

  it("lie from the logs as the transfers say", () => {
    for (const world of WORLDS) {
      const product = PRODUCTS.find(({ id }) => id === world.product) as Product;
      const setting = (name: (typeof TRANSFERS)[number]) =>
        (world.settings.find(({ transfer }) => transfer === name) as (typeof world.settings)[number]).setting;
      const thicker = (name: (typeof TRANSFERS)[number]): number => setting(name).thicknessMm / product.thicknessMm;
      const logged = world.trials.map(({ probesMm }) => probesMm.reduce((sum, mm) => sum + mm, 0) / probesMm.length);
      expect(setting("between").thicknessMm).toBeGreaterThan(Math.min(...logged.slice(0, 5)));
      expect(setting("between").thicknessMm).toBeLessThan(Math.max(...logged.slice(0, 5)));
      expect(thicker("smaller pan")).toBeGreaterThan(1.26);
      expect(thicker("smaller pan")).toBeLessThan(1.74);
      expect(thicker("much smaller pan")).toBeGreaterThan(1.85);
      expect(setting("smaller piece").lengthMm).toBeLessThan(0.8 * ownCut(product).lengthMm);
      expect(setting("bigger piece").lengthMm).toBeGreaterThan(1.3 * ownCut(product).lengthMm);
    }
  });

  it("are read as kitchens, whatever the log's length", () => {
    for (const world of WORLDS)
      for (const size of LOG_SIZES) {
        const kitchen = worldKitchen(world, size);
        expect(kitchen.trials.length).toBe(size);
        expect(kitchen.variants[0].variantId).toBe(world.product);
        // a full log tells the core at taking out from the rested one
        expect(kitchen.trials.every(({ restedCoreC }) => (restedCoreC !== null) === (world.seed === 2))).toBe(true);
      }
  });
});

describe("logs of the worlds", () => {
  it("have read the core below and above its limit, and seen crisp between two looks", () => {
    for (const world of WORLDS) {
      const { limitC } = limitOf(PRODUCTS.find(({ id }) => id === world.product) as Product);
      expect(world.trials.filter(({ restedCoreC }) => restedCoreC < limitC).length).toBeGreaterThanOrEqual(2);
      expect(world.trials.filter(({ restedCoreC }) => restedCoreC > limitC).length).toBeGreaterThanOrEqual(3);
      expect(
        world.trials.filter(({ crispMin, notCrispMin }) => crispMin !== null && notCrispMin !== null).length,
      ).toBeGreaterThanOrEqual(6);
      for (const { outCoreC, restedCoreC } of world.trials) expect(restedCoreC).toBeGreaterThanOrEqual(outCoreC);
    }
    const gains = WORLDS.flatMap(({ trials }) => trials.map((trial) => trial.restedCoreC - trial.outCoreC));
    expect(Math.max(...gains)).toBeGreaterThan(2);
  });
});

describe("products of the worlds", () => {
  const ingredients = parseIngredients(
    readFileSync(new URL("../../data/ingredients.csv", import.meta.url), "utf8"),
    "ingredients.csv",
  );

  it("are what their formulas say, to three points", () => {
    for (const { formula, parts } of PRODUCTS) {
      const mix = formulaComposition(formula, ingredients);
      expect(Object.values(parts).reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 6);
      expect(Math.abs(mix.waterFraction - parts.water)).toBeLessThan(0.03);
      expect(Math.abs(mix.proteinFraction - parts.protein)).toBeLessThan(0.03);
      expect(Math.abs(mix.fatFraction - parts.fat)).toBeLessThan(0.03);
    }
  });

  it("have the core limit that the library holds them to", () => {
    for (const world of WORLDS) {
      const product = PRODUCTS.find(({ id }) => id === world.product) as Product;
      const { limitC, holdS } = worldKitchen(world, 5).variants[0].limit;
      expect(limitOf(product)).toEqual({ limitC, holdS });
    }
  });
});

describe("pieceEmulator", () => {
  it("is within 1 % of pieces that it was not made from", () => {
    const world = drawWorld(cauliflower, seedOf(cauliflower, 2));
    const { setting } = transfersOf(world).settings[0];
    expect(emulatorErrorAt(world, setting, pieceEmulator(world, setting), 6, 99)).toBeLessThan(0.01);
  }, 120_000);
});
