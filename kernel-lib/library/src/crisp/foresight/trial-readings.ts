import { normalCdf } from "../../statistics/distributions/normal-distribution";
import { pieceCoreSpread, probedMm } from "../calibration/crisp-noise";
import { MISSED_CLOCKS, type MissedSetting, missedSetting } from "../calibration/missed-setting";
import { settingGroup } from "../calibration/shared-covariance";
import { browningOf } from "../clocks/browning-clock";
import type { BrowningTable } from "../clocks/browning-table";
import { coreReadingC } from "../clocks/core-clock";
import { crustMmAt, lossPercentOf } from "../clocks/crust-clock";
import { heatedMin } from "../clocks/look-cost";
import { brownScoreAt, CRISP_SCORE, crispScoreAt, meanWritten } from "../clocks/panel-score";
import type { PieceConstants } from "../clocks/piece-constants";
import { crispLogOf, floorOf, missedBy, type PlaceDraws } from "./place-draws";

/** What a trial would read. */
export interface TrialReadings {
  /** one column a reading, a value a draw, without the reading's own errors */
  readonly columns: readonly Float64Array[];
  /** variance of each reading's own error */
  readonly own: readonly number[];
  /** change of each over one standard deviation of the run's coefficient, and of the slab's thickness */
  readonly run: ArrayLike<number>;
  readonly thickness: ArrayLike<number>;
  /** over the misses of core, crust and browning that trials of this setting share */
  readonly missed: readonly ArrayLike<number>[];
  /** covariance of those misses, given the trials logged there */
  readonly missedLeft: readonly (readonly number[])[];
  /** trials of one group share the misses, of one slab the thickness */
  readonly group: string;
  readonly slab: string;
  /** chances of what a card asks to have been read: a core that still climbs, one at its limit, a soft and a crisp score [-] */
  readonly chance: { readonly climbing: number; readonly done: number; readonly soft: number; readonly crisp: number };
}

/** What `trialReadings` works from. */
export interface TrialReadingsOptions {
  readonly place: PlaceDraws;
  /** which slab the pieces are cut from */
  readonly slab: string;
  /** taken out after (min) */
  readonly timeMin: number;
  /** rising (min); empty where nobody looks */
  readonly looksMin: readonly number[];
  /** the core is read, and pieces at their limit are tasted; else neither */
  readonly probe: boolean;
  readonly tasters: number;
  /** a core below this still climbs (°C) */
  readonly climbingC: number;
}

/** A crispness seen before the first look or after the last one stands for so much earlier or later (ln min). */
const BEYOND = 0.1;
/** So many standard deviations off, a look leaves no doubt. */
const FAR = 5;
/** Depths of a frozen slab that are read. */
const PROBES = 5;
/** A few probes, however alike, do not know a slab's mean better than this [-]; our judgement, as for logged slabs. */
const LEAST_THICKNESS_SE = 0.01;
/** A score that fewer than this share of the outcomes may give is not counted on [-]. */
const LEAST_TASTED = 0.05;
/** No reading is surer than this, in its own unit. */
const LEAST_SD = 1e-3;
/** Nothing is known yet of the misses at a setting. */
const UNKNOWN = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;

/**
 * What one trial would read, draw by draw: between which looks it turned crisp, its core, loss, and scores. Pieces whose
 * core was not read, or lies below the limit, are not tasted: a score counts by the chance that it is given.
 */
export function trialReadings(options: TrialReadingsOptions): TrialReadings {
  const { place, slab, timeMin, probe, tasters, climbingC } = options;
  const { draws, setting, basis, pieces, tables, middle, middleTable } = place;
  const { thicknessMm, limit } = setting;
  const { calibration, count } = draws;
  const { noise, unevenness } = calibration;
  const { looksMin } = options;
  const heated = heatedMin(looksMin, timeMin);
  const coreOf = (piece: PieceConstants, mm: number, later = 1): number =>
    coreReadingC(basis, piece, probedMm(mm, unevenness), later * heatedMin(looksMin, timeMin, piece.lookMin), false);
  const cores = probe ? Float64Array.from(pieces, (piece) => coreOf(piece, thicknessMm)) : null;
  const tasted = cores === null ? 0 : shareOf(cores, (core) => core >= limit.limitC);
  const scored = tasted >= LEAST_TASTED && tasters > 0;
  const checksMin = looksMin.map((check) => heatedMin(looksMin, check));
  const look = checksMin.length === 0 ? null : lookReading(checksMin, noise.crispTime);
  const seen = Float64Array.of(0, 0);
  /** Writes the readings of one piece but its core's from a place on, in the order of the columns: look, core, loss, scores. */
  const write = (
    out: Float64Array,
    piece: PieceConstants,
    mm: number,
    table: BrowningTable,
    crispLog: number,
  ): void => {
    let at = 0;
    if (look !== null) {
      look(crispLog, seen);
      out[at++] = seen[0];
    }
    if (probe) at++;
    const depthMm = crustMmAt(basis, piece, mm, heated);
    out[at++] = lossPercentOf(basis, piece, mm, depthMm);
    if (!scored) return;
    out[at++] = meanWritten(crispScoreAt(depthMm, piece.crustMm, piece.panelWidthMm), noise.crispScore);
    const browning = browningOf(basis, piece, mm, depthMm, table);
    out[at] = meanWritten(brownScoreAt(browning, piece.brownSteepness), noise.brownScore);
  };
  const size = (look === null ? 0 : 1) + (probe ? 1 : 0) + 1 + (scored ? 2 : 0);
  const coreColumn = look === null ? 0 : 1;
  const columns = Array.from({ length: size }, () => new Float64Array(count));
  const row = new Float64Array(size);
  const scores = { soft: 0, crisp: 0 };
  let lookVariance = 0;
  for (let at = 0; at < count; at++) {
    write(row, pieces[at], thicknessMm, tables[at], place.crispLogs[at]);
    if (look !== null) lookVariance += seen[1] / count;
    if (cores !== null) row[coreColumn] = cores[at];
    for (let column = 0; column < size; column++) columns[column][at] = row[column];
    if (scored && row[coreColumn] >= limit.limitC) scores[row[size - 2] >= CRISP_SCORE ? "crisp" : "soft"] += 1 / count;
  }
  const of = (piece: PieceConstants, mm: number): Float64Array => {
    const out = new Float64Array(size);
    write(out, piece, mm, middleTable, crispLogOf(basis, piece, mm));
    if (probe) out[coreColumn] = coreOf(piece, mm);
    return out;
  };
  const here = of(middle, thicknessMm);
  const change = (piece: PieceConstants, mm = thicknessMm): Float64Array =>
    of(piece, mm).map((value, at) => value - here[at]);
  const laterK = probe ? coreOf(middle, thicknessMm, 1 + pieceCoreSpread(unevenness)) - here[coreColumn] : 0;
  const missed = MISSED_CLOCKS.map((clock) =>
    change(missedBy(middle, { [clock]: Math.hypot(floorOf(calibration, clock), place.ownDrift[clock]) })),
  );
  const logged = missedSetting(calibration, setting);
  if (logged !== null) addExpectedMisses(columns, draws.steps, missed, logged);
  return {
    columns,
    own: [
      ...(look === null ? [] : [Math.max(LEAST_SD ** 2, lookVariance)]),
      ...(probe ? [noise.coreK ** 2 + laterK ** 2] : []),
      noise.lossPercent ** 2,
      ...(scored ? [noise.crispScore ** 2 / (tasters * tasted), noise.brownScore ** 2 / (tasters * tasted)] : []),
    ],
    run: change({ ...middle, coefficientWm2K: middle.coefficientWm2K * Math.exp(noise.run) }),
    thickness: change(middle, thicknessMm * (1 + Math.max(LEAST_THICKNESS_SE, unevenness / Math.sqrt(PROBES)))),
    missed,
    missedLeft: logged?.left ?? UNKNOWN,
    group: settingGroup(setting),
    slab,
    chance: {
      climbing: cores === null ? 0 : shareOf(cores, (core) => core < climbingC),
      done: tasted,
      ...scores,
    },
  };
}

/** Covariance of the errors of readings that are taken in one morning, row by row. */
export function readingNoise(trials: readonly TrialReadings[], session: number): Float64Array {
  const places = trials.flatMap((trial) => trial.own.map((_, reading) => ({ trial, reading })));
  const size = places.length;
  const noise = new Float64Array(size * size);
  for (let row = 0; row < size; row++)
    for (let column = 0; column <= row; column++) {
      const [a, b] = [places[row], places[column]];
      const runs = a.trial.run[a.reading] * b.trial.run[b.reading];
      let value = row === column ? a.trial.own[a.reading] : 0;
      value += a.trial === b.trial ? runs * (1 + session * session) : runs * session * session;
      if (a.trial.slab === b.trial.slab) value += a.trial.thickness[a.reading] * b.trial.thickness[b.reading];
      if (a.trial.group === b.trial.group)
        for (let i = 0; i < 3; i++)
          for (let j = 0; j < 3; j++)
            value += a.trial.missed[i][a.reading] * a.trial.missedLeft[i][j] * b.trial.missed[j][b.reading];
      noise[row * size + column] = value;
      noise[column * size + row] = value;
    }
  return noise;
}

/** What is read of a crisp time x (ln min) by looks: mean and variance of the middle between the two looks that part it. */
function lookReading(looksMin: readonly number[], sd: number): (x: number, seen: Float64Array) => void {
  const edges = looksMin.map((look) => Math.log(look));
  const middles = [
    edges[0] - BEYOND,
    ...edges.slice(1).map((edge, at) => (edge + edges[at]) / 2),
    edges[edges.length - 1] + BEYOND,
  ];
  return (x, seen) => {
    let mean = 0;
    let squares = 0;
    let below = 0;
    for (let at = 0; at < middles.length; at++) {
      const off = at < edges.length ? (edges[at] - x) / sd : FAR;
      const upTo = off >= FAR ? 1 : off <= -FAR ? 0 : normalCdf(off);
      mean += (upTo - below) * middles[at];
      squares += (upTo - below) * middles[at] * middles[at];
      below = upTo;
    }
    seen[0] = mean;
    seen[1] = Math.max(0, squares - mean * mean);
  };
}

/** Adds to readings what the trials of their setting let expect of its misses, given the constants of each draw. */
function addExpectedMisses(
  columns: readonly Float64Array[],
  steps: readonly Float64Array[],
  missed: readonly ArrayLike<number>[],
  { byConstant }: MissedSetting,
): void {
  const slopes = columns.map((_, column) =>
    byConstant[0].map((__, constant) =>
      missed.reduce((sum, effect, clock) => sum + effect[column] * byConstant[clock][constant], 0),
    ),
  );
  for (let column = 0; column < columns.length; column++)
    for (let at = 0; at < steps.length; at++) {
      let sum = 0;
      for (let constant = 0; constant < slopes[column].length; constant++)
        sum += slopes[column][constant] * steps[at][constant];
      columns[column][at] += sum;
    }
}

function shareOf(values: Float64Array, holds: (value: number) => boolean): number {
  let count = 0;
  for (const value of values) if (holds(value)) count++;
  return count / values.length;
}
