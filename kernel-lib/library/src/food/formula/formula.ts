import { z } from "zod";
import { kebabSchema, nameSchema } from "../../check/text-schema";
import type { RawClass } from "../ingredient/ingredient";
import { type TypedMass, typedMassG } from "./typed-mass";

/** What a formula must be cooked to is set by its class: the strictest raw one in it; without any, the last two. */
export type FoodClass = RawClass | "plant" | "readyToEat";

/**
 * What was done to the pieces before the reheat. `par-cooked`: heated, but not until every core had reached its limit, so
 * raw still. `cooked and cooled`: every core had reached it, and the pieces were cooled at once.
 */
export type FoodState = "raw" | "par-cooked" | "cooked and cooled";

/** One ingredient of a mix or a coating. */
export interface FormulaLine {
  /** id of the ingredient */
  readonly ingredient: string;
  /** `"250 g"`, `"1 1/2 tsp"`, `"2 large"`, `"1.5 % of turkey-ground-93"`, `"12 % of mix"` */
  readonly amount: string;
}

/** One ingredient of a mix; of a pot of its own, where some lines are cooked down before the rest goes in. */
export interface MixLine extends FormulaLine {
  /** the pot that this line is cooked in, by a name of `cookedG` */
  readonly pot?: string;
}

/** What a layer is for; layers go on in the order of the list. Oil taken up in a fryer is a layer: see `oilUptake`. */
export type LayerKind = "predust" | "wash" | "breading" | "spray oil" | "fryer oil";

/** The weight that a pickup percentage is of. */
export type PickupBasis = "substrate" | "finished";

/** One coating layer. */
export interface CoatingLayer {
  readonly layer: LayerKind;
  /** what the layer is made of: parts in grams or household measures; only the proportions count */
  readonly lines: readonly FormulaLine[];
  /** pickup (%): layer mass on the piece's mass before this layer (`substrate`) or after it (`finished`) */
  readonly pickupPercent: number;
  readonly pickupBasis: PickupBasis;
  /** standard uncertainty of `pickupPercent` (% points), from trials or assumed */
  readonly pickupSePercent: number;
  /** surface of the piece over its mass where the pickup was seen (cm²/g); other pieces scale from it; left out: no scaling */
  readonly atSurfaceCm2PerG?: number;
}

/** A recipe for a slab or a batter: what goes in, what goes on, how a serving is counted. */
export interface Formula {
  readonly id: string;
  readonly name: string;
  /** where the formula comes from: `"our own, from the spring menu"` */
  readonly origin: string;
  /** left out: what the ingredients ask for. One milder than that is refused when a kitchen is put together */
  readonly foodClass?: FoodClass;
  /** left out: raw when anything raw of an animal is in the mix or the coating */
  readonly state?: FoodState;
  /** share of the spread mix's volume that is air, 0 to below 0.8 */
  readonly airFraction: number;
  readonly mix: readonly MixLine[];
  /** total of the mix (g); needed only when every line is a percentage of the mix */
  readonly mixG?: number;
  /**
   * what the whole mix weighs once it is cooked, or what each pot of lines weighs, by its name: what is missing then is water.
   * Left out: nothing is boiled off
   */
  readonly cookedG?: TypedMass | Readonly<Record<string, TypedMass>>;
  /** in the order in which they go on; empty for an uncoated piece */
  readonly coating: readonly CoatingLayer[];
  readonly piecesPerServing: number;
  readonly note: string;
}

/** The most lines, layers, grams and pieces of a formula: our judgement, several times what a kitchen mixes at once. */
const MOST_LINES = 200;
const MOST_LAYERS = 20;
const MOST_PIECES = 10_000;
/** The most that one line, or the whole, may weigh (g): our judgement, a tonne. */
export const MOST_G = 1_000_000;

const lineSchema: z.ZodType<FormulaLine> = z.strictObject({
  ingredient: nameSchema(),
  amount: nameSchema("an amount"),
});

const mixLineSchema: z.ZodType<MixLine> = z.strictObject({
  ingredient: nameSchema(),
  amount: nameSchema("an amount"),
  pot: nameSchema("the name of a pot").optional(),
});

const A_MASS = 'a mass such as 870 (grams), "870 g" or "1 lb 15 oz"';
const massSchema: z.ZodType<TypedMass> = z
  .union([z.number(), nameSchema(A_MASS)], A_MASS)
  .refine((typed) => isMass(typed), A_MASS);

function isMass(typed: TypedMass): boolean {
  try {
    const massG = typedMassG(typed);
    return massG > 0 && massG <= MOST_G;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

const layerSchema: z.ZodType<CoatingLayer> = z.strictObject({
  layer: z.enum(["predust", "wash", "breading", "spray oil", "fryer oil"]),
  lines: z.array(lineSchema).min(1).max(MOST_LINES),
  pickupPercent: z.number().positive().max(200),
  pickupBasis: z.enum(["substrate", "finished"]),
  pickupSePercent: z.number().min(0).max(50),
  atSurfaceCm2PerG: z.number().positive().max(100).optional(),
});

/** Checks a formula that comes from outside. */
export const formulaSchema: z.ZodType<Formula> = z.strictObject({
  id: kebabSchema(),
  name: nameSchema(),
  origin: z.string().min(1).max(2000),
  foodClass: z.enum(["poultry", "groundMeat", "fish", "egg", "wholeMeat", "plant", "readyToEat"]).optional(),
  state: z.enum(["raw", "par-cooked", "cooked and cooled"]).optional(),
  airFraction: z.number().min(0).lt(0.8),
  mix: z.array(mixLineSchema).min(1).max(MOST_LINES),
  mixG: z.number().positive().max(MOST_G).optional(),
  cookedG: z
    .union(
      [massSchema, z.record(nameSchema("the name of a pot"), massSchema)],
      `${A_MASS}, or one for each pot by its name`,
    )
    .optional(),
  coating: z.array(layerSchema).max(MOST_LAYERS),
  piecesPerServing: z.int().positive().max(MOST_PIECES),
  note: z.string().max(2000),
});
