import { fail, notNegative, positive, within } from "../check/check";
import type { FormulaTotals } from "../food/formula/formula-totals";
import type { WeighedLine } from "../food/formula/weigh-lines";
import type { Ingredient } from "../food/ingredient/ingredient";
import { NUTRIENT_NAMES, type NutrientName, type Nutrients } from "../food/ingredient/nutrients";
import { convertPickup } from "../yield/pickup";
import { type EnergyBasis, energyOf } from "./energy-of";

/** What one cook or reheat leaves of the pieces. */
export interface StageYield {
  /** mass after on mass before (%) */
  readonly yieldPercent: number;
  /** standard error of `yieldPercent` (% points) */
  readonly yieldSePercent: number;
  /** fat left (% of the fat before); 100 unless given: all the loss is water */
  readonly fatRetentionPercent?: number;
  /** standard error of `fatRetentionPercent` (% points); 0 unless given */
  readonly fatRetentionSePercent?: number;
}

/** How well the weights and the table's values are known: standard uncertainties (%), all of them our judgement. */
export interface MacroDoubt {
  /** of a weighed line or a percentage of one; 0.5 unless given */
  readonly weighedPercent?: number;
  /** of a line measured by cups, spoons or counts; 10 unless given */
  readonly householdPercent?: number;
  /** of each value of each ingredient in the table; 5 unless given */
  readonly compositionPercent?: number;
}

/** What the macros of a piece are worked out from. */
export interface PieceMacrosOptions {
  /** from `formulaTotals` */
  readonly totals: FormulaTotals;
  /** mass of the bare piece (g) */
  readonly pieceG: number;
  /** standard uncertainty of that mass (g): spread from piece to piece for one piece, less for a mean; 0 unless given */
  readonly pieceSeG?: number;
  /** surface of the bare piece (mm²): scales the pickups; left out, they are taken as stated */
  readonly surfaceMm2?: number;
  /** coated piece to frozen piece; left out: nothing is lost */
  readonly cook?: StageYield;
  /** frozen piece to the plate; left out: nothing is lost */
  readonly reheat?: StageYield;
  /** `"published"` unless given */
  readonly energyBasis?: EnergyBasis;
  readonly doubt?: MacroDoubt;
}

/** The quantities that come out of the model, each over all nutrients in the order of `NUTRIENT_NAMES`. */
export const MACRO_VIEWS = ["perPiece", "per100GRaw", "per100GFrozen", "per100GEaten"] as const;

/** Length of the output of `evaluate`: the views, then bare, coated, frozen and eaten mass. */
export const MACRO_OUTPUTS: number = MACRO_VIEWS.length * NUTRIENT_NAMES.length + 4;

/** A compiled model: independent inputs and a function from their values to all outputs. */
export interface MacroModel {
  /** what each input is, for the shares of the doubt */
  readonly inputNames: readonly string[];
  readonly values: Float64Array;
  /** standard uncertainties of the inputs */
  readonly uncertainties: Float64Array;
  readonly evaluate: (values: Float64Array, out: Float64Array) => void;
  /** index of the first of the inputs "composition of the mix", one a nutrient */
  readonly compositionAt: number;
  /** standard uncertainty (per 100 g of mix) that each line's table values bring: a row a line, a cell a nutrient */
  readonly compositionParts: readonly Float64Array[];
  /** nutrient to the names of the ingredients that do not state it */
  readonly missing: Readonly<Partial<Record<NutrientName, readonly string[]>>>;
  readonly notices: readonly string[];
}

const COUNT: number = NUTRIENT_NAMES.length;
const WATER: number = NUTRIENT_NAMES.indexOf("waterG");
const ENERGY: number = NUTRIENT_NAMES.indexOf("energyKcal");
const FAT: number = NUTRIENT_NAMES.indexOf("fatG");
const SATURATED: number = NUTRIENT_NAMES.indexOf("saturatedFatG");
const FAT_KCAL_G = 9;

interface Part {
  readonly massesG: readonly number[];
  /** per 100 g, one row an ingredient; not known counts as 0 and is listed in `missing` */
  readonly contents: readonly Float64Array[];
}

/**
 * Compiles the chain mix → piece → coated → cooked → reheated into one function of independent inputs: the mass of
 * every line, of every pot that is cooked down, the composition of the mix (one error a nutrient) and of each layer (one error a layer), each pickup, the
 * piece's mass, each stage's yield and fat retention. Water loss concentrates; fat that drips takes 9 kcal a gram with
 * it; protein, carbohydrate, minerals and cholesterol are taken to stay.
 */
export function macroModel(options: PieceMacrosOptions): MacroModel {
  const { totals } = options;
  const pieceG = positive(options.pieceG, "pieceMacros: pieceG", "g");
  const pieceSeG = notNegative(options.pieceSeG ?? 0, "pieceMacros: pieceSeG", "g");
  const surfaceCm2PerG =
    options.surfaceMm2 === undefined
      ? null
      : positive(options.surfaceMm2, "pieceMacros: surfaceMm2", "mm2") / 100 / pieceG;
  const weighed = notNegative(options.doubt?.weighedPercent ?? 0.5, "pieceMacros: weighedPercent", "%") / 100;
  const household = notNegative(options.doubt?.householdPercent ?? 10, "pieceMacros: householdPercent", "%") / 100;
  const spread = notNegative(options.doubt?.compositionPercent ?? 5, "pieceMacros: compositionPercent", "%") / 100;
  const stages = [stageOf(options.cook, "cook"), stageOf(options.reheat, "reheat")];
  const notices: string[] = [];
  const missing: Partial<Record<NutrientName, string[]>> = {};
  const basis = options.energyBasis ?? "published";
  const partOf = (lines: readonly WeighedLine[]): Part => ({
    massesG: lines.map((line) => line.massG),
    contents: lines.map((line) => contentOf(line.ingredient, basis, missing, notices)),
  });
  const mix = partOf(totals.lines);
  const layers = totals.layers.map(({ layer, lines }) => {
    const percent = convertPickup({ percent: layer.pickupPercent, from: layer.pickupBasis, to: "substrate" });
    const scale =
      surfaceCm2PerG === null || layer.atSurfaceCm2PerG === undefined ? 1 : surfaceCm2PerG / layer.atSurfaceCm2PerG;
    return { layer, content: meanContent(partOf(lines)), statedPercent: layer.pickupPercent, percent, scale };
  });

  const inputNames: string[] = [];
  const values: number[] = [];
  const uncertainties: number[] = [];
  const input = (name: string, value: number, uncertainty: number): number => {
    inputNames.push(name);
    values.push(value);
    uncertainties.push(uncertainty);
    return values.length - 1;
  };
  const firstLine = 0;
  for (const line of totals.lines) {
    const relative = line.by === "household measure" ? household : weighed;
    input(`weight of ${line.ingredient.name}`, line.massG, line.massG * relative);
  }
  const firstPot = values.length;
  for (const { pot, cookedG } of totals.pots)
    input(`cooked mass of ${pot === null ? "the mix" : pot}`, cookedG, cookedG * weighed);
  const compositionParts = contentParts(mix, totals.mixG, spread);
  const mixSpread = inQuadrature(compositionParts);
  const firstComposition = values.length;
  for (const spreadG of mixSpread) input("composition of the mix", 0, spreadG);
  const layerInputs = layers.map(({ layer }) => ({
    pickup: input(`pickup of ${layer.layer}`, layer.pickupPercent, layer.pickupSePercent),
    composition: input(`composition of ${layer.layer}`, 1, spread),
  }));
  const piece = input("mass of the piece", pieceG, pieceSeG);
  const stageInputs = stages.map((stage, at) => ({
    kept: input(at === 0 ? "cook yield" : "reheat yield", stage.yieldPercent / 100, stage.yieldSePercent / 100),
    fat: input("fat retention", stage.fatRetentionPercent / 100, stage.fatRetentionSePercent / 100),
  }));

  const lineCount = mix.contents.length;
  const evaluate = (v: Float64Array, out: Float64Array): void => {
    let mixG = 0;
    for (let k = 0; k < COUNT; k++) out[k] = 0;
    for (let line = 0; line < lineCount; line++) {
      const massG = v[firstLine + line];
      const content = mix.contents[line];
      mixG += massG;
      for (let k = 0; k < COUNT; k++) out[k] += massG * content[k];
    }
    totals.pots.forEach((pot, at) => {
      let lostG = -v[firstPot + at];
      for (const line of pot.lines) lostG += v[firstLine + line];
      mixG -= lostG;
      out[WATER] -= 100 * lostG;
    });
    const bareG = v[piece];
    let massG = bareG;
    for (let k = 0; k < COUNT; k++) out[k] = (bareG * (out[k] / mixG + v[firstComposition + k])) / 100;
    for (let at = 0; at < layers.length; at++) {
      const { layer, scale, content } = layers[at];
      const stated = v[layerInputs[at].pickup] / 100;
      const onSubstrate = layer.pickupBasis === "substrate" ? stated : stated / (1 - stated);
      const layerG = massG * onSubstrate * scale;
      const factor = (layerG * v[layerInputs[at].composition]) / 100;
      for (let k = 0; k < COUNT; k++) out[k] += factor * content[k];
      massG += layerG;
    }
    const coatedG = massG;
    write(out, COUNT, coatedG);
    let frozenG = coatedG;
    for (let at = 0; at < 2; at++) {
      const afterG = massG * v[stageInputs[at].kept];
      const fatLostG = out[FAT] * (1 - v[stageInputs[at].fat]);
      out[WATER] -= massG - afterG - fatLostG;
      out[ENERGY] -= FAT_KCAL_G * fatLostG;
      out[FAT] -= fatLostG;
      out[SATURATED] *= v[stageInputs[at].fat];
      massG = afterG;
      if (at === 0) {
        frozenG = massG;
        write(out, 2 * COUNT, frozenG);
      }
    }
    write(out, 3 * COUNT, massG);
    const masses = 4 * COUNT;
    out[masses] = bareG;
    out[masses + 1] = coatedG;
    out[masses + 2] = frozenG;
    out[masses + 3] = massG;
  };

  const model: MacroModel = {
    inputNames,
    values: Float64Array.from(values),
    uncertainties: Float64Array.from(uncertainties),
    evaluate,
    compositionAt: firstComposition,
    compositionParts,
    missing,
    notices: [...new Set(notices)],
  };
  checkWater(model, missing);
  return model;
}

/** Writes the first `COUNT` outputs, per 100 g of `massG`, at `at`. */
function write(out: Float64Array, at: number, massG: number): void {
  for (let k = 0; k < COUNT; k++) out[at + k] = (100 * out[k]) / massG;
}

function stageOf(stage: StageYield | undefined, name: string): Required<StageYield> {
  const where = `pieceMacros: ${name}`;
  if (!stage) return { yieldPercent: 100, yieldSePercent: 0, fatRetentionPercent: 100, fatRetentionSePercent: 0 };
  return {
    yieldPercent: within(stage.yieldPercent, 20, 102, `${where}.yieldPercent`, "% of the mass before"),
    yieldSePercent: notNegative(stage.yieldSePercent, `${where}.yieldSePercent`, "%"),
    fatRetentionPercent: within(stage.fatRetentionPercent ?? 100, 0, 100, `${where}.fatRetentionPercent`, "%"),
    fatRetentionSePercent: notNegative(stage.fatRetentionSePercent ?? 0, `${where}.fatRetentionSePercent`, "%"),
  };
}

function contentOf(
  ingredient: Ingredient,
  basis: EnergyBasis,
  missing: Partial<Record<NutrientName, string[]>>,
  notices: string[],
): Float64Array {
  const content = new Float64Array(COUNT);
  const per100G: Nutrients = { ...ingredient.per100G, energyKcal: energyOn(ingredient, basis, notices) };
  NUTRIENT_NAMES.forEach((name, at) => {
    const value = per100G[name];
    if (value !== null) content[at] = value;
    else {
      missing[name] ??= [];
      if (!missing[name].includes(ingredient.name)) missing[name].push(ingredient.name);
    }
  });
  return content;
}

function energyOn({ name, per100G, energyFactors }: Ingredient, basis: EnergyBasis, notices: string[]): number | null {
  if (basis === "published") return per100G.energyKcal;
  if (per100G.proteinG === null || per100G.fatG === null || per100G.carbohydrateG === null) return null;
  if (basis === "EU Annex XIV" && per100G.fibreG === null) {
    notices.push(`fibre of ${name} is not known: its carbohydrate counts at 4 kcal/g`);
    return energyOf({ nutrients: { ...per100G, fibreG: 0 }, basis }).kcal;
  }
  if (basis === "food factors" && energyFactors === null) {
    notices.push(`${name} has no factors of its own: 4-9-4 is used`);
    return energyOf({ nutrients: per100G, basis: "general 4-9-4" }).kcal;
  }
  return energyOf({ nutrients: per100G, basis, energyFactors }).kcal;
}

/** Per 100 g of a part. */
function meanContent(part: Part): Float64Array {
  const mean = new Float64Array(COUNT);
  const massG = part.massesG.reduce((sum, mass) => sum + mass, 0);
  part.contents.forEach((content, line) => {
    for (let k = 0; k < COUNT; k++) mean[k] += (part.massesG[line] * content[k]) / massG;
  });
  return mean;
}

/** Standard uncertainty per 100 g of a part, cooked to a mass, that each line brings when each of its values has the relative spread. */
function contentParts(part: Part, massG: number, spread: number): Float64Array[] {
  return part.contents.map((content, line) => content.map((value) => (spread * part.massesG[line] * value) / massG));
}

function inQuadrature(parts: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(COUNT);
  for (const part of parts) for (let k = 0; k < COUNT; k++) sum[k] = Math.hypot(sum[k], part[k]);
  return sum;
}

function checkWater(model: MacroModel, missing: MacroModel["missing"]): void {
  if (missing.waterG) return;
  const out = new Float64Array(MACRO_OUTPUTS);
  model.evaluate(model.values, out);
  if (out[WATER] < 0) {
    fail(
      "pieceMacros: cook and reheat",
      "must lose no more water than the piece holds; water left in g would be",
      out[WATER],
    );
  }
}
