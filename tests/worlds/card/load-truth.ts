import { seededRandom } from "slabwright/statistics";
import { type CourseEmulator, minuteOf } from "../plan/course-emulator";
import { surfaceTerms, weightsThrough } from "../setting-truth";
import { limitOf, type World, type WorldSetting } from "../world";

/** What is true of the loads of one setting. */
export interface LoadTruth {
  /** when the last core of a load is at its limit, a load a value, ascending (min) */
  readonly safeMin: Float64Array;
  /** the median piece's (min) */
  readonly typicalMin: number;
  readonly piecesInLoad: number;
}

/** nothing in a kitchen lies further out than this many spreads, as in `truthOfPieces` */
const clipped = (value: number): number => Math.max(-2.7, Math.min(2.7, value));

/** Many loads of a setting, each with its day, run and slab, and as many pieces as cover the floor so far. */
export function loadTruth(options: {
  readonly world: World;
  readonly emulator: CourseEmulator;
  readonly setting: WorldSetting;
  readonly loads: number;
  readonly seed: number;
}): LoadTruth {
  const { world, emulator, setting, loads, seed } = options;
  const { scatter } = world;
  const floorMm2 = 100 * (world.appliances.find(({ id }) => id === setting.applianceId)?.floorCm2 ?? 0);
  const piecesInLoad = Math.max(
    2,
    Math.round((setting.loadFraction * floorMm2) / (setting.lengthMm * setting.widthMm)),
  );
  const logCore = coreSurface(world, emulator, setting);
  const random = seededRandom(seed);
  const normal = (): number => clipped(random.normal());
  const coated = world.coat !== null;
  const holdMin = limitOf(world.product).holdS / 60;
  const safeMin = new Float64Array(loads);
  const pieces = new Float64Array(loads);
  for (let load = 0; load < loads; load++) {
    const day = Math.hypot(scatter.session, scatter.run) * normal();
    const slab = scatter.slab * normal();
    const coatBatch = scatter.coatBatch * normal();
    let last = Number.NEGATIVE_INFINITY;
    for (let piece = 0; piece < piecesInLoad; piece++) {
      const log = logCore(
        slab + scatter.unevenness * normal(),
        day + scatter.place * normal(),
        coated ? coatBatch + scatter.coatPiece * normal() : 0,
      );
      if (log > last) last = log;
      if (piece === 0) pieces[load] = Math.exp(log) + holdMin;
    }
    safeMin[load] = Math.exp(last) + holdMin;
  }
  return { safeMin: safeMin.sort(), typicalMin: pieces.sort()[loads >> 1], piecesInLoad };
}

/** Places that a surface of three factors is laid through, and how far they reach. */
const PLACES = 48;
const REACH = 0.4;

/**
 * ln of the core's time at a setting over the logarithms of thickness, coefficient and coat. The emulator's surfaces are cubic in
 * these, and between two levels it is straight in them: so a cubic through enough of its values is the emulator itself.
 */
function coreSurface(
  world: World,
  emulator: CourseEmulator,
  { thicknessMm, setpointC, loadFraction }: WorldSetting,
): (thickness: number, coefficient: number, coat: number) => number {
  const random = seededRandom(1);
  const { limitC } = limitOf(world.product);
  const coated = world.coat !== null;
  const axes = coated ? [0, 1, 2] : [0, 1];
  const places = Array.from({ length: PLACES }, () => axes.map(() => 2 * random.uniform() - 1));
  const weights = weightsThrough(
    places.map((place) => surfaceTerms(place, axes)),
    places.map(([thickness, coefficient, coat = 0]) => {
      const { coreC } = emulator.minutesAt({
        thicknessMm: thicknessMm * Math.exp(REACH * thickness),
        coefficient: Math.exp(REACH * coefficient),
        coat: Math.exp(REACH * coat),
        setpointC,
        loadFraction,
      });
      return Math.log(minuteOf(emulator.courses.levels.coreC, coreC, limitC));
    }),
  );
  const x = new Float64Array(axes.length);
  return (thickness, coefficient, coat) => {
    x[0] = thickness / REACH;
    x[1] = coefficient / REACH;
    if (coated) x[2] = coat / REACH;
    // the order of `surfaceTerms`, without its lists
    const size = x.length;
    let sum = weights[0];
    let term = 1;
    for (let a = 0; a < size; a++) sum += weights[term++] * x[a];
    for (let a = 0; a < size; a++) for (let b = a; b < size; b++) sum += weights[term++] * x[a] * x[b];
    for (let a = 0; a < size; a++)
      for (let b = a; b < size; b++) for (let c = b; c < size; c++) sum += weights[term++] * x[a] * x[b] * x[c];
    return sum;
  };
}

/** Time from which so many of all loads are wholly safe (min). */
export function safeLoadsFrom({ safeMin }: LoadTruth, share: number): number {
  return safeMin[Math.max(0, Math.ceil(share * safeMin.length) - 1)];
}

/** How many of the loads have a cold piece at a time. */
export function coldLoadsAt({ safeMin }: LoadTruth, timeMin: number): number {
  const from = safeMin.findIndex((safe) => safe > timeMin);
  return from === -1 ? 0 : safeMin.length - from;
}
