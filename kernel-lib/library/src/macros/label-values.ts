import { fail } from "../check/check";
import type { NutrientName } from "../food/ingredient/nutrients";
import { energyOf } from "./energy-of";
import type { MacroAmounts, PieceMacros } from "./piece-macros";
import { roundLabelEu } from "./round-label-eu";
import { roundLabelUs } from "./round-label-us";

/** One line of a label. */
export interface LabelLine {
  readonly name: string;
  /** not rounded */
  readonly amount: number;
  readonly unit: "kcal" | "kJ" | "g" | "mg";
  /** as the rule rounds it, without unit; `"≥ "` before it when an ingredient's value is not known */
  readonly printed: string;
  /** how far the printed value could move: what the two ends of the 95 % interval would print */
  readonly printed95: readonly [string, string];
}

/** Label values of one product, by one named rule. */
export interface LabelValues {
  readonly formulaId: string;
  readonly rule: "US 21 CFR 101.9(c)" | "EU 1169/2011 with the 2012 guidance";
  readonly of: string;
  readonly lines: readonly LabelLine[];
  /** sentences that must stand beside the values */
  readonly cautions: readonly string[];
}

const CAUTION =
  "An estimate from tables and trials, not a compliance document: have a label checked against the law and, where it matters, by analysis.";

/**
 * US label values of one serving as eaten, rounded by 21 CFR 101.9(c). Ties go up, which the rule leaves open.
 *
 * @param macros from `pieceMacros`
 * @returns lines with the unrounded amounts and what the interval's ends would print
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const label = labelUs(pieceMacros({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } }));
 * label.lines[0].printed; // → "110"
 * label.lines[0].printed95; // → ["100","120"]
 */
export function labelUs(macros: PieceMacros): LabelValues {
  const serving = macros.perServing;
  const line = (
    name: string,
    field: NutrientName,
    unit: LabelLine["unit"],
    nutrient: Parameters<typeof roundLabelUs>[0]["nutrient"],
  ): LabelLine => lineOf({ name, unit, amount: serving[field], round: (amount) => roundLabelUs({ nutrient, amount }) });
  return Object.freeze({
    formulaId: macros.formulaId,
    rule: "US 21 CFR 101.9(c)",
    of: `1 serving, ${macros.piecesPerServing} pieces, ${(macros.piecesPerServing * macros.eatenG.value).toFixed(0)} g as eaten`,
    lines: Object.freeze([
      line("calories", "energyKcal", "kcal", "calories"),
      line("total fat", "fatG", "g", "fat"),
      line("saturated fat", "saturatedFatG", "g", "saturated fat"),
      line("cholesterol", "cholesterolMg", "mg", "cholesterol"),
      line("sodium", "sodiumMg", "mg", "sodium"),
      line("total carbohydrate", "carbohydrateG", "g", "carbohydrate"),
      line("dietary fiber", "fibreG", "g", "fibre"),
      line("total sugars", "sugarsG", "g", "sugars"),
      line("protein", "proteinG", "g", "protein"),
    ]),
    cautions: Object.freeze([CAUTION, "Trans fat, added sugars, vitamins and minerals are not worked out."]),
  });
}

/**
 * EU label values of 100 g: energy in kJ and kcal by the factors of Annex XIV (each from its own factors), carbohydrate
 * without fibre, salt = sodium × 2.5, rounded by the Commission's guidance of 2012.
 *
 * @param macros from `pieceMacros`
 * @param as the food as sold, frozen, or as eaten; as eaten unless given
 * @returns lines with the unrounded amounts and what the interval's ends would print
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const macros = pieceMacros({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } });
 * labelEu(macros).lines[0].printed; // → "739"
 */
export function labelEu(macros: PieceMacros, as: "frozen" | "eaten" = "eaten"): LabelValues {
  if (as !== "frozen" && as !== "eaten") fail("labelEu: as", 'must be "frozen" or "eaten"', as);
  const amounts = as === "frozen" ? macros.per100GFrozen : macros.per100GEaten;
  const line = (
    name: string,
    nutrient: Parameters<typeof roundLabelEu>[0]["nutrient"],
    amount: PrintedAmount,
    unit: LabelLine["unit"] = "g",
  ): LabelLine => lineOf({ name, unit, amount, round: (value) => roundLabelEu({ nutrient, amount: value }) });
  return Object.freeze({
    formulaId: macros.formulaId,
    rule: "EU 1169/2011 with the 2012 guidance",
    of: `100 g ${as === "frozen" ? "frozen" : "as eaten"}`,
    lines: Object.freeze([
      line("energy", "energy", annexEnergy(amounts, "kJ"), "kJ"),
      line("energy", "energy", annexEnergy(amounts, "kcal"), "kcal"),
      line("fat", "fat", amounts.fatG),
      line("of which saturates", "saturates", amounts.saturatedFatG),
      line("carbohydrate", "carbohydrate", available(amounts)),
      line("of which sugars", "sugars", amounts.sugarsG),
      line("fibre", "fibre", amounts.fibreG),
      line("protein", "protein", amounts.proteinG),
      line("salt", "salt", times(amounts.sodiumMg, 0.0025)),
    ]),
    cautions: Object.freeze([CAUTION, "Salt is sodium × 2.5, all sodium counted, added or not."]),
  });
}

type PrintedAmount = Pick<MacroAmounts["fatG"], "value" | "interval95" | "atLeast">;

function lineOf(parts: {
  name: string;
  unit: LabelLine["unit"];
  amount: PrintedAmount;
  round: (amount: number) => string;
}): LabelLine {
  const { name, unit, amount, round } = parts;
  const [low, high] = amount.interval95;
  return Object.freeze({
    name,
    unit,
    amount: amount.value,
    printed: `${amount.atLeast ? "≥ " : ""}${round(Math.max(0, amount.value))}`,
    printed95: Object.freeze([round(Math.max(0, low)), round(Math.max(0, high))] as const),
  });
}

function times(amount: PrintedAmount, factor: number): PrintedAmount {
  const [low, high] = amount.interval95;
  return { value: amount.value * factor, interval95: [low * factor, high * factor], atLeast: amount.atLeast };
}

/** Carbohydrate less fibre; the two share most of their doubt, so that of the total is kept. */
function available({ carbohydrateG, fibreG }: MacroAmounts): PrintedAmount {
  const value = carbohydrateG.value - fibreG.value;
  const [low, high] = carbohydrateG.interval95;
  return {
    value,
    interval95: [low - fibreG.value, high - fibreG.value],
    atLeast: carbohydrateG.atLeast,
  };
}

/** Annex XIV energy of the amounts; the interval keeps the relative width of the energy that `pieceMacros` gave. */
function annexEnergy(amounts: MacroAmounts, unit: "kJ" | "kcal"): PrintedAmount {
  const value = energyOf({
    nutrients: {
      energyKcal: null,
      proteinG: amounts.proteinG.value,
      fatG: amounts.fatG.value,
      carbohydrateG: amounts.carbohydrateG.value,
      fibreG: amounts.fibreG.value,
    },
    basis: "EU Annex XIV",
  })[unit];
  const half = (1.959964 * amounts.energyKcal.standardError * value) / Math.max(amounts.energyKcal.value, 1e-9);
  return {
    value,
    interval95: [value - half, value + half],
    atLeast: amounts.proteinG.atLeast || amounts.fatG.atLeast || amounts.carbohydrateG.atLeast,
  };
}
