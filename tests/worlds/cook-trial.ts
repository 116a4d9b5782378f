import type { SeededRandom } from "slabwright/statistics";
import { heatPiece } from "./simulate-piece";
import {
  aroundOf,
  brownScore,
  CRISP_SCORE,
  crispScore,
  gridOf,
  pieceSpec,
  RESTING,
  type World,
  type WorldSetting,
} from "./world";

/** One cook's habits with scores. */
export interface Taster {
  readonly lean: number;
  readonly slope: number;
  readonly sd: number;
}

/** What a session shares: the day, the slab, who tastes, how far off the probe reads. */
export interface Session {
  readonly date: string;
  /** factor on the coefficient */
  readonly day: number;
  /** true mean thickness of the slab (mm) and its coat's factor */
  readonly slabMm: number;
  readonly coat: number;
  readonly probesMm: readonly number[];
  readonly batchG: number;
  readonly tasters: readonly Taster[];
  readonly probeK: number;
}

/** What a cook set out to do. */
export interface TrialPlan {
  readonly setting: WorldSetting;
  /** until crisp; taken out before for the core; left in longer for the browning */
  readonly way: "crisp" | "early" | "late";
  /** when the cook thinks it will be crisp and the core hot (min) */
  readonly guessMin: number;
  readonly guessCoreMin: number;
}

/** A trial with all that a log may ever ask for; `null` was not measured. */
export interface CookedTrial {
  readonly date: string;
  readonly applianceId: string;
  readonly batchG: number;
  readonly probesMm: readonly number[];
  readonly setpointC: number;
  readonly loadFraction: number;
  readonly flipMin: number | null;
  readonly timeMin: number;
  readonly looksMin: readonly number[];
  readonly notCrispMin: number | null;
  readonly crispMin: number | null;
  /** read in the thickest piece as it came out (°C) */
  readonly outCoreC: number;
  /** highest reading in it within two minutes (°C), and how long it stood (min) */
  readonly restedCoreC: number;
  readonly restMin: number;
  readonly beforeG: number;
  readonly afterG: number;
  readonly pieces: number;
  readonly crispScores: readonly number[];
  readonly brownScores: readonly number[];
  readonly note: string | null;
}

const CHECK_SD = 0.35;
const PROBE_SD_K = 0.7;
const PROBE_OFF_MM = 1.3;
const REST_S = 120;

/** Reheats a load as a cook does: looks now and then, takes out, probes the thickest piece, weighs, tastes. */
export function cookTrial(world: World, session: Session, plan: TrialPlan, random: SeededRandom): CookedTrial {
  const { scatter } = world;
  const setting = { ...plan.setting, thicknessMm: session.slabMm };
  const run = session.day * Math.exp(scatter.run * random.normal());
  const looksS: number[] = [];
  const phase = random.uniform();
  const around = aroundOf(world, setting, { coefficient: run, looksS, phase });
  const typical = { coefficient: 1, thickness: 1, coat: session.coat };
  const piece = heatPiece(pieceSpec(world, setting, typical), around, gridOf(world, setting));
  const { guessMin } = plan;
  const every = guessMin > 14 ? 2 : guessMin > 9 ? 1.5 : 1;
  let notCrispMin: number | null = null;
  let crispMin: number | null = null;
  let timeMin: number;
  if (plan.way === "early") {
    timeMin = half(plan.guessCoreMin * (0.55 + 0.4 * random.uniform()));
    piece.advance(timeMin * 60);
    notCrispMin = crispScore(world, piece.read(), 1) + CHECK_SD * random.normal() < CRISP_SCORE ? timeMin : null;
    if (notCrispMin === null) crispMin = timeMin;
  } else {
    for (let lookMin = half(guessMin * (0.65 + 0.15 * random.uniform())); crispMin === null; lookMin += every) {
      piece.advance(lookMin * 60);
      const judged = crispScore(world, piece.read(), 1) + CHECK_SD * random.normal();
      if (judged >= CRISP_SCORE || lookMin > 2.5 * guessMin) crispMin = lookMin;
      else notCrispMin = lookMin;
      looksS.push(lookMin * 60);
    }
    timeMin =
      plan.way === "late" ? half(crispMin * (1.25 + 0.3 * random.uniform())) : crispMin + half(1.4 * random.uniform());
    // a look at which they are taken out is no look
    if (timeMin === crispMin) looksS.pop();
    piece.advance(timeMin * 60);
  }
  const out = piece.read();
  piece.moveTo(RESTING);
  piece.advance(timeMin * 60 + 60);
  const weighed = piece.read();

  const thickest = heatPiece(
    pieceSpec(world, setting, { ...typical, thickness: 1 + 1.1 * scatter.unevenness }),
    aroundOf(world, setting, { coefficient: run * Math.exp(0.5 * scatter.place * random.normal()), looksS, phase }),
    gridOf(world, setting),
  );
  thickest.advance(timeMin * 60);
  thickest.moveTo(RESTING);
  const offM = (PROBE_OFF_MM / 1000) * random.normal();
  const misreads = session.probeK + PROBE_SD_K * random.normal();
  thickest.advance(timeMin * 60 + 15);
  const outCoreC = thickest.aboveCoreC(offM) + misreads;
  let restedCoreC = outCoreC;
  for (let restS = 30; restS <= REST_S; restS += 15) {
    thickest.advance(timeMin * 60 + restS);
    restedCoreC = Math.max(restedCoreC, thickest.aboveCoreC(offM) + misreads);
  }

  const floorMm2 = (world.appliances.find(({ id }) => id === setting.applianceId)?.floorCm2 ?? 0) * 100;
  const inLoad = Math.max(2, Math.round((setting.loadFraction * floorMm2) / (setting.lengthMm * setting.widthMm)));
  const pieces = Math.min(12, inLoad);
  const beforeG = pieces * piece.massKg * 1000 * (1 + 0.01 * random.normal());
  const crumbs = 0.004 * random.uniform();
  const afterG = beforeG * (1 - weighed.loss - crumbs) + 0.4 * random.normal();
  const tasted = (score: number, low: number): number[] =>
    session.tasters.map(({ lean, slope, sd }) =>
      Math.max(low, Math.min(9, half(5 + slope * (score - 5) + lean + sd * random.normal()))),
    );
  return {
    date: session.date,
    applianceId: setting.applianceId,
    batchG: session.batchG,
    probesMm: session.probesMm,
    setpointC: setting.setpointC,
    loadFraction: setting.loadFraction,
    flipMin: setting.flipMin === null || setting.flipMin >= timeMin ? null : setting.flipMin,
    timeMin,
    looksMin: looksS.map((lookS) => lookS / 60),
    notCrispMin,
    crispMin,
    outCoreC: tenth(outCoreC),
    restedCoreC: tenth(restedCoreC),
    restMin: REST_S / 60,
    beforeG: tenth(beforeG),
    afterG: tenth(afterG),
    pieces,
    crispScores: tasted(crispScore(world, out, 1), 1),
    brownScores: tasted(brownScore(world, out, 1), 0),
    note:
      plan.way === "early"
        ? "taken out early to read the core"
        : plan.way === "late"
          ? "left in to see it brown"
          : null,
  };
}

const half = (value: number): number => Math.round(2 * value) / 2;
const tenth = (value: number): number => Math.round(10 * value) / 10;
