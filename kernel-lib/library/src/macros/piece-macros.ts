import { NUTRIENT_NAMES, type NutrientName } from "../food/ingredient/nutrients";
import type { EnergyBasis } from "./energy-of";
import { MACRO_OUTPUTS, MACRO_VIEWS, macroModel, type PieceMacrosOptions } from "./macro-model";

/** One amount with its doubt. */
export interface Amount {
  readonly value: number;
  /** standard uncertainty, in the unit of `value` */
  readonly standardError: number;
  /** 95 % interval */
  readonly interval95: readonly [number, number];
  /** an ingredient's value is not known, so the true amount is this or more */
  readonly atLeast: boolean;
}

/** One amount a nutrient, in the nutrient's own unit (g, mg, kcal). */
export type MacroAmounts = { readonly [K in NutrientName]: Amount };

/** What is in a piece, and how sure. */
export interface PieceMacros {
  readonly formulaId: string;
  readonly energyBasis: EnergyBasis;
  readonly piecesPerServing: number;
  /** mass of the piece at each stage (g) */
  readonly bareG: Amount;
  readonly coatedG: Amount;
  readonly frozenG: Amount;
  readonly eatenG: Amount;
  readonly perPiece: MacroAmounts;
  /** pieces of one serving taken to share their errors */
  readonly perServing: MacroAmounts;
  /** of the coated piece before cooking */
  readonly per100GRaw: MacroAmounts;
  readonly per100GFrozen: MacroAmounts;
  readonly per100GEaten: MacroAmounts;
  /** nutrient to the ingredients that do not state it */
  readonly missing: Readonly<Partial<Record<NutrientName, readonly string[]>>>;
  /** share of the variance of the energy of a piece by source, largest first */
  readonly energyDoubt: readonly { readonly source: string; readonly share: number }[];
  /**
   * standard uncertainty of a piece's nutrient that the table value of each ingredient of the mix brings, by ingredient
   * id: what two products with an ingredient in common share; empty for Monte Carlo
   */
  readonly tableDoubt: { readonly [K in NutrientName]?: Readonly<Record<string, number>> };
  readonly method: "GUM" | "Monte Carlo";
  readonly notices: readonly string[];
}

/**
 * What is in one piece, in one serving, and in 100 g raw, frozen and as eaten, with standard errors by the law of
 * propagation of uncertainty (JCGM 100:2008). `pieceMacrosMonteCarlo` does the same by drawing.
 *
 * nutrient of a piece = m_bare · Σ mᵢxᵢ / Σ mᵢ + Σ layers; cooking takes water (which concentrates the rest) and, where
 * fat retention is below 100 %, fat (which takes 9 kcal/g with it).
 *
 * An estimate from a table of averages, not a laboratory analysis and not a compliance document.
 *
 * @param options formula totals, piece, coating surface, yields, doubt
 * @returns amounts with intervals, what is not known, and where the doubt comes from
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const macros = pieceMacros({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } });
 * macros.perPiece.energyKcal.value; // → 27.72
 * macros.perPiece.energyKcal.interval95; // → [24.46,30.98]
 * macros.per100GEaten.proteinG.value; // → 7.29
 * macros.energyDoubt[0].source; // → "mass of the piece"
 */
export function pieceMacros(options: PieceMacrosOptions): PieceMacros {
  const model = macroModel(options);
  const count = model.values.length;
  const centre = new Float64Array(MACRO_OUTPUTS);
  model.evaluate(model.values, centre);
  const variance = new Float64Array(MACRO_OUTPUTS);
  const energyParts = new Map<string, number>();
  const perContent = new Float64Array(NUTRIENT_NAMES.length);
  const up = new Float64Array(MACRO_OUTPUTS);
  const down = new Float64Array(MACRO_OUTPUTS);
  const moved = Float64Array.from(model.values);
  const energyAt = NUTRIENT_NAMES.indexOf("energyKcal");
  for (let at = 0; at < count; at++) {
    const u = model.uncertainties[at];
    if (u === 0) continue;
    const step = u * 1e-3;
    moved[at] = model.values[at] + step;
    model.evaluate(moved, up);
    moved[at] = model.values[at] - step;
    model.evaluate(moved, down);
    moved[at] = model.values[at];
    for (let k = 0; k < MACRO_OUTPUTS; k++) variance[k] += (((up[k] - down[k]) / (2 * step)) * u) ** 2;
    const nutrient = at - model.compositionAt;
    if (nutrient >= 0 && nutrient < perContent.length) {
      perContent[nutrient] = (up[nutrient] - down[nutrient]) / (2 * step);
    }
    const part = (((up[energyAt] - down[energyAt]) / (2 * step)) * u) ** 2;
    const name = model.inputNames[at];
    energyParts.set(name, (energyParts.get(name) ?? 0) + part);
  }
  return assembleMacros({
    options,
    missing: model.missing,
    notices: model.notices,
    method: "GUM",
    energyDoubt: sharesOf(energyParts),
    tableDoubt: tableDoubtOf(options, model.compositionParts, perContent),
    amountAt: (k) => {
      const standardError = Math.sqrt(variance[k]);
      return {
        value: centre[k],
        standardError,
        interval95: [centre[k] - 1.959964 * standardError, centre[k] + 1.959964 * standardError],
      };
    },
  });
}

function sharesOf(parts: ReadonlyMap<string, number>): PieceMacros["energyDoubt"] {
  const total = [...parts.values()].reduce((sum, part) => sum + part, 0);
  return Object.freeze(
    [...parts]
      .map(([source, part]) => Object.freeze({ source, share: total > 0 ? part / total : 0 }))
      .sort((a, b) => b.share - a.share),
  );
}

function tableDoubtOf(
  options: PieceMacrosOptions,
  parts: readonly Float64Array[],
  perContent: Float64Array,
): PieceMacros["tableDoubt"] {
  const doubt: Partial<Record<NutrientName, Readonly<Record<string, number>>>> = {};
  NUTRIENT_NAMES.forEach((name, k) => {
    const byIngredient = new Map<string, number>();
    options.totals.lines.forEach(({ ingredient }, line) => {
      byIngredient.set(ingredient.id, (byIngredient.get(ingredient.id) ?? 0) + perContent[k] * parts[line][k]);
    });
    doubt[name] = Object.freeze(Object.fromEntries(byIngredient));
  });
  return Object.freeze(doubt);
}

/** Turns the model's output, one amount an index, into the result that both methods return. */
export function assembleMacros(parts: {
  readonly options: PieceMacrosOptions;
  readonly missing: PieceMacros["missing"];
  readonly notices: readonly string[];
  readonly method: PieceMacros["method"];
  readonly energyDoubt: PieceMacros["energyDoubt"];
  readonly tableDoubt: PieceMacros["tableDoubt"];
  readonly amountAt: (index: number) => Omit<Amount, "atLeast">;
}): PieceMacros {
  const { options, missing, amountAt } = parts;
  const { formula } = options.totals;
  const count = NUTRIENT_NAMES.length;
  const amounts = (view: number, times: number): MacroAmounts =>
    Object.freeze(
      Object.fromEntries(
        NUTRIENT_NAMES.map((name, k) => [name, scaled(amountAt(view * count + k), times, missing[name] !== undefined)]),
      ),
    ) as unknown as MacroAmounts;
  const mass = (at: number): Amount => scaled(amountAt(MACRO_VIEWS.length * count + at), 1, false);
  return Object.freeze({
    formulaId: formula.id,
    energyBasis: options.energyBasis ?? "published",
    piecesPerServing: formula.piecesPerServing,
    bareG: mass(0),
    coatedG: mass(1),
    frozenG: mass(2),
    eatenG: mass(3),
    perPiece: amounts(0, 1),
    perServing: amounts(0, formula.piecesPerServing),
    per100GRaw: amounts(1, 1),
    per100GFrozen: amounts(2, 1),
    per100GEaten: amounts(3, 1),
    missing,
    energyDoubt: parts.energyDoubt,
    tableDoubt: parts.tableDoubt,
    method: parts.method,
    notices: Object.freeze([...parts.notices, ...noticesOf(options, missing)]),
  });
}

function scaled(amount: Omit<Amount, "atLeast">, times: number, atLeast: boolean): Amount {
  const [low, high] = amount.interval95;
  return Object.freeze({
    value: amount.value * times,
    standardError: amount.standardError * times,
    interval95: Object.freeze([low * times, high * times] as const),
    atLeast,
  });
}

function noticesOf(options: PieceMacrosOptions, missing: PieceMacros["missing"]): string[] {
  const notices = Object.entries(missing).map(
    ([name, foods]) => `${name} is at least what is shown: not known for ${foods!.join(", ")}`,
  );
  if (!options.cook && !options.reheat) notices.push("no cook or reheat loss is counted: as eaten equals as coated");
  if (!options.pieceSeG) notices.push("the mass of the piece is taken as exact");
  return notices;
}
