import { choleskyFactor, inverseFrom, solveLower } from "../../statistics/linear-algebra/cholesky";
import { LOOSE_LOAD } from "../clocks/load-effect";
import { type CrispNoise, USUAL_NOISE, USUAL_WORTH } from "./crisp-noise";
import type { CrispObservation } from "./crisp-observation";
import type { CrispResiduals, SharedEffects } from "./crisp-residuals";

/** What the measurements of a log share, as the covariance of their residuals. */
export interface SharedCovariance {
  /** frees residuals of what they share: L⁻¹·r with L·Lᵀ = I + the shared parts */
  readonly whiten: (residuals: Float64Array) => Float64Array;
  readonly lower: Float64Array;
}

/** Groups of a log: which run, slab, session and setting each trial belongs to. */
interface Groups {
  readonly slab: readonly string[];
  readonly session: readonly string[];
  readonly setting: readonly string[];
}

function groupsOf(observations: readonly CrispObservation[]): Groups {
  return {
    slab: observations.map((seen) => seen.slab ?? `trial ${seen.id}`),
    session: observations.map((seen) => seen.session),
    setting: observations.map(settingGroup),
  };
}

/** Trials of one name here share what the clocks miss at their setting: within about 3 K, 6 % of thickness, a fifth of the floor, 5 mm of the cut. */
export function settingGroup({
  applianceId,
  setpointC,
  thicknessMm,
  loadFraction,
  turned,
  sidesMm,
}: Pick<
  CrispObservation,
  "applianceId" | "setpointC" | "thicknessMm" | "loadFraction" | "turned" | "sidesMm"
>): string {
  return `${applianceId} ${Math.round(setpointC / 3)} ${Math.round(Math.log(thicknessMm) / 0.06)} ${Math.round(5 * (loadFraction ?? LOOSE_LOAD))} ${turned} ${sidesMm?.map((side) => Math.round(side / 5))}`;
}

/**
 * Covariance of the residuals of a log: 1 for each one's own noise, and for two of one run, slab, session or setting the
 * product of their changes along what they share. Which trials are of one setting: `settingGroup`.
 */
export function sharedCovariance(problem: CrispResiduals, effects: SharedEffects, noise: CrispNoise): SharedCovariance {
  const { slots, observations } = problem;
  const size = slots.length;
  const groups = groupsOf(observations);
  const sessions = noise.session / noise.run;
  const matrix = new Float64Array(size * size);
  for (let row = 0; row < size; row++)
    for (let column = 0; column <= row; column++) {
      const a = slots[row].trial;
      const b = slots[column].trial;
      let value = row === column ? 1 : 0;
      const runs = effects.run[row] * effects.run[column];
      if (a === b) value += runs;
      if (groups.slab[a] === groups.slab[b]) value += effects.thickness[row] * effects.thickness[column];
      if (groups.session[a] === groups.session[b]) value += sessions * sessions * runs;
      if (groups.setting[a] === groups.setting[b])
        value +=
          effects.core[row] * effects.core[column] +
          effects.crust[row] * effects.crust[column] +
          effects.brown[row] * effects.brown[column];
      matrix[row * size + column] = value;
    }
  const lower = choleskyFactor(matrix, size);
  return { lower, whiten: (residuals) => solveLower(lower, size, residuals) };
}

/**
 * One step of expectation and maximisation for the sizes of noise: with w = Σ⁻¹r, the expected square of a residual's own
 * noise is wᵢ² + 1 − Σ⁻¹ᵢᵢ, and of an effect d it is (dᵀw)² + 1 − dᵀΣ⁻¹d. Each size is pulled to the usual one, which
 * counts as six measurements.
 *
 * Reference: Laird & Ware (1982), Biometrics 38, 963–974.
 */
export function noiseAgain(
  problem: CrispResiduals,
  before: CrispNoise,
  residuals: Float64Array,
  effects: SharedEffects,
  { lower }: SharedCovariance,
  parameters: number,
): CrispNoise {
  const { slots, observations } = problem;
  const size = slots.length;
  const inverse = inverseFrom(lower, size);
  const w = new Float64Array(size);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) w[row] += inverse[row * size + column] * residuals[column];
  const left = Math.max(0.5, 1 - parameters / (size + parameters));
  const again = (kind: "crispTime" | "coreK" | "lossPercent" | "crispScore" | "brownScore"): number => {
    let sum = USUAL_WORTH * USUAL_NOISE[kind] ** 2;
    let worth = USUAL_WORTH;
    for (let at = 0; at < size; at++) {
      if (slots[at].kind !== kind || !slots[at].telling) continue;
      sum += before[kind] ** 2 * (w[at] ** 2 + 1 - inverse[at * size + at]);
      worth += left;
    }
    return Math.sqrt(sum / worth);
  };
  const groups = groupsOf(observations);
  /** Expected squares of the effects of each group, and how many there are. */
  const squares = (column: Float64Array, groupOf: (trial: number) => string, scale: number): [number, number] => {
    const members = new Map<string, number[]>();
    for (let at = 0; at < size; at++) {
      const key = groupOf(slots[at].trial);
      const list = members.get(key);
      if (list === undefined) members.set(key, [at]);
      else list.push(at);
    }
    let sum = 0;
    for (const list of members.values()) {
      let mean = 0;
      let spread = 0;
      for (const i of list) {
        mean += scale * column[i] * w[i];
        for (const j of list) spread += scale * scale * column[i] * inverse[i * size + j] * column[j];
      }
      sum += mean * mean + Math.max(0, 1 - spread);
    }
    return [sum, members.size];
  };
  const sized = (usual: number, now: number, [sum, count]: [number, number]): number =>
    Math.sqrt((USUAL_WORTH * usual ** 2 + now ** 2 * sum) / (USUAL_WORTH + count));
  const runs = squares(effects.run, (trial) => String(trial), 1);
  const sessions = squares(effects.run, (trial) => groups.session[trial], before.session / before.run);
  const settings = (["core", "crust", "brown"] as const).map((clock) =>
    squares(effects[clock], (trial) => groups.setting[trial], 1),
  );
  const missed: [number, number] = [
    settings.reduce((sum, [square]) => sum + square, 0),
    settings.reduce((sum, [, count]) => sum + count, 0),
  ];
  return {
    crispTime: again("crispTime"),
    coreK: again("coreK"),
    lossPercent: again("lossPercent"),
    crispScore: again("crispScore"),
    brownScore: again("brownScore"),
    run: sized(USUAL_NOISE.run, before.run, runs),
    session: sized(USUAL_NOISE.session, before.session, sessions),
    misfit: Math.max(1, sized(1, before.misfit, missed)),
  };
}
