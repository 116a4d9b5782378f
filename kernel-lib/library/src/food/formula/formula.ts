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
  /** standard uncertainty of `pickupPercent` (% points), from trials or assumed; a fifth of it where a file does not say */
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

const AN_AMOUNT = 'an amount such as "250 g", "1 1/2 tsp", "2 large" or "1.5 % of mix"';
const lineSchema: z.ZodType<FormulaLine> = z.strictObject({
  ingredient: nameSchema("the id of an ingredient"),
  amount: nameSchema(AN_AMOUNT),
});

const mixLineSchema: z.ZodType<MixLine> = z.strictObject({
  ingredient: nameSchema("the id of an ingredient"),
  amount: nameSchema(AN_AMOUNT),
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

/** What a coating layer can be. */
export const LAYER_KINDS: readonly LayerKind[] = Object.freeze([
  "predust",
  "wash",
  "breading",
  "spray oil",
  "fryer oil",
]);
const FOOD_CLASSES = ["poultry", "groundMeat", "fish", "egg", "wholeMeat", "plant", "readyToEat"] as const;
const STATES = ["raw", "par-cooked", "cooked and cooled"] as const;

/** What is taken where a file does not say how sure a pickup is, as a share of it: our judgement. */
const PICKUP_SE_SHARE = 0.2;

const oneOf = (words: readonly string[]): string => `one of ${words.join(", ")}`;
const A_PICKUP = "a pickup above 0 and up to 200 (%)";
const A_PICKUP_SE = "how sure the pickup is, 0 to 50 (% points)";
const A_SURFACE = "a surface above 0 and up to 100 cm²/g";
const layerSchema: z.ZodType<CoatingLayer> = z
  .strictObject({
    layer: z.enum(LAYER_KINDS, oneOf(LAYER_KINDS)),
    lines: z.array(lineSchema, "what the layer is made of").min(1, "what the layer is made of").max(MOST_LINES),
    pickupPercent: z.number(A_PICKUP).positive(A_PICKUP).max(200, A_PICKUP),
    pickupBasis: z.enum(["substrate", "finished"], "substrate or finished").default("substrate"),
    pickupSePercent: z.number(A_PICKUP_SE).min(0, A_PICKUP_SE).max(50, A_PICKUP_SE).optional(),
    atSurfaceCm2PerG: z.number(A_SURFACE).positive(A_SURFACE).max(100, A_SURFACE).optional(),
  })
  .transform(({ pickupSePercent, ...layer }) => ({
    ...layer,
    pickupSePercent: pickupSePercent ?? Math.min(50, PICKUP_SE_SHARE * layer.pickupPercent),
  }));

const AIR = "a share of air, 0 to below 0.8 (80 %)";
const A_TOTAL = `a mass of the mix above 0 and up to ${MOST_G} g`;
const PIECES = `a whole number of pieces, 1 to ${MOST_PIECES}`;
const LINES = "the lines of the mix, each with its ingredient and amount";
const A_NOTE = "a text of at most 2000 characters";

/** Checks a formula that comes from outside; what may be left out is filled in. */
export const formulaSchema: z.ZodType<Formula> = z
  .strictObject({
    id: kebabSchema(),
    name: nameSchema().optional(),
    origin: z.string(A_NOTE).min(1, A_NOTE).max(2000, A_NOTE).default("not stated"),
    foodClass: z.enum(FOOD_CLASSES, oneOf(FOOD_CLASSES)).optional(),
    state: z.enum(STATES, oneOf(STATES)).optional(),
    airFraction: z.number(AIR).min(0, AIR).lt(0.8, AIR).default(0),
    mix: z.array(mixLineSchema, LINES).min(1, LINES).max(MOST_LINES),
    mixG: z.number(A_TOTAL).positive(A_TOTAL).max(MOST_G, A_TOTAL).optional(),
    cookedG: z
      .union(
        [massSchema, z.record(nameSchema("the name of a pot"), massSchema)],
        `${A_MASS}, or one for each pot by its name`,
      )
      .optional(),
    coating: z.array(layerSchema, "layers in brackets").max(MOST_LAYERS).default([]),
    piecesPerServing: z.int(PIECES).positive(PIECES).max(MOST_PIECES, PIECES).default(1),
    note: z.string(A_NOTE).max(2000, A_NOTE).default(""),
  })
  .transform(({ name, ...formula }) => ({ ...formula, name: name ?? formula.id.replaceAll("-", " ") }));

/** The names that a formula has, and those of its lines and layers, by the path of what holds them. */
export const FORMULA_NAMES: Readonly<Record<"" | "mix" | "coating" | "lines", readonly string[]>> = {
  "": [
    "id",
    "name",
    "origin",
    "foodClass",
    "state",
    "airFraction",
    "mix",
    "mixG",
    "cookedG",
    "coating",
    "piecesPerServing",
    "note",
  ],
  mix: ["ingredient", "amount", "pot"],
  coating: ["layer", "lines", "pickupPercent", "pickupBasis", "pickupSePercent", "atSurfaceCm2PerG"],
  lines: ["ingredient", "amount"],
};
