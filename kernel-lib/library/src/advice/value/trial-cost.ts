import { notNegative } from "../../check/check";
import { slabKey } from "../trial/planned-slab";

/** What trials cost a cook (min). Freezing costs none: nobody stands by. */
export interface TrialCost {
  /** weighing out and spreading a slab */
  readonly spreadMin: number;
  /** probing its depth, cutting and coating it */
  readonly cutMin: number;
  /** pre-heating, once for each appliance and setting */
  readonly preheatMin: number;
  /** weighing a load before and after */
  readonly weighMin: number;
  /** reading its core */
  readonly probeMin: number;
  /** having it scored */
  readonly scoreMin: number;
}

/** Minutes of a test kitchen, where nobody says other ones: common practice, no source. */
export const USUAL_COST: TrialCost = Object.freeze({
  spreadMin: 10,
  cutMin: 15,
  preheatMin: 5,
  weighMin: 3,
  probeMin: 2,
  scoreMin: 5,
});

/** A trial as far as its cost goes. */
export interface CostedTrial {
  readonly panId: string;
  readonly batchG: number;
  readonly setpointC: number;
  readonly timeMin: number;
  readonly probe: boolean;
}

/** Minutes and mix that trials take together. */
export interface Effort {
  /** of a cook's time (min) */
  readonly minutes: number;
  /** mix spread (g) */
  readonly gramsMix: number;
}

/** The usual costs with those that are given in their place; throws where one is below 0. */
export function costOf(given: Partial<TrialCost> = {}): TrialCost {
  const cost = { ...USUAL_COST, ...given };
  for (const [name, minutes] of Object.entries(cost)) notNegative(minutes, `nextTrial: cost.${name}`, "min");
  return cost;
}

/** What trials of one appliance cost together: a slab is spread and cut once, a setting pre-heated once. */
export function effortOf(
  trials: readonly (CostedTrial & { readonly slabId?: string })[],
  cost: TrialCost = USUAL_COST,
): Effort {
  const slabs = new Map(trials.map((trial) => [trial.slabId ?? slabKey(trial), trial.batchG] as const));
  const settings = new Set(trials.map(({ setpointC }) => setpointC));
  let minutes = slabs.size * (cost.spreadMin + cost.cutMin) + settings.size * cost.preheatMin;
  for (const { timeMin, probe } of trials)
    minutes += timeMin + cost.weighMin + (probe ? cost.probeMin + cost.scoreMin : 0);
  return { minutes, gramsMix: [...slabs.values()].reduce((sum, batchG) => sum + batchG, 0) };
}
