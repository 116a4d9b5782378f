import { type SeededRandom, seededRandom } from "slabwright/statistics";
import type { Taster } from "../cook-trial";
import type { StoredWorld } from "../stored-world";
import { CRISP_SCORE, limitOf, type TrueAppliance, type World } from "../world";
import type { LoggedTrial } from "../world-kitchen";
import { type CoursePlace, courseFlip } from "./course";
import { type CourseEmulator, levelAt, restedCore } from "./course-emulator";

/** A trial that somebody asks a kitchen for. */
export interface AskedTrial {
  readonly thicknessMm: number;
  readonly setpointC: number;
  readonly loadFraction: number;
  /** taken out then (min), and looked at before */
  readonly timeMin: number;
  readonly looksMin: readonly number[];
  /** read the core */
  readonly probe: boolean;
  /** thickness of the piece that is probed over its slab's mean, in spreads; the thickest of a few unless given */
  readonly probedThicker?: number;
}

/** A kitchen that runs what it is asked for. */
export interface PlanKitchen {
  readonly world: World;
  readonly stored: StoredWorld;
  readonly emulator: CourseEmulator;
  /** of its scatter: day, run, slab, panel */
  readonly seed: number;
}

/** Trials of one morning share the day, who tastes, and the probe; those of one thickness its slab. */
export const TRIALS_A_MORNING = 3;

// as in `cookTrial`
const CHECK_SD = 0.35;
const PROBE_SD_K = 0.7;
const PROBE_OFF_SD = 1;
const REST_MIN = 2;

/** Runs one more trial: the course of its pieces with the scatter of day, slab, run and place, looked at, probed, weighed and tasted. */
export function runTrial(kitchen: PlanKitchen, before: readonly LoggedTrial[], asked: AskedTrial): LoggedTrial {
  const { world, stored } = kitchen;
  const { scatter, product } = world;
  const at = before.length;
  const { date, tasters, day, probeK } = morningOf(kitchen, Math.floor(at / TRIALS_A_MORNING));
  const own = seededRandom(1000 * kitchen.seed + at);
  // the same slab for the same thickness in a morning
  const slabOf = before.find((trial) => trial.date === date && trial.note === noteOf(asked));
  const slabAt = slabOf === undefined ? at : before.indexOf(slabOf);
  const slab = slabOfTrial(kitchen, asked, slabAt);
  const run = day * Math.exp(scatter.run * own.normal());
  const place: CoursePlace = {
    coefficient: run,
    coat: slab.coat,
    thicknessMm: slab.slabMm,
    setpointC: asked.setpointC,
    loadFraction: asked.loadFraction,
  };
  const { timeMin } = asked;
  const looksMin = asked.looksMin.filter((look) => look > 0 && look < timeMin);
  const effective = (minute: number, surfaceC = COOLED_C): number =>
    minute - lostMin(kitchen, { place, looksMin, minute, surfaceC });
  const read = readerOf(kitchen, place);
  let notCrispMin: number | null = null;
  let crispMin: number | null = null;
  const seen = seededRandom(1000 * kitchen.seed + at + 500);
  for (const lookMin of [...looksMin, timeMin]) {
    const judged = read.crispScore(effective(lookMin)) + CHECK_SD * seen.normal();
    if (crispMin === null && judged >= CRISP_SCORE) crispMin = lookMin;
    else if (crispMin === null) notCrispMin = lookMin;
  }
  const outMin = effective(timeMin);
  const thickest = readerOf(kitchen, {
    ...place,
    thicknessMm: slab.slabMm * (1 + (asked.probedThicker ?? 1.1) * scatter.unevenness),
    coefficient: run * Math.exp(0.5 * scatter.place * own.normal()),
  });
  const off = PROBE_OFF_SD * own.normal();
  const misreads = probeK + PROBE_SD_K * own.normal();
  const core = thickest.core(outMin, off);
  const floorMm2 = 100 * (world.appliances.find(({ id }) => id === product.appliance) as TrueAppliance).floorCm2;
  const { lengthMm, widthMm } = stored.settings[0].setting;
  const pieces = Math.min(12, Math.max(2, Math.round((asked.loadFraction * floorMm2) / (lengthMm * widthMm))));
  const coatKg = world.coat === null ? 0 : world.coat.mm * slab.coat * world.coat.material.densityKgM3;
  const faceMm2 = 2 * (lengthMm * widthMm + slab.slabMm * (lengthMm + widthMm));
  const pieceG = (slab.slabMm * lengthMm * widthMm * world.mix.densityKgM3 + faceMm2 * coatKg) * 1e-6;
  const beforeG = pieces * pieceG * (1 + 0.01 * own.normal());
  const afterG = beforeG * (1 - read.weighedLoss(outMin) - 0.004 * own.uniform()) + 0.4 * own.normal();
  const restedCoreC = asked.probe ? tenth(core.restedC + misreads) : null;
  // nobody tastes what is not known to be safe
  const eaten = restedCoreC !== null && restedCoreC >= limitOf(product).limitC;
  const tasted = (score: number, low: number): number[] =>
    tasters.map(({ lean, slope, sd }) =>
      Math.max(low, Math.min(9, half(5 + slope * (score - 5) + lean + sd * own.normal()))),
    );
  const [crispScores, brownScores] = [
    tasted(read.crispScore(outMin), 1),
    tasted(read.brownScore(effective(timeMin, PALED_C)), 0),
  ];
  const flipMin = courseFlip(stored, { ...place, thicknessMm: asked.thicknessMm });
  return {
    date,
    slab: `S-${date}-${slabAt}`,
    applianceId: product.appliance,
    batchG: slab.batchG,
    probesMm: slab.probesMm,
    setpointC: asked.setpointC,
    loadFraction: asked.loadFraction,
    flipMin: flipMin === null || flipMin >= timeMin ? null : flipMin,
    timeMin,
    looksMin,
    notCrispMin,
    crispMin,
    outCoreC: asked.probe ? tenth(core.outC + misreads) : null,
    restedCoreC,
    restMin: REST_MIN,
    beforeG: tenth(beforeG),
    afterG: tenth(afterG),
    pieces,
    crispScores: eaten ? crispScores : [],
    brownScores: eaten ? brownScores : [],
    note: noteOf(asked),
  };
}

const noteOf = ({ thicknessMm }: AskedTrial): string => `spread for ${thicknessMm.toFixed(2)} mm`;

interface Morning {
  readonly date: string;
  readonly day: number;
  readonly probeK: number;
  readonly tasters: readonly Taster[];
}

function morningOf({ world, seed }: PlanKitchen, morning: number): Morning {
  const panel = seededRandom(1000 * seed + 901);
  const everyone = Array.from({ length: 4 }, () => tasterOf(panel));
  const random = seededRandom(1000 * seed + 910 + morning);
  return {
    date: new Date(Date.UTC(2026, 0, 5 + 3 * morning)).toISOString().slice(0, 10),
    day: Math.exp(world.scatter.session * random.normal()),
    probeK: 0.5 * random.normal(),
    tasters: everyone.slice(0, 2 + random.integer(3)),
  };
}

function tasterOf(random: SeededRandom): Taster {
  return { lean: 0.45 * random.normal(), slope: Math.exp(0.1 * random.normal()), sd: 0.5 + 0.3 * random.uniform() };
}

function slabOfTrial(
  { world, stored, seed }: PlanKitchen,
  { thicknessMm }: AskedTrial,
  at: number,
): { readonly slabMm: number; readonly coat: number; readonly batchG: number; readonly probesMm: readonly number[] } {
  const random = seededRandom(1000 * seed + at + 700);
  const { scatter, product, mix } = world;
  const slabMm = thicknessMm * (stored.densityKgM3 / mix.densityKgM3) * Math.exp(scatter.slab * random.normal());
  return {
    slabMm,
    coat: world.coat === null ? 1 : Math.exp(scatter.coatBatch * random.normal()),
    batchG: Math.round((mix.densityKgM3 * slabMm * product.pan.lengthMm * product.pan.widthMm) / 1e6 + random.normal()),
    probesMm: Array.from({ length: 5 }, () =>
      tenth(slabMm * (1 + scatter.unevenness * random.normal()) + 0.15 * random.normal()),
    ),
  };
}

/** Before the first level of its course a core is taken to thaw, until so much of that time (°C, share); our judgement. */
const THAWING_C = -3;
const THAWED = 0.6;

/** What a piece at a place is like after a time without looks (min). */
function readerOf({ world, emulator }: PlanKitchen, place: CoursePlace) {
  const { levels } = emulator.courses;
  const minutes = emulator.minutesAt(place);
  const thicker = place.thicknessMm / world.product.thicknessMm;
  const cores = [THAWING_C, ...levels.coreC];
  const coreMinutes = Float64Array.from([THAWED * minutes.coreC[0], ...minutes.coreC]);
  const coreAt = (timeMin: number): number => Math.max(THAWING_C, levelAt(cores, coreMinutes, timeMin));
  return {
    crispScore: (timeMin: number): number => {
      const beyond = Math.max(0, levelAt(levels.dryMm, minutes.dryMm, timeMin)) - world.crispMm;
      return 1 + 8 / (1 + Math.exp(-beyond / world.crispWidthMm - Math.log(0.625 / 0.375)));
    },
    brownScore: (timeMin: number): number =>
      Math.min(9, Math.max(0, levelAt(levels.brownScore, minutes.brownScore, timeMin))),
    /** as probed so many times 1.3 mm from the core */
    core: (timeMin: number, off: number): { readonly outC: number; readonly restedC: number } => {
      const coreC = Math.min(99, coreAt(timeMin));
      const rateKMin = Math.max(0, (coreAt(1.02 * timeMin) - coreAt(0.98 * timeMin)) / (0.04 * timeMin));
      const { outC, restedC } = restedCore(emulator.after, { coreC, rateKMin, thicker });
      const besideK = (emulator.after.besideK * off ** 2 * (100 - outC)) / (place.thicknessMm / 10) ** 2;
      return { outC: outC + besideK, restedC: Math.max(outC + besideK, restedC + 0.5 * besideK) };
    },
    weighedLoss: (timeMin: number): number =>
      Math.max(0, levelAt(levels.lossPercent, minutes.lossPercent, timeMin + emulator.after.lossMin)) / 100,
  };
}

/** What the fall of the air at a look is held against (°C): as fresh simulations have it, drying and heating, and browning. */
export const COOLED_C = 65;
export const PALED_C = 90;

/** Time that looks cost by a minute (min): the air falls at a look and comes back. */
export function lostMin(
  { world, stored }: PlanKitchen,
  {
    place,
    looksMin,
    minute,
    surfaceC,
  }: {
    readonly place: CoursePlace;
    readonly looksMin: readonly number[];
    readonly minute: number;
    readonly surfaceC: number;
  },
): number {
  const appliance = world.appliances.find(({ id }) => id === stored.settings[0].setting.applianceId) as TrueAppliance;
  const { lookDropK, lookRecoveryS, biasK, droopK } = appliance;
  const air = place.setpointC + biasK - droopK * place.loadFraction;
  const each = ((lookRecoveryS / 60) * lookDropK) / (air - surfaceC);
  return looksMin.reduce(
    (sum, look) => (look >= minute ? sum : sum + each * (1 - Math.exp((-60 * (minute - look)) / lookRecoveryS))),
    0,
  );
}

const half = (value: number): number => Math.round(2 * value) / 2;
const tenth = (value: number): number => Math.round(10 * value) / 10;
