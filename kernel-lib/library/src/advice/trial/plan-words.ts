import { limitText } from "../../safety/limit-text";
import type { Kitchen, KitchenVariant } from "../../trials/kitchen";
import { lengthText } from "../../units/length-text";
import { massText } from "../../units/mass-text";
import { thicknessText } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { PlannedSlab } from "./planned-slab";

/** What a step of a plan is for. */
export type StepOf = "spread" | "freeze" | "measure" | "cut" | "coat" | "heat" | "load" | "score" | "log" | "decide";

/** One thing to do, as a sentence that a cook understands. */
export interface PlanStep {
  readonly of: StepOf;
  readonly sentence: string;
}

/** What `slabSteps` works from. */
export interface SlabStepsOptions {
  readonly variant: KitchenVariant;
  readonly units: KitchenUnits;
  readonly slabs: readonly PlannedSlab[];
}

/** From weighing out the mix to pieces hard in the freezer, for one slab or two. */
export function slabSteps({ variant, units, slabs }: SlabStepsOptions): readonly PlanStep[] {
  if (variant.form === "batter")
    return [
      ...slabs.map((slab) => fillStep(slab, units)),
      bakeStep(variant, units),
      heightStep(slabs),
      ...coatSteps(variant),
    ];
  const cuts = slabs.map((slab) => cutText(slab, units));
  const isAlike = cuts.every((cut) => cut === cuts[0]);
  const names = isAlike ? [slabs.length === 1 ? "the slab" : "each slab"] : ["the first slab", "the second slab"];
  return [
    ...slabs.map((slab, at) => spreadStep(slab, units, at === 0 ? null : slabs[0])),
    { of: "freeze", sentence: `Freeze ${slabs.length === 1 ? "it" : "both"} level until firm enough to cut clean.` },
    depthStep(slabs),
    ...names.map((name, at): PlanStep => ({ of: "cut", sentence: `${trimText(name, variant, units)} ${cuts[at]}.` })),
    ...coatSteps(variant),
  ];
}

function trimText(name: string, { trimMm }: KitchenVariant, units: KitchenUnits): string {
  return trimMm === 0 ? `Cut ${name}` : `Trim ${lengthText(trimMm, units)} off every edge of ${name} and cut it`;
}

function cutText({ rows, columns, pieces, sidesMm }: PlannedSlab, units: KitchenUnits): string {
  const size = lengthText(sidesMm, units);
  return pieces === 1 ? `as one piece of ${size}` : `${rows} by ${columns}, into ${pieces} pieces of ${size}`;
}

function spreadStep(slab: PlannedSlab, units: KitchenUnits, first: PlannedSlab | null): PlanStep {
  const { panName, batchG, thicknessMm } = slab;
  const where =
    first === null
      ? `on the ${panName}`
      : `on ${first.panId === slab.panId ? "another" : "the"} ${panName}, as the second slab`;
  return {
    of: "spread",
    sentence: `Weigh out ${massText(batchG, units)} of mix and spread it level ${where}; it should lie about ${thicknessText(thicknessMm, units)} deep.`,
  };
}

function fillStep({ panName, batchG, thicknessMm, pieces }: PlannedSlab, units: KitchenUnits): PlanStep {
  return {
    of: "spread",
    sentence: `Fill the ${pieces} wells of a ${panName} with ${massText(batchG, units)} of batter in all, ${massText(batchG / pieces, units)} a well; it should stand about ${thicknessText(thicknessMm, units)} deep.`,
  };
}

function bakeStep({ name, limit }: KitchenVariant, units: KitchenUnits): PlanStep {
  const done =
    limit.state === "cooked and cooled"
      ? ` until every core is at ${limitText(limit, units)}, cool them as the caution below says`
      : " as the formula has it";
  return { of: "freeze", sentence: `Bake the ${name} in their wells${done}, freeze them hard, and turn them out.` };
}

function heightStep(slabs: readonly PlannedSlab[]): PlanStep {
  return {
    of: "measure",
    sentence: `Measure the thickness of five frozen pieces${slabs.length === 1 ? "" : " of each filling"} in the middle, and write all of them down.`,
  };
}

function depthStep(slabs: readonly PlannedSlab[]): PlanStep {
  return {
    of: "measure",
    sentence: `Measure the depth of ${slabs.length === 1 ? "the frozen slab" : "each frozen slab"} at five places, the corners and the middle, and write all five down.`,
  };
}

function coatSteps({ formula, limit, form }: KitchenVariant): readonly PlanStep[] {
  const layers = formula.coating.map(({ layer }) => layer);
  const coat = layers.length === 0 ? [] : [`coat the pieces (${layers.join(", ")})`];
  const cook =
    form === "batter"
      ? []
      : limit.state === "par-cooked"
        ? ["par-cook and cool them as the formula has it, raw inside still"]
        : limit.state === "cooked and cooled"
          ? ["cook every core to its limit and cool them as the caution below says"]
          : [];
  if (form === "batter" && coat.length === 0) return [];
  const parts = [
    ...coat,
    ...cook,
    `freeze ${coat.length + cook.length === 0 ? "the pieces" : "them"} hard, apart from each other`,
  ];
  const words = parts.length === 1 ? parts[0] : `${parts.slice(0, -1).join(", ")}, and ${parts.at(-1)}`;
  return [{ of: "coat", sentence: `${words[0].toUpperCase()}${words.slice(1)}.` }];
}

/** How many tasters score in this kitchen: as most of its logs have it, `null` where nobody has scored yet. */
export function tastersOf(kitchen: Kitchen, variantId: string): number | null {
  const counts = (trials: Kitchen["trials"]): number[] =>
    trials.map((trial) => trial.crispScores.length).filter((count) => count > 0);
  const own = counts(kitchen.trials.filter((trial) => trial.variantId === variantId));
  const logged = own.length > 0 ? own : counts(kitchen.trials);
  return logged.length === 0 ? null : logged.sort((a, b) => a - b)[logged.length >> 1];
}

/** Who scores, as the subject of a sentence. */
export function tastersText(tasters: number | null): string {
  if (tasters === null) return "whoever is there";
  return tasters === 1 ? "your taster" : `your ${tasters} tasters`;
}

/** Times of looks in a sentence: `"8, 10 and 12 min"`. */
export function looksText(looksMin: readonly number[]): string {
  const last = looksMin.at(-1) as number;
  return looksMin.length === 1 ? `${last} min` : `${looksMin.slice(0, -1).join(", ")} and ${last} min`;
}
