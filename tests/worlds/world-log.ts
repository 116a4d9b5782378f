import { seededRandom } from "slabwright/statistics";
import { type CookedTrial, cookTrial, type Session, type TrialPlan } from "./cook-trial";
import { type MomentsByTaste, momentsOfPiece } from "./setting-truth";
import { ownCut, ownSetting, TYPICAL, type World, type WorldSetting } from "./world";

/** Logs of 5, 8 and 15 trials are the first so many of one kitchen's log. */
export const LOG_SIZES = [5, 8, 15] as const;

/** Slabs that a kitchen makes, over the product's own thickness. */
const THICKER = 1.2;
const THINNER = 0.82;

interface SessionPlan {
  readonly thickness: number;
  readonly trials: readonly {
    readonly way: TrialPlan["way"];
    readonly other?: Partial<Pick<WorldSetting, "setpointC" | "loadFraction" | "applianceId">>;
  }[];
}

/** What a kitchen does, session after session: its own slab, a thicker, a thinner, another setting, appliance and load. */
function plansOf(world: World): readonly SessionPlan[] {
  const { product } = world;
  const other = product.appliance === "basket" ? "oven" : "basket";
  return [
    { thickness: 1, trials: [{ way: "crisp" }, { way: "early" }, { way: "crisp" }] },
    { thickness: THICKER, trials: [{ way: "early" }, { way: "crisp" }] },
    { thickness: THINNER, trials: [{ way: "crisp" }, { way: "early" }, { way: "late" }] },
    {
      thickness: 1,
      trials: [
        { way: "crisp", other: { setpointC: product.setpointC - 12 } },
        { way: "crisp", other: { applianceId: other } },
        { way: "crisp", other: { loadFraction: product.loadFraction + 0.3 } },
      ],
    },
    { thickness: THICKER, trials: [{ way: "crisp" }, { way: "late" }] },
    { thickness: 1, trials: [{ way: "early" }, { way: "crisp" }] },
  ];
}

/** When a turned product is turned at a setting (min): a little past half of the time to crisp and hot, to the half minute. */
export function flipOf(world: World, setting: WorldSetting): number | null {
  if (!world.product.turned) return null;
  const { coreMin, crispMin } = momentsOfPiece(world, { ...setting, flipMin: null }, TYPICAL);
  return Math.round(2 * 0.55 * Math.max(coreMin, crispMin[2])) / 2;
}

/** The fifteen trials of a kitchen. */
export function worldLog(world: World): readonly CookedTrial[] {
  const random = seededRandom(world.seed + 500_000);
  const { product, scatter } = world;
  const areaMm2 = product.pan.lengthMm * product.pan.widthMm;
  const everyone = Array.from({ length: 4 }, () => ({
    lean: 0.45 * random.normal(),
    slope: Math.exp(0.1 * random.normal()),
    sd: 0.5 + 0.3 * random.uniform(),
  }));
  const known = new Map<string, readonly [WorldSetting, MomentsByTaste]>();
  const expectedAt = (base: WorldSetting): readonly [WorldSetting, MomentsByTaste] => {
    const name = JSON.stringify(base);
    const before = known.get(name);
    if (before !== undefined) return before;
    const setting = { ...base, flipMin: flipOf(world, base) };
    const expected = [setting, momentsOfPiece(world, setting, TYPICAL)] as const;
    known.set(name, expected);
    return expected;
  };
  const trials: CookedTrial[] = [];
  let day = Date.UTC(2026, 0, 5);
  for (const { thickness, trials: plans } of plansOf(world)) {
    day += 86_400_000 * (1 + random.integer(6));
    const wantedMm = product.thicknessMm * thickness;
    const slabMm = wantedMm * Math.exp(scatter.slab * random.normal());
    const session: Session = {
      date: new Date(day).toISOString().slice(0, 10),
      day: Math.exp(scatter.session * random.normal()),
      slabMm,
      coat: world.coat === null ? 1 : Math.exp(scatter.coatBatch * random.normal()),
      probesMm: Array.from({ length: 5 }, () =>
        Number((slabMm * (1 + scatter.unevenness * random.normal()) + 0.15 * random.normal()).toFixed(1)),
      ),
      batchG: Math.round((world.mix.densityKgM3 * slabMm * areaMm2) / 1e6 + random.normal()),
      tasters: everyone.slice(0, 2 + random.integer(3)),
      probeK: 0.5 * random.normal(),
    };
    for (const { way, other } of plans) {
      const base: WorldSetting = { ...ownSetting(world, null), ...ownCut(product), ...other, thicknessMm: wantedMm };
      const [setting, expected] = expectedAt(base);
      // cooks know about how long, not how long
      const guess = Math.exp(0.1 * random.normal());
      trials.push(
        cookTrial(
          world,
          session,
          { setting, way, guessMin: guess * expected.crispMin[2], guessCoreMin: guess * expected.coreMin },
          random,
        ),
      );
    }
  }
  return trials;
}
