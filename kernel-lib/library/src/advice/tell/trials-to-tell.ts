import { positive, within } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { powerOfTwoMeans, trialsForTwoMeans } from "../../plan/power/two-means";
import type { Kitchen } from "../../trials/kitchen";
import { crispWindow } from "../window/crisp-window";
import { type Told, type TrialScatter, trialScatter } from "./trial-scatter";

/** What `trialsToTell` works from. */
export interface TrialsToTellOptions {
  readonly kitchen: Kitchen;
  /** the variant whose scatter counts, at its own setting; another variant is taken to scatter alike */
  readonly variantId: string;
  /** the smallest difference in crisp time worth seeing (min); 1 unless given */
  readonly minutes?: number;
  /** in a mean score, crispness or browning; 1 unless given */
  readonly points?: number;
  /** in the loss (% points of the mass); 1 unless given */
  readonly lossPoints?: number;
  /** chance of seeing it [-]; 0.9 unless given */
  readonly chance?: number;
}

/** Chances with so many trials of each variant. */
export interface ChanceToTell {
  readonly trials: number;
  /** both variants in every morning [-] */
  readonly sideBySide: number;
  /** with as little and as much scatter as the log allows for */
  readonly sideBySide95: readonly [number, number];
  /** every trial on a morning of its own [-] */
  readonly apart: number;
}

/** How many trials tell two variants apart by one quantity. */
export interface ToTell extends TrialScatter {
  /** as a person says it */
  readonly label: string;
  /** of difference and scatter */
  readonly unit: "min" | "points" | "% points";
  readonly difference: number;
  /** as a person says it: `"1 point"` */
  readonly differs: string;
  /** trials of each variant, both in every morning */
  readonly sideBySide: number;
  /** with as little and as much scatter as the log allows for */
  readonly sideBySide95: readonly [number, number];
  /** trials of each variant, every one on a morning of its own */
  readonly apart: number;
  readonly chances: readonly ChanceToTell[];
  readonly sentence: string;
}

/** How many trials of each variant tell two variants apart. */
export interface TrialsToTell {
  readonly kind: "trials to tell";
  readonly variantId: string;
  readonly variantName: string;
  readonly chance: number;
  readonly quantities: readonly ToTell[];
  readonly sentence: string;
}

const WORDS: Readonly<Record<Told, { readonly label: string; readonly unit: ToTell["unit"]; readonly one: string }>> = {
  crispTime: { label: "crisp time", unit: "min", one: "min" },
  crispScore: { label: "crispness score", unit: "points", one: "point" },
  brownScore: { label: "browning score", unit: "points", one: "point" },
  lossPercent: { label: "loss", unit: "% points", one: "% point" },
};

/** The chances are told up to this many trials of each; our judgement of what a kitchen runs. */
const MOST_TOLD = 15;
const DRAWS = 300;

/**
 * How many trials of each of two variants it takes to see that they differ by so many minutes, points of a score or % points of
 * loss, from this kitchen's own scatter (`trialScatter`): two-sided t test at 5 %, `trialsForTwoMeans`. Side by side, both
 * variants run in every morning, and what a morning shares falls out of the difference; apart, it adds to the scatter.
 *
 * @returns trials of each, the range that the doubt of the scatter leaves, and the chances of fewer or more
 * @example
 * const { quantities } = trialsToTell({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * quantities.map(({ label, sideBySide }) => `${label} ${sideBySide}`)[0]; // → "crisp time 6"
 */
export function trialsToTell(options: TrialsToTellOptions): TrialsToTell {
  const where = "trialsToTell";
  const { kitchen, variantId, minutes = 1, points = 1, lossPoints = 1, chance = 0.9 } = options;
  const differences: Readonly<Record<Told, number>> = {
    crispTime: positive(minutes, `${where}: minutes`, "min"),
    crispScore: positive(points, `${where}: points`, ""),
    brownScore: points,
    lossPercent: positive(lossPoints, `${where}: lossPoints`, "% points"),
  };
  within(chance, 0.1, 0.999, `${where}: chance`, "");
  const window = crispWindow({ kitchen, variantId, draws: DRAWS });
  const quantities = trialScatter({ kitchen, window }).map((scatter) =>
    toTell(scatter, differences[scatter.of], chance),
  );
  return freezeDeep({
    kind: "trials to tell",
    variantId,
    variantName: window.variantName,
    chance,
    quantities,
    sentence: [
      `${window.variantName}, to tell it from another variant ${Math.round(100 * chance)} times in 100:`,
      ...quantities.map(({ sentence }) => sentence),
      "Every core is probed as ever: a difference in crispness is none in safety.",
    ].join("\n"),
  });
}

function toTell(scatter: TrialScatter, difference: number, chance: number): ToTell {
  const { sd, sd95, morningSd, measurements } = scatter;
  const { label, unit, one } = WORDS[scatter.of];
  const differs = `${difference} ${difference === 1 ? one : unit}`;
  const wide = Math.hypot(sd, morningSd);
  const needed = (own: number): number => Math.ceil(trialsForTwoMeans({ difference, sd: own }, chance) - 1e-9);
  const power = (own: number, trials: number): number => powerOfTwoMeans({ difference, sd: own }, trials);
  const sideBySide = needed(sd);
  const sideBySide95 = [needed(sd95[0]), needed(sd95[1])] as const;
  const apart = needed(wide);
  const chances = Array.from({ length: MOST_TOLD - 1 }, (_, at) => at + 2).map((trials) => ({
    trials,
    sideBySide: power(sd, trials),
    sideBySide95: [power(sd95[1], trials), power(sd95[0], trials)] as const,
    apart: power(wide, trials),
  }));
  const rests =
    measurements === 0 ? "what is usual, as none was measured yet" : `${measurements} measured and what is usual`;
  const range =
    sideBySide95[0] === sideBySide95[1]
      ? ""
      : ` (${sideBySide95[0]} to ${sideBySide95[1]} by the doubt of that scatter)`;
  return {
    ...scatter,
    label,
    unit,
    difference,
    differs,
    sideBySide,
    sideBySide95,
    apart,
    chances,
    sentence: `A ${label} that differs by ${differs}: ${sideBySide} trials of each${range} when both run in every morning, ${apart} when each has its own. One trial scatters by ${sd.toFixed(2)} ${unit}, from ${rests}.`,
  };
}
