import { listed } from "../../check/slip";
import { ownLengthText } from "../../units/length-text";
import { ownMassText } from "../../units/mass-text";
import { thicknessWords } from "../../units/thickness-text";
import type { Kitchen, KitchenTrial } from "../kitchen";
import { panOf, variantOf } from "../kitchen-lookup";
import { type ThicknessOfTrial, thicknessOfTrial } from "../thickness-of-trial";
import { lossOfTrial } from "./loss-of-trial";
import { isUsual, type WeightOfTrial, weightOfTrial } from "./weight-of-trial";
import { type WeightWitness, weightWitness } from "./weight-witness";

/** What `trialNotices` works from. */
export interface TrialNoticesOptions {
  readonly kitchen: Pick<Kitchen, "pans" | "variants" | "units">;
  readonly trials: readonly KitchenTrial[];
}

type Units = Kitchen["units"];

interface OddWeight {
  readonly trial: KitchenTrial;
  readonly weight: WeightOfTrial;
}

interface MeasuredSlab {
  readonly trial: KitchenTrial;
  readonly slab: ThicknessOfTrial;
}

/** From so many trials of a variant on, if they are half of those that can tell, probes that are off to one side are one line: our judgement. */
const ONE_SIDED = 5;
/** From so many trials on, weights of a variant that are odd alike are one line: its cut or coating, not the scale. */
const ALIKE = 3;
/** Ratios within this factor are alike. */
const ALIKE_WITHIN = 1.25;

/**
 * Where a trial's masses, probes and pieces contradict each other, a sentence each: probes against batch mass, with whom the
 * scale agrees; pieces that do not weigh what cut, thickness and coating make; a loss that no piece survives. What most trials
 * of a variant have alike is one sentence.
 */
export function trialNotices({ kitchen, trials }: TrialNoticesOptions): readonly string[] {
  const { units } = kitchen;
  const odd = new Map<string, OddWeight[]>();
  const slabs = new Map<string, MeasuredSlab[]>();
  const notices = trials.flatMap((trial): string[] => {
    const slab = thicknessOfTrial({
      trial,
      pan: panOf(kitchen, trial.panId),
      densityKgM3: variantOf(kitchen, trial.variantId).densityKgM3,
      units,
    });
    const loss = lossNotice(trial, units);
    if (slab.disagreement !== null) {
      const others = slabs.get(trial.variantId);
      if (others === undefined) slabs.set(trial.variantId, [{ trial, slab }]);
      else others.push({ trial, slab });
    }
    if (slab.notice !== null) return loss;
    const weight = orNull(() => weightOfTrial({ kitchen, trial }));
    if (weight !== null && !isUsual(weight)) {
      const others = odd.get(trial.variantId);
      if (others === undefined) odd.set(trial.variantId, [{ trial, weight }]);
      else others.push({ trial, weight });
    }
    return loss;
  });
  return [
    ...[...slabs.values()].flatMap((one) => slabNotices(one, kitchen)),
    ...notices,
    ...[...odd.values()].flatMap((one) => weightNotices(one, units)),
  ];
}

const GOES_WITH: Readonly<Record<WeightWitness["goesWith"], string>> = {
  probes: "the scale goes with the probes",
  batch: "the scale goes with the batch mass",
  either: "the scale cannot tell which",
  neither: "the scale agrees with neither",
};

/** Slabs of one variant whose probes and batch mass contradict each other: those that most do to the same side in one line. */
function slabNotices(measured: readonly MeasuredSlab[], kitchen: TrialNoticesOptions["kitchen"]): readonly string[] {
  const amiss = measured.filter(({ slab }) => slab.notice !== null);
  const below = amiss.filter(({ slab }) => (slab.disagreement as number) < 0);
  const sides = [below, amiss.filter((one) => !below.includes(one))];
  const alike = sides.find((side) => side.length >= ONE_SIDED && 2 * side.length >= measured.length) ?? [];
  const alone = amiss.filter((one) => !alike.includes(one)).map((one) => slabNotice(one, kitchen));
  return alike.length === 0 ? alone : [slabNoticeOfSeveral(alike, measured.length, kitchen), ...alone];
}

function slabNoticeOfSeveral(
  alike: readonly MeasuredSlab[],
  measured: number,
  kitchen: TrialNoticesOptions["kitchen"],
): string {
  const { variantId } = alike[0].trial;
  const percents = alike
    .map(({ slab }) => Math.round(100 * Math.abs(slab.disagreement as number)))
    .sort((a, b) => a - b);
  const [low, high] = [percents[0], percents.at(-1)];
  const less = (alike[0].slab.disagreement as number) < 0 ? "less" : "more";
  const witnesses = alike.flatMap((one) => witnessOf(one, kitchen) ?? []);
  const scale = (["probes", "batch", "either", "neither"] as const).flatMap((side) => {
    const times = witnesses.filter(({ goesWith }) => goesWith === side).length;
    return times === 0 ? [] : [`${GOES_WITH[side]} in ${times}`];
  });
  const isAll = alike.length === measured;
  const names = isAll ? "" : ` (${listed(alike.map(({ trial }) => trial.trialId))})`;
  const percent = low === high ? low : `${low} to ${high}`;
  return [
    `${isAll ? "all" : `${alike.length} of`} ${measured} trials of ${variantId} with probes and a batch mass: the probes say ${percent} % ${less} than the batch mass makes${names}`,
    "as it is alike in so many, check how the batch is weighed, the sizes of the pan, how the probes are read and the air in the mix",
    ...scale,
  ].join("; ");
}

function witnessOf({ trial, slab }: MeasuredSlab, kitchen: TrialNoticesOptions["kitchen"]): WeightWitness | null {
  return orNull(() => weightWitness({ kitchen, trial, massMm: slab.massMm as number }));
}

function slabNotice({ trial, slab }: MeasuredSlab, kitchen: TrialNoticesOptions["kitchen"]): string {
  const witness = witnessOf({ trial, slab }, kitchen);
  if (witness === null) return slab.notice as string;
  const [weighed, probes, batch] = [witness.weighedG, witness.probesG, witness.batchG].map((massG) =>
    ownMassText(massG, kitchen.units),
  );
  return `${slab.notice}; ${GOES_WITH[witness.goesWith]}: ${weighed} a piece, where the probes make ${probes} and the batch ${batch}`;
}

/** Nothing, where the variant cannot be cut on its pan: that is a slip of `variants.csv` or `pans.csv`, and said as one. */
function orNull<T>(weigh: () => T): T | null {
  try {
    return weigh();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return null;
  }
}

function lossNotice(trial: KitchenTrial, units: Units): string[] {
  const { massBeforeG, massAfterG, trialId } = trial;
  if (massBeforeG === null || massAfterG === null || lossOfTrial(trial) !== null) return [];
  const percent = (100 * (1 - massAfterG / massBeforeG)).toFixed(0);
  return [
    `trial ${trialId}: ${ownMassText(massBeforeG, units)} before and ${ownMassText(massAfterG, units)} after would be ${percent} % lost; one of the two is a slip, and the loss is not counted`,
  ];
}

/** Weights of one variant that are odd: alike ones in one line. */
function weightNotices(odd: readonly OddWeight[], units: Units): string[] {
  const groups: OddWeight[][] = [];
  for (const one of odd.toSorted((a, b) => a.weight.ratio - b.weight.ratio)) {
    const group = groups.at(-1);
    if (group !== undefined && one.weight.ratio <= ALIKE_WITHIN * group[0].weight.ratio) group.push(one);
    else groups.push([one]);
  }
  return groups.flatMap((group) =>
    group.length < ALIKE ? group.map((one) => weightNotice(one, units)) : [weightNoticeOfSeveral(group)],
  );
}

/** Where the loss stands, and what does not. */
const SO_FAR = "the loss stands, as the same pieces were weighed twice; kcal and macros are of the calculated piece";

function weightNotice({ trial, weight }: OddWeight, units: Units): string {
  const { trialId, massBeforeG, pieces, thicknessMm } = trial;
  const { weighedG, calculatedG, sidesMm, ratio } = weight;
  const own = (massG: number): string => ownMassText(massG, units);
  return (
    `trial ${trialId}: ${pieces} pieces weigh ${own(massBeforeG as number)}, ${own(weighedG)} each: ${timesText(ratio)} the ${own(calculatedG)} ` +
    `that ${ownLengthText(sidesMm, units)} of ${thicknessWords(thicknessMm, units)} make, coated; ${checkText(weight, pieces as number)}; ${SO_FAR}`
  );
}

function weightNoticeOfSeveral(group: readonly OddWeight[]): string {
  const names = group.map(({ trial }) => trial.trialId).sort();
  const [low, high] = [group[0].weight.ratio, (group.at(-1) as OddWeight).weight.ratio].map(timesText);
  const range = low === high ? low : `${low.replace(" times", "")} to ${high}`;
  const { trial, weight } = group[0];
  return (
    `trials ${names.slice(0, -1).join(", ")} and ${names.at(-1)}: pieces weigh ${range} what the cut of ${trial.variantId}, its thickness and coating make; ` +
    `${checkText(weight, trial.pieces as number)}; ${SO_FAR}`
  );
}

function timesText(ratio: number): string {
  return `${ratio >= 10 ? ratio.toFixed(0) : Number(ratio.toPrecision(2))} times`;
}

function checkText({ ratio, usual, bareG, calculatedG }: WeightOfTrial, pieces: number): string {
  const slips: readonly (readonly [factor: number, question: string])[] = [
    [10, "is a digit too many in the weight, or one missing in the pieces"],
    [1 / 10, "is a digit missing in the weight, or one too many in the pieces"],
    [28.35, "are these grams under an ounce heading"],
    [1 / 28.35, "are these ounces under a gram heading"],
    [16, "are these ounces under a pound heading"],
    [1 / 16, "are these pounds under an ounce heading"],
    [453.6, "are these grams under a pound heading"],
    [1 / 453.6, "are these pounds under a gram heading"],
    ...(pieces > 1 ? [[1 / pieces, "is this the weight of one piece"] as const] : []),
    [bareG / calculatedG, "were they weighed bare"],
  ];
  const near = slips
    .map(([factor, question]) => ({ question, off: Math.abs(Math.log(ratio / factor)) }))
    .filter(({ off }) => off < Math.log(usual[1]));
  const rest = "check the weight, the number of pieces, the cut and the pan";
  if (near.length === 0) return rest;
  return `${near
    .sort((a, b) => a.off - b.off)
    .map(({ question }) => question)
    .join(", or ")}? Else ${rest}`;
}
