import { seededRandom } from "slabwright/statistics";
import { seedOf } from "../make-worlds";
import { type CourseEmulator, courseEmulator, storedCourses } from "../plan/course-emulator";
import type { PlanKitchen } from "../plan/run-trial";
import { PRODUCTS, type Product } from "../products";
import { type StoredWorld, storedWorlds } from "../stored-world";
import { drawScatter, drawWorld, type World, type WorldSetting } from "../world";

/** How a kitchen keeps its log. */
export interface LogHabits {
  /** trials logged, 4 to 24 */
  readonly trials: number;
  /**
   * tidy: mornings of planned thicknesses, every core read in the thickest piece, looks written down; sloppy: whatever came up, one
   * thickness now and then, some cores unread, read in any piece and beside its core, to the whole degree, looks not written down
   */
  readonly tidy: boolean;
}

/** A kitchen that asks for a card, and all that is true of it. */
export interface CardKitchen {
  readonly plan: PlanKitchen;
  readonly setting: WorldSetting;
  readonly habits: LogHabits;
}

/** Ranges that a kitchen of a stored world is drawn from (factors, K, shares); ours. */
const RANGE = {
  /** appliance and place of the kitchen, on the world's own coefficient */
  coefficient: [0.9, 1.12],
  coat: [0.88, 1.14],
  thicker: [0.85, 1.18],
  setpointK: [-10, 10],
  load: [0.3, 0.8],
  trials: [4, 24],
} as const;

const known = new Map<string, { readonly world: World; readonly emulator: CourseEmulator }>();

function simulated(stored: StoredWorld): { readonly world: World; readonly emulator: CourseEmulator } {
  const name = `${stored.product} ${stored.seed}`;
  const before = known.get(name);
  if (before !== undefined) return before;
  const product = PRODUCTS.find(({ id }) => id === stored.product) as Product;
  const made = {
    world: drawWorld(product, seedOf(product, stored.seed)),
    emulator: courseEmulator(storedCourses(stored.product, stored.seed), product),
  };
  known.set(name, made);
  return made;
}

/**
 * Draws a kitchen: one of the stored worlds with an appliance, coat, scatter and cost of looks of its own (the ranges of `drawWorld`;
 * coefficient and coat by the factors above), and a setting, a log length and habits.
 */
export function cardKitchen(seed: number): CardKitchen {
  const random = seededRandom(7_000_000 + seed);
  const draw = ([low, high]: readonly [number, number]): number => low + (high - low) * random.uniform();
  const worlds = storedWorldsOnce();
  const stored = worlds[random.integer(worlds.length)];
  const { world, emulator } = simulated(stored);
  const coefficient = draw(RANGE.coefficient);
  const coat = world.coat === null ? 1 : draw(RANGE.coat);
  const own: World = {
    ...world,
    coat: world.coat === null ? null : { ...world.coat, mm: world.coat.mm * coat },
    appliances: world.appliances.map((appliance) => ({
      ...appliance,
      lookDropK: draw(appliance.id === "basket" ? [35, 70] : [25, 50]),
      lookRecoveryS: draw([25, 50]),
    })),
    scatter: drawScatter((low, high) => draw([low, high])),
  };
  const { setting } = stored.settings[0];
  const tidy = random.uniform() < 0.5;
  return {
    plan: {
      // a full log tells looks, slab and session: even seeds keep one
      stored: { ...stored, pans: [], seed: tidy ? 2 : 1 },
      world: own,
      emulator: {
        ...emulator,
        minutesAt: (place) =>
          emulator.minutesAt({ ...place, coefficient: coefficient * place.coefficient, coat: coat * place.coat }),
      },
      seed: 20_000 + seed,
    },
    setting: {
      ...setting,
      thicknessMm: Number((setting.thicknessMm * draw(RANGE.thicker)).toFixed(1)),
      setpointC: Math.round(setting.setpointC + draw(RANGE.setpointK)),
      loadFraction: Number(draw(RANGE.load).toFixed(2)),
    },
    habits: { trials: Math.round(draw(RANGE.trials)), tidy },
  };
}

let stock: readonly StoredWorld[] | null = null;

function storedWorldsOnce(): readonly StoredWorld[] {
  stock ??= storedWorlds();
  return stock;
}
