import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { formulaComposition, mixDensity, parseIngredients } from "slabwright/food";
import { seededRandom } from "slabwright/statistics";
import { PRODUCTS, type Product } from "./products";
import { settingTruth } from "./setting-truth";
import { type StoredWorld, TRANSFERS, type Transfer } from "./stored-world";
import { cutOf, drawWorld, ownCut, ownSetting, type World, type WorldSetting } from "./world";
import { flipOf, worldLog } from "./world-log";

/** Worlds a product. */
export const SEEDS = [1, 2] as const;

/** The seed of a product's world. */
export const seedOf = (product: Product, seed: number): number => 1000 * (PRODUCTS.indexOf(product) + 1) + seed;

/** Pans on which a whole batch lies thicker, and the settings that are asked of a world. */
export function transfersOf(world: World): {
  readonly pans: StoredWorld["pans"];
  readonly settings: readonly { readonly transfer: Transfer; readonly setting: WorldSetting }[];
} {
  const random = seededRandom(world.seed + 900_000);
  const draw = (low: number, high: number): number => low + (high - low) * random.uniform();
  const { product } = world;
  const own = ownSetting(world, null);
  const smaller = (id: string, thicker: number): StoredWorld["pans"][number] => ({
    id,
    lengthMm: Math.round(product.pan.lengthMm / Math.sqrt(thicker)),
    widthMm: Math.round(product.pan.widthMm / Math.sqrt(thicker)),
  });
  const pans = [smaller("smaller", draw(1.27, 1.73)), smaller("much-smaller", draw(1.9, 2.3))];
  const onPan = (pan: (typeof pans)[number]): WorldSetting => ({
    ...own,
    ...cutOf(pan, ownCut(product)),
    thicknessMm: Number(
      ((product.thicknessMm * product.pan.lengthMm * product.pan.widthMm) / (pan.lengthMm * pan.widthMm)).toFixed(2),
    ),
  });
  const scaled = (by: number): WorldSetting => ({ ...own, lengthMm: own.lengthMm * by, widthMm: own.widthMm * by });
  const settings: readonly (readonly [Transfer, WorldSetting])[] = [
    ["own", own],
    ["between", { ...own, thicknessMm: Number((product.thicknessMm * draw(1.06, 1.14)).toFixed(2)) }],
    ["smaller pan", onPan(pans[0])],
    ["much smaller pan", onPan(pans[1])],
    ["hotter", { ...own, setpointC: own.setpointC + 15 }],
    ["cooler", { ...own, setpointC: own.setpointC - 15 }],
    ["smaller piece", scaled(draw(0.6, 0.75))],
    ["bigger piece", scaled(draw(1.35, 1.7))],
    ["another load", { ...own, loadFraction: Number((own.loadFraction + draw(0.35, 0.45)).toFixed(2)) }],
  ];
  return {
    pans,
    settings: settings.map(([transfer, setting]) => ({
      transfer,
      setting: { ...setting, flipMin: flipOf(world, setting) },
    })),
  };
}

/** One world, made anew, as it is stored; `only` names the transfers to work out. */
export function makeWorld(product: Product, seed: number, only: readonly Transfer[] = TRANSFERS): StoredWorld {
  const world = drawWorld(product, seedOf(product, seed));
  const { pans, settings } = transfersOf(world);
  const ingredients = parseIngredients(
    readFileSync(new URL("../../data/ingredients.csv", import.meta.url), "utf8"),
    "ingredients.csv",
  );
  const composition = formulaComposition(product.formula, ingredients);
  const made: StoredWorld = {
    product: product.id,
    seed,
    densityKgM3: Number(
      mixDensity(composition, { temperatureC: 5, airFraction: product.formula.airFraction }).toFixed(1),
    ),
    floorsCm2: { basket: world.appliances[0].floorCm2, oven: world.appliances[1].floorCm2 },
    pans,
    tooDryPercent: world.tooDryPercent,
    trials: worldLog(world),
    settings: settings
      .filter(({ transfer }) => only.includes(transfer))
      .map((each) => ({
        ...each,
        truth: settingTruth(world, each.setting, world.seed + 100_000 * (1 + TRANSFERS.indexOf(each.transfer))),
      })),
  };
  return JSON.parse(storedText(made)) as StoredWorld;
}

/** Seven digits are enough of anything here. */
function storedText(world: StoredWorld): string {
  return `${JSON.stringify(world, (_, value) => (typeof value === "number" ? Number(value.toPrecision(7)) : value))}\n`;
}

/** Makes the worlds whose product's name holds a word (all without one) and writes them to `truth/`. */
export function makeWorlds(word = "", tell: (line: string) => void = () => {}): void {
  mkdirSync(new URL("truth/", import.meta.url), { recursive: true });
  for (const product of PRODUCTS.filter(({ id }) => id.includes(word)))
    for (const seed of SEEDS) {
      const start = performance.now();
      const world = makeWorld(product, seed);
      const text = storedText(world);
      writeFileSync(new URL(`truth/${product.id}-${seed}.json`, import.meta.url), text);
      const worst = Math.max(...world.settings.map(({ truth }) => truth.emulatorError));
      tell(
        `${product.id} ${seed}: ${(text.length / 1000).toFixed(0)} kB, interpolation within ${(100 * worst).toFixed(2)} %, ${((performance.now() - start) / 1000).toFixed(0)} s`,
      );
    }
}
