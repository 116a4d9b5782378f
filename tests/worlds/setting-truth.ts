import { seededRandom } from "slabwright/statistics";
import { heatPiece, type PieceReading } from "./simulate-piece";
import {
  aroundOf,
  brownScore,
  CRISP_SCORE,
  crispScore,
  gridOf,
  limitOf,
  type PieceFactors,
  pieceSpec,
  TOO_BROWN_SCORE,
  TYPICAL,
  type World,
  type WorldSetting,
} from "./world";

/** When one piece is safe, crisp, too brown and too dry (min), all counted in the appliance, before any rest. */
export interface PieceMoments {
  readonly coreMin: number;
  readonly crispMin: number;
  readonly brownMin: number;
  readonly dryMin: number;
}

/** How a piece differs from the typical one in what it takes to be crisp and how fast it browns: factors. */
export interface TasteFactors {
  readonly crispDepth: number;
  readonly browning: number;
}

/** What is true of a setting, over all pieces of all loads that a kitchen will ever make there. */
export interface SettingTruth {
  /** medians over pieces and loads (min); `closesMin` that of the earlier of brown and dry */
  readonly typical: PieceMoments & { readonly closesMin: number };
  readonly piecesInLoad: number;
  /** card times (min), even steps */
  readonly timesMin: readonly number[];
  /** share of pieces that are safe, crisp and not overdone when taken out then */
  readonly good: readonly number[];
  /** share of pieces whose core is at the limit by then */
  readonly safePieces: readonly number[];
  /** share of loads of which every piece is */
  readonly safeLoads: readonly number[];
  /** largest error of the interpolation between simulated pieces, of a time (share), over pieces it was not made from */
  readonly emulatorError: number;
}

const LAST_S = 5400;
const READ_S = 12;
/** thresholds, as factors on the typical ones, at which every simulated piece is read; the typical one in the middle */
const DEPTHS = [0.8, 0.9, 1, 1.11, 1.25] as const;
const RATES = [0.66, 0.81, 1, 1.23, 1.5] as const;
const MIDDLE = 2;

/** Moments of one simulated piece, for each of the tastes (the typical one in the middle); too dry has no taste. */
export interface MomentsByTaste {
  readonly coreMin: number;
  readonly crispMin: readonly number[];
  readonly brownMin: readonly number[];
  readonly dryMin: number;
}

/** Heats one piece until everything that can happen to it has. */
export function momentsOfPiece(world: World, setting: WorldSetting, factors: PieceFactors): MomentsByTaste {
  const around = aroundOf(world, setting, { coefficient: factors.coefficient });
  const piece = heatPiece(pieceSpec(world, setting, factors), around, gridOf(world, setting));
  const { limitC, holdS } = limitOf(world.product);
  const tooDry = world.tooDryPercent / 100;
  const marks: { readonly of: (reading: PieceReading) => number; readonly from: number; atS: number }[] = [
    { of: (reading) => reading.coreC, from: limitC, atS: Number.NaN },
    ...DEPTHS.map((depth) => ({
      of: (reading: PieceReading) => crispScore(world, reading, depth),
      from: CRISP_SCORE,
      atS: Number.NaN,
    })),
    ...RATES.map((rate) => ({
      of: (reading: PieceReading) => brownScore(world, reading, rate),
      from: TOO_BROWN_SCORE,
      atS: Number.NaN,
    })),
    { of: (reading) => reading.loss, from: tooDry, atS: Number.NaN },
  ];
  let before = piece.read();
  for (let timeS = READ_S; timeS <= LAST_S; timeS += READ_S) {
    piece.advance(timeS);
    const now = piece.read();
    for (const mark of marks) {
      const [low, high] = [mark.of(before), mark.of(now)];
      if (Number.isNaN(mark.atS) && high >= mark.from)
        mark.atS = timeS - READ_S + (READ_S * (mark.from - low)) / (high - low);
    }
    // too dry may be far off: its line is then carried on from the last minutes
    if (marks.slice(0, -1).every(({ atS }) => !Number.isNaN(atS)) && (now.loss > tooDry || timeS > 900)) {
      const dry = marks[marks.length - 1];
      if (Number.isNaN(dry.atS)) dry.atS = timeS + ((tooDry - now.loss) * READ_S) / (now.loss - before.loss);
      break;
    }
    before = now;
  }
  const minutes = marks.map(({ atS }) => (Number.isNaN(atS) ? LAST_S : atS) / 60);
  return {
    coreMin: minutes[0] + holdS / 60,
    crispMin: minutes.slice(1, 1 + DEPTHS.length),
    brownMin: minutes.slice(1 + DEPTHS.length, -1),
    dryMin: minutes[minutes.length - 1],
  };
}

/** Spread (sd of logarithms) of what pieces differ in, over all loads. */
export function spreadOf(world: World): Record<keyof PieceFactors, number> {
  const { session, run, place, slab, unevenness, coatBatch, coatPiece } = world.scatter;
  return {
    coefficient: Math.hypot(session, run, place),
    thickness: Math.hypot(slab, unevenness),
    coat: world.coat === null ? 0 : Math.hypot(coatBatch, coatPiece),
  };
}

/** Quick moments of any piece of a setting. */
export type PieceEmulator = (factors: PieceFactors, taste: TasteFactors) => PieceMoments;

/** places of a simulated piece along each factor, in its spreads: a rotatable central composite design */
const CORNER = 1.4;
const AXIS = 2.5;
/** and two more along the coat, where dry depth passes from coat to mix */
const COAT_AXIS = 1.25;

/**
 * Simulates a design of pieces at a setting and lays a surface through the logarithms of their times: quadratic in the
 * logarithms of all factors and of the taste, cubic in coat and taste.
 */
export function pieceEmulator(world: World, setting: WorldSetting): PieceEmulator {
  const spread = spreadOf(world);
  const coated = world.coat !== null;
  const names = (["coat", "coefficient", "thickness"] as const).slice(coated ? 0 : 1);
  const runs = designOf(names.length, coated).map((place) => {
    const factors = { ...TYPICAL };
    names.forEach((name, at) => {
      factors[name] = Math.exp(spread[name] * place[at]);
    });
    return { place, moments: momentsOfPiece(world, setting, factors) };
  });
  const plain = (of: (moments: MomentsByTaste) => number): Surface =>
    surfaceThrough(
      runs.map(({ place }) => place),
      runs.map(({ moments }) => Math.log(of(moments))),
      coated ? [0] : [],
    );
  const tasted = (of: (moments: MomentsByTaste) => readonly number[], levels: readonly number[]): Surface =>
    surfaceThrough(
      runs.flatMap(({ place }) => levels.map((level) => [...place, TASTE_SCALE * Math.log(level)])),
      runs.flatMap(({ moments }) => of(moments).map((minutes) => Math.log(minutes))),
      coated ? [0, names.length] : [names.length],
    );
  const core = plain(({ coreMin }) => coreMin);
  const dry = plain(({ dryMin }) => dryMin);
  const crisp = tasted(({ crispMin }) => crispMin, DEPTHS);
  const brown = tasted(({ brownMin }) => brownMin, RATES);
  return (factors, taste) => {
    const place = names.map((name) => Math.log(factors[name]) / spread[name]);
    return {
      coreMin: Math.exp(core(place)),
      crispMin: Math.exp(crisp([...place, TASTE_SCALE * Math.log(taste.crispDepth)])),
      brownMin: Math.exp(brown([...place, TASTE_SCALE * Math.log(taste.browning)])),
      dryMin: Math.exp(dry(place)),
    };
  };
}

/** brings the taste to the size of the other places */
const TASTE_SCALE = 10;

function designOf(factors: number, coated: boolean): number[][] {
  const corners = Array.from({ length: 2 ** factors }, (_, corner) =>
    Array.from({ length: factors }, (_, at) => ((corner >> at) & 1 ? CORNER : -CORNER)),
  );
  const along = (axis: number, value: number): number[] =>
    Array.from({ length: factors }, (_, at) => (at === axis ? value : 0));
  const axes = Array.from({ length: 2 * factors }, (_, at) => along(at >> 1, at & 1 ? AXIS : -AXIS));
  const more = coated ? [along(0, -COAT_AXIS), along(0, COAT_AXIS)] : [];
  return [along(0, 0), ...corners, ...axes, ...more];
}

type Surface = (place: readonly number[]) => number;

/** Least squares through a full quadratic, and a full cubic in the named places, by the normal equations. */
function surfaceThrough(
  places: readonly (readonly number[])[],
  values: readonly number[],
  cubic: readonly number[],
): Surface {
  const weights = weightsThrough(
    places.map((place) => surfaceTerms(place, cubic)),
    values,
  );
  return (place) => surfaceTerms(place, cubic).reduce((sum, term, at) => sum + term * weights[at], 0);
}

/** The terms of a full quadratic in all places and a full cubic in the named ones. */
export function surfaceTerms(place: readonly number[], cubic: readonly number[]): number[] {
  return [
    1,
    ...place,
    ...place.flatMap((one, at) => place.slice(at).map((other) => one * other)),
    ...cubic.flatMap((a, at) =>
      cubic.slice(at).flatMap((b, way) => cubic.slice(at + way).map((c) => place[a] * place[b] * place[c])),
    ),
  ];
}

/** Least squares of values on rows of terms, by the normal equations. */
export function weightsThrough(rows: readonly (readonly number[])[], values: readonly number[]): readonly number[] {
  const size = rows[0].length;
  const matrix = Array.from({ length: size }, (_, a) => [
    ...Array.from({ length: size }, (_, b) => rows.reduce((sum, row) => sum + row[a] * row[b], 0)),
    rows.reduce((sum, row, at) => sum + row[a] * values[at], 0),
  ]);
  for (let a = 0; a < size; a++) {
    const pivot = matrix
      .slice(a)
      .reduce((best, row, at) => (Math.abs(row[a]) > Math.abs(matrix[best][a]) ? a + at : best), a);
    [matrix[a], matrix[pivot]] = [matrix[pivot], matrix[a]];
    for (let b = 0; b < size; b++) {
      if (b === a) continue;
      const factor = matrix[b][a] / matrix[a][a];
      for (let c = a; c <= size; c++) matrix[b][c] -= factor * matrix[a][c];
    }
  }
  return matrix.map((row, at) => row[size] / row[at]);
}

/** Largest relative error of an emulator's core, crisp and brown times over a few drawn pieces, simulated for the purpose. */
export function emulatorErrorAt(
  world: World,
  setting: WorldSetting,
  emulate: PieceEmulator,
  pieces: number,
  seed: number,
): number {
  const random = seededRandom(seed);
  const spread = spreadOf(world);
  let worst = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const factors = {
      coefficient: Math.exp(spread.coefficient * clipped(random.normal())),
      thickness: Math.exp(spread.thickness * clipped(random.normal())),
      coat: Math.exp(spread.coat * clipped(random.normal())),
    };
    const real = momentsOfPiece(world, setting, factors);
    const near = emulate(factors, { crispDepth: 1, browning: 1 });
    for (const [one, other] of [
      [near.coreMin, real.coreMin],
      [near.crispMin, real.crispMin[MIDDLE]],
      [Math.min(near.brownMin, near.dryMin), Math.min(real.brownMin[MIDDLE], real.dryMin)],
    ])
      worst = Math.max(worst, Math.abs(one / other - 1));
  }
  return worst;
}

/** nothing in a kitchen lies further out than this many spreads */
const clipped = (value: number): number => Math.max(-2.7, Math.min(2.7, value));

const LOADS = 4000;
const STEPS = 64;

/** The truth of a setting: 4,000 loads, each with its day, run and slab, and as many pieces as cover the floor so far. */
export function settingTruth(world: World, setting: WorldSetting, seed: number): SettingTruth {
  const emulate = pieceEmulator(world, setting);
  return {
    ...truthOfPieces({ world, setting, emulate, seed, loads: LOADS }),
    emulatorError: rounded(emulatorErrorAt(world, setting, emulate, 2, seed + 1), 4),
  };
}

/** The same from any emulator of its pieces. */
export function truthOfPieces(options: {
  readonly world: World;
  readonly setting: WorldSetting;
  readonly emulate: PieceEmulator;
  readonly seed: number;
  readonly loads: number;
}): Omit<SettingTruth, "emulatorError"> {
  const { world, setting, emulate, seed, loads: loadCount } = options;
  const { scatter } = world;
  const floorMm2 = (world.appliances.find(({ id }) => id === setting.applianceId)?.floorCm2 ?? 0) * 100;
  const piecesInLoad = Math.max(
    2,
    Math.round((setting.loadFraction * floorMm2) / (setting.lengthMm * setting.widthMm)),
  );
  const random = seededRandom(seed);
  const normal = (): number => clipped(random.normal());
  const count = loadCount * piecesInLoad;
  const [core, crisp, brown, dry, opens, closes] = Array.from({ length: 6 }, () => new Float64Array(count));
  const loadSafe = new Float64Array(loadCount);
  for (let load = 0; load < loadCount; load++) {
    const day = Math.hypot(scatter.session, scatter.run) * normal();
    const slab = scatter.slab * normal();
    const coatBatch = scatter.coatBatch * normal();
    for (let each = 0; each < piecesInLoad; each++) {
      const at = load * piecesInLoad + each;
      const moments = emulate(
        {
          coefficient: Math.exp(day + scatter.place * normal()),
          thickness: Math.exp(slab + scatter.unevenness * normal()),
          coat: world.coat === null ? 1 : Math.exp(coatBatch + scatter.coatPiece * normal()),
        },
        { crispDepth: Math.exp(scatter.crispDepth * normal()), browning: Math.exp(scatter.browning * normal()) },
      );
      core[at] = moments.coreMin;
      crisp[at] = moments.crispMin;
      brown[at] = moments.brownMin;
      dry[at] = moments.dryMin;
      opens[at] = Math.max(core[at], crisp[at]);
      closes[at] = Math.min(brown[at], dry[at]);
      loadSafe[load] = Math.max(loadSafe[load], core[at]);
    }
  }
  const sorted = (values: Float64Array): Float64Array => values.slice().sort();
  const share = (values: Float64Array): ((time: number) => number) => {
    const inOrder = sorted(values);
    return (time) => below(inOrder, time) / inOrder.length;
  };
  const median = (values: Float64Array): number => rounded(sorted(values)[values.length >> 1], 4);
  const open = (_: number, at: number): boolean => opens[at] <= closes[at];
  const opened = share(opens.filter(open));
  const closed = share(closes.filter(open));
  const openShare = opens.filter(open).length / count;
  const safe = share(core);
  const loads = share(loadSafe);
  const cores = sorted(core);
  const first = Math.min(cores[0], sorted(opens)[0]);
  const last = Math.max(
    sorted(loadSafe)[loadCount - 1],
    sorted(closes)[Math.floor(0.995 * count)],
    sorted(opens)[Math.floor(0.995 * count)],
  );
  const step = (Math.min(last, 90) - first) / (STEPS - 1);
  const timesMin = Array.from({ length: STEPS }, (_, at) => rounded(first + at * step, 5));
  return {
    typical: {
      coreMin: median(core),
      crispMin: median(crisp),
      brownMin: median(brown),
      dryMin: median(dry),
      closesMin: median(closes),
    },
    piecesInLoad,
    timesMin,
    good: timesMin.map((time) => rounded(openShare * (opened(time) - closed(time)), 4)),
    safePieces: timesMin.map((time) => rounded(safe(time), 5)),
    safeLoads: timesMin.map((time) => rounded(loads(time), 4)),
  };
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));

function below(inOrder: Float64Array, value: number): number {
  let [low, high] = [0, inOrder.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (inOrder[middle] <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}
