import { rangeText } from "../../units/range-text";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type CrispNoise, USUAL_NOISE } from "./crisp-noise";
import type { CrispObservation } from "./crisp-observation";

/** A disagreement that a person must look into before a time is printed. */
export interface Contradiction {
  /** trials it is about; empty when it is about the log as a whole */
  readonly trials: readonly string[];
  readonly sentence: string;
}

/** What `contradictionsIn` looks at. */
export interface ContradictionsOptions {
  readonly observations: readonly CrispObservation[];
  readonly noise: CrispNoise;
  readonly mixWaterKgM3: number;
  readonly crustWaterKgM3: number;
  /** units of the sentences; default metric */
  readonly units?: KitchenUnits;
  /** what the clocks say a probe reads in a trial, and at four fifths and five quarters of its time (°C) */
  readonly clockReadingC: (
    seen: CrispObservation,
    rested: boolean,
  ) => { readonly middle: number; readonly early: number; readonly late: number };
}

/** A core may read so much colder, or warmer, than a fifth of the time explains (K): too cold is the dangerous side; our judgement. */
const TOO_COLD_K = 10;
const TOO_WARM_K = 15;
/** Noise this many times the usual is no noise but a misfit; our judgement. */
const UNUSUAL = 2.4;

/**
 * Where a log disagrees with the clocks, with itself or with what a mix can hold: each as one sentence that names the
 * trials. The clocks may run a fifth fast or slow in one trial before a reading of it counts as a contradiction.
 */
export function contradictionsIn(options: ContradictionsOptions): readonly Contradiction[] {
  const { observations, noise, mixWaterKgM3, crustWaterKgM3, clockReadingC, units = "metric" } = options;
  const about = (celsius: number): string => ownTemperatureText(celsius, units, 0);
  const found: Contradiction[] = [];
  for (const seen of observations) {
    for (const rested of [false, true]) {
      const read = rested ? seen.restedCoreC : seen.coreC;
      if (read === null) continue;
      const { middle, early, late } = clockReadingC(seen, rested);
      if (read >= early - TOO_COLD_K && read <= late + TOO_WARM_K) continue;
      found.push({
        trials: [seen.id],
        sentence: `${seen.id} read a core of ${ownTemperatureText(read, units)} after ${seen.timeMin.toFixed(1)} min where the other trials say ${about(middle)} (${rangeText([early, late], about)} a fifth earlier or later): look at probe, time and thickness of that trial`,
      });
    }
  }
  const wide: readonly [keyof CrispNoise, string, string][] = [
    ["coreK", "core readings", "K"],
    ["run", "runs", ""],
    ["crispTime", "crisp times", ""],
    ["misfit", "settings", ""],
  ];
  for (const [kind, what, unit] of wide) {
    if (noise[kind] <= UNUSUAL * USUAL_NOISE[kind]) continue;
    const size =
      unit === ""
        ? `${Math.round(100 * noise[kind])} %`
        : units === "us"
          ? `${(1.8 * noise[kind]).toFixed(1)} °F`
          : `${noise[kind].toFixed(1)} ${unit}`;
    found.push({
      trials: [],
      sentence: `the log's ${what} scatter about the clocks by ${size}, ${(noise[kind] / USUAL_NOISE[kind]).toFixed(1)} times the usual: the clocks do not describe these trials`,
    });
  }
  if (crustWaterKgM3 > 1.1 * mixWaterKgM3)
    found.push({
      trials: [],
      sentence: `the weights ask for ${crustWaterKgM3.toFixed(0)} kg of water from each m³ of crust, and the mix holds ${mixWaterKgM3.toFixed(0)}: look at weights, moisture of the formula and piece sizes`,
    });
  return found;
}
