import { seededRandom } from "slabwright/statistics";
import { heatPiece, type PieceReading } from "../simulate-piece";
import type { StoredWorld } from "../stored-world";
import {
  aroundOf,
  brownScore,
  dryDepthMm,
  gridOf,
  ownCut,
  pieceSpec,
  RESTING,
  TOO_BROWN_SCORE,
  type World,
  type WorldSetting,
} from "../world";

/** What a simulated course is of. */
export interface CoursePlace {
  /** factor on the coefficient: day, run and place together */
  readonly coefficient: number;
  /** factor on the coat */
  readonly coat: number;
  readonly thicknessMm: number;
  readonly setpointC: number;
  readonly loadFraction: number;
}

/** Levels of a course, each reached but once. */
export interface CourseLevels {
  readonly coreC: readonly number[];
  readonly dryMm: readonly number[];
  readonly brownScore: readonly number[];
  /** factors on the browning at which the score is too brown */
  readonly brownRate: readonly number[];
  readonly lossPercent: readonly number[];
}

export type CourseOf = keyof CourseLevels;
export const COURSES = ["coreC", "dryMm", "brownScore", "brownRate", "lossPercent"] as const;

/** A piece that was taken out at a time: what a probe reads then, after it, and what it weighs. */
export interface RestedPiece {
  readonly place: CoursePlace;
  readonly timeMin: number;
  readonly coreC: number;
  /** core a quarter of a minute after, and its highest within two (°C) */
  readonly outC: number;
  readonly restedC: number;
  /** a quarter of a minute after, so far above the core (°C) */
  readonly besideC: number;
  readonly lossPercent: number;
  /** lost a minute after (%) */
  readonly weighedPercent: number;
}

/** The simulated courses of a world, as they are kept. */
export interface StoredCourses {
  readonly product: string;
  readonly seed: number;
  readonly levels: CourseLevels;
  /** each piece with the time at which it reached each level (min); null where it had not when it was taken out */
  readonly pieces: readonly {
    readonly place: CoursePlace;
    readonly minutes: Readonly<Record<CourseOf, readonly (number | null)[]>>;
  }[];
  readonly rested: readonly RestedPiece[];
}

/** Ranges of the design (logarithms of factors, K, share of the floor). */
export const COURSE_RANGE = {
  coefficient: 0.36,
  coat: 0.36,
  thickness: [0.62, 1.6],
  setpointK: 22,
  load: [0.25, 0.95],
} as const;

const PIECES = { coated: 80, bare: 60 } as const;
const RESTED = 24;
const READ_S = 12;
/** how far above its core a probe's tip stands in `besideC` (m) */
const BESIDE_M = 0.0013;

/** When a turned product is turned (min): as at its own setting, later when thicker, sooner when hotter; to the half minute. */
export function courseFlip(stored: StoredWorld, { thicknessMm, setpointC }: CoursePlace): number | null {
  const own = stored.settings[0].setting;
  if (own.flipMin === null) return null;
  const later = (thicknessMm / own.thicknessMm) ** 1.2 * Math.exp(-0.006 * (setpointC - own.setpointC));
  return Math.round(2 * own.flipMin * later) / 2;
}

export function courseSetting(world: World, stored: StoredWorld, place: CoursePlace): WorldSetting {
  const { product } = world;
  return {
    applianceId: product.appliance,
    setpointC: place.setpointC,
    loadFraction: place.loadFraction,
    thicknessMm: place.thicknessMm,
    ...ownCut(product),
    flipMin: courseFlip(stored, place),
  };
}

/** Places by Latin hypercube: every part of every range once. */
function designOf(world: World, count: number): readonly CoursePlace[] {
  const random = seededRandom(world.seed + 40_000);
  const parts = (): number[] => {
    const order = Array.from({ length: count }, (_, at) => at);
    for (let at = count - 1; at > 0; at--) {
      const other = random.integer(at + 1);
      [order[at], order[other]] = [order[other], order[at]];
    }
    return order.map((part) => part / (count - 1));
  };
  const [coefficient, coat, thickness, setpoint, load] = [parts(), parts(), parts(), parts(), parts()];
  const { product } = world;
  const [thin, thick] = COURSE_RANGE.thickness.map(Math.log);
  const [empty, full] = COURSE_RANGE.load;
  const digits = (value: number): number => Number(value.toPrecision(6));
  return coefficient.map((_, at) => ({
    coefficient: digits(Math.exp(COURSE_RANGE.coefficient * (2 * coefficient[at] - 1))),
    coat: world.coat === null ? 1 : digits(Math.exp(COURSE_RANGE.coat * (2 * coat[at] - 1))),
    thicknessMm: digits(product.thicknessMm * Math.exp(thin + (thick - thin) * thickness[at])),
    setpointC: digits(product.setpointC + COURSE_RANGE.setpointK * (2 * setpoint[at] - 1)),
    loadFraction: digits(empty + (full - empty) * load[at]),
  }));
}

/** Simulates the courses of a world. */
export function simulateCourses(world: World, stored: StoredWorld): StoredCourses {
  const levels: CourseLevels = {
    coreC: [20, 35, 48, 58, 64, 69, 74, 79, 85, 91],
    dryMm: [0.15, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.45, 1.7].map((part) => part * world.crispMm),
    brownScore: [0.5, 1, 1.5, 2, 3, 4, 5, 6, 7, 7.8],
    brownRate: [1.6, 1.26, 1, 0.8, 0.63],
    lossPercent: [0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1, 1.12, 1.25].map((part) => part * world.tooDryPercent),
  };
  const places = designOf(world, world.coat === null ? PIECES.bare : PIECES.coated);
  const pieces = places.map((place) => ({ place, minutes: courseAt(world, stored, levels, place) }));
  const random = seededRandom(world.seed + 41_000);
  const rested = places.slice(0, RESTED).map((place, at) => {
    const core = pieces[at].minutes.coreC;
    const [fromMin, toMin] = [core[1] as number, (core[9] ?? core[8] ?? core[7]) as number];
    return restedAt(world, stored, place, fromMin + (toMin - fromMin) * random.uniform());
  });
  return { product: stored.product, seed: stored.seed, levels, pieces, rested };
}

/** One course: when each level was reached (min). */
export function courseAt(
  world: World,
  stored: StoredWorld,
  levels: CourseLevels,
  place: CoursePlace,
  looksS: readonly number[] = [],
): Record<CourseOf, (number | null)[]> {
  const piece = pieceAt(world, stored, place, looksS);
  const { typical } = stored.settings[0].truth;
  const own = stored.settings[0].setting;
  const lastS =
    60 *
    3.2 *
    Math.max(typical.coreMin, typical.crispMin) *
    Math.max(0.85, place.thicknessMm / own.thicknessMm) ** 1.1 *
    place.coefficient ** -0.5 *
    Math.exp(-0.005 * (place.setpointC - own.setpointC));
  const marks = COURSES.map((of) => ({ of, minutes: [] as (number | null)[] }));
  let before = piece.read();
  for (let timeS = READ_S; timeS <= lastS; timeS += READ_S) {
    piece.advance(timeS);
    const now = piece.read();
    for (const { of, minutes } of marks)
      while (minutes.length < levels[of].length) {
        const level = levels[of][minutes.length];
        const [low, high] = [beyond(world, of, before, level), beyond(world, of, now, level)];
        if (high < 0) break;
        minutes.push((timeS - READ_S + READ_S * Math.max(0, -low / (high - low))) / 60);
      }
    if (marks.every(({ of, minutes }) => minutes.length === levels[of].length)) break;
    before = now;
  }
  return Object.fromEntries(
    marks.map(({ of, minutes }) => [of, levels[of].map((_, at) => minutes[at] ?? null)]),
  ) as Record<CourseOf, (number | null)[]>;
}

/** How far a reading is beyond a level. */
function beyond(world: World, of: CourseOf, reading: PieceReading, level: number): number {
  if (of === "coreC") return reading.coreC - level;
  if (of === "dryMm") return dryDepthMm(reading) - level;
  if (of === "brownScore") return brownScore(world, reading, 1) - level;
  if (of === "brownRate") return brownScore(world, reading, level) - TOO_BROWN_SCORE;
  return 100 * reading.loss - level;
}

function pieceAt(
  world: World,
  stored: StoredWorld,
  place: CoursePlace,
  looksS: readonly number[],
): ReturnType<typeof heatPiece> {
  const setting = courseSetting(world, stored, place);
  return heatPiece(
    pieceSpec(world, setting, { coefficient: place.coefficient, thickness: 1, coat: place.coat }),
    aroundOf(world, setting, { coefficient: place.coefficient, looksS }),
    gridOf(world, setting),
  );
}

/** A piece taken out at a time, and what is read in it then. */
export function restedAt(world: World, stored: StoredWorld, place: CoursePlace, timeMin: number): RestedPiece {
  const piece = pieceAt(world, stored, place, []);
  const outS = 60 * timeMin;
  piece.advance(outS);
  const out = piece.read();
  piece.moveTo(RESTING);
  piece.advance(outS + 15);
  const outC = piece.aboveCoreC(0);
  const besideC = piece.aboveCoreC(BESIDE_M);
  let restedC = outC;
  let weighedPercent = 0;
  for (let restS = 30; restS <= 120; restS += 15) {
    piece.advance(outS + restS);
    restedC = Math.max(restedC, piece.aboveCoreC(0));
    if (restS === 60) weighedPercent = 100 * piece.read().loss;
  }
  return { place, timeMin, coreC: out.coreC, outC, restedC, besideC, lossPercent: 100 * out.loss, weighedPercent };
}
