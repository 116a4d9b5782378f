import { fail } from "../../../check/check";
import { kebab } from "../../../check/kebab";
import { nearestName } from "../../../check/nearest-name";
import { listed, type Slip } from "../../../check/slip";
import { parseAmount } from "../../../units/typed/parse-amount";
import type { Ingredient } from "../../ingredient/ingredient";
import { NUTRIENT_COLUMN } from "../../ingredient/ingredient-columns";
import { ingredientRow } from "../../ingredient/ingredient-row";
import type { ReadIngredients } from "../../ingredient/parse-ingredients";
import type { Sr28Food } from "../../ingredient/parse-sr28";
import { searchFoods } from "../../ingredient/search-foods";
import { cookedPots } from "../cooked-pots";
import type { Formula, FormulaLine } from "../formula";
import { formulaTotals } from "../formula-totals";
import { type WeighedLine, weighLines } from "../weigh-lines";
import type { ReadFormula } from "./read-formula";

/** What `formulaSlips` holds a formula against. */
export interface FormulaSlipsOptions extends ReadIngredients {
  readonly read: ReadFormula;
  /** where the ingredients stand: `"ingredients.csv"` */
  readonly file: string;
  /** the foods among which one is looked for whose name the kitchen has not; none unless given */
  readonly foods?: () => readonly Sr28Food[];
}

/**
 * What is wrong with a formula beyond its own file: ingredients that the kitchen has not, and amounts that cannot be
 * weighed, each with its line; and percentages that do not come out.
 */
export function formulaSlips(options: FormulaSlipsOptions): readonly Slip[] {
  const { read, ingredients, ids, whole, file } = options;
  const known = new Map(ingredients.map((one) => [one.id, one]));
  if (read.formula === null) return [];
  const slips: Slip[] = [];
  let isKnown = true;
  for (const { line, path } of linesOf(read.formula)) {
    const slip = (field: keyof FormulaLine, expected: string, nearest: string | null = null, hint?: string): void => {
      const at = `${path}.${field}`;
      slips.push({ file: read.file, ...placed(read, at), expected, got: JSON.stringify(line[field]), nearest, hint });
    };
    const ingredient = known.get(line.ingredient);
    if (ingredient !== undefined) {
      amountSlip(line, ingredient, (expected) => slip("amount", expected));
      const unknown = unknownParts(ingredient, options);
      for (const one of unknown) slips.push(one);
      isKnown &&= unknown.length === 0;
    } else {
      isKnown = false;
      if (!whole || ids.includes(line.ingredient)) continue;
      const nearest = nearestName(line.ingredient, ids);
      slip("ingredient", `an ingredient of ${file}`, nearest, foodHint(line.ingredient, nearest, options));
      // the amount is most likely of that one, and its slip need not wait for another reading
      const likely = nearest === null ? undefined : known.get(nearest);
      if (likely !== undefined) amountSlip(line, likely, (expected) => slip("amount", expected));
    }
  }
  if (slips.length === 0 && isKnown) {
    const { formula } = read;
    const lines = (): readonly WeighedLine[] =>
      weighLines({ lines: formula.mix, ingredients, totalG: formula.mixG, where: "mix" });
    if (sentenceOf(lines) === null) {
      const overcooked = sentenceOf(() => cookedPots({ formula, lines: lines() }));
      if (overcooked !== null) {
        const expected = `a cooked mass, which ${mustOf(overcooked)}`;
        const got = JSON.stringify(formula.cookedG);
        return [{ file: read.file, ...placed(read, "cookedG"), expected, got, nearest: null }];
      }
    }
    const fault = sentenceOf(() => formulaTotals(read.formula as Formula, ingredients));
    if (fault !== null)
      slips.push({
        file: read.file,
        row: null,
        at: null,
        expected: `a formula that adds up: ${fault}`,
        got: null,
        nearest: null,
      });
  }
  return slips;
}

/** What a mix cannot be made of, where a table does not state it, in the order of the table. */
const NEEDED = ["waterG", "proteinG", "fatG", "carbohydrateG"] as const;

/** What of an ingredient is not stated that a mix needs: its density and its heating rest on it. */
function unknownParts(ingredient: Ingredient, { placeOf, waterMust, read }: FormulaSlipsOptions): readonly Slip[] {
  const { id, per100G } = ingredient;
  const lacking = NEEDED.filter((name) => per100G[name] === null);
  const place = placeOf.get(id);
  if (lacking.length === 0 || place === undefined) return [];
  // water follows from the others
  const asked = lacking.length > 1 ? lacking.filter((name) => name !== "waterG") : lacking;
  const columns = asked.map((name) => NUTRIENT_COLUMN[name]);
  const must = waterMust.get(id);
  const expected =
    must !== undefined && columns.length === 1 && columns[0] === "water_g"
      ? `${must}; ${id} is in ${read.file}`
      : `${listed(columns)} of ${id}, as it is in ${read.file}; 0 where its pack says 0`;
  return [{ ...place, at: null, expected, got: "blank", nearest: null }];
}

/** The row of the food that is most likely meant, to be pasted; what else to do where none is found. */
function foodHint(
  typed: string,
  nearest: string | null,
  { foods, headings, file }: FormulaSlipsOptions,
): string | undefined {
  if (foods === undefined) return undefined;
  const id = kebab(typed);
  const query = typed
    .replace(/[^\p{L}\p{N}%]+/gu, " ")
    .trim()
    .slice(0, 200);
  const [first, ...others] = id === null || query === "" ? [] : searchFoods(foods(), query, 3);
  const write = nearest === null ? "" : `write ${nearest} if that is meant; or `;
  if (first === undefined || id === null)
    return `${write}add it to labels.csv as its pack prints it, or give it the name of an ingredient of ${file}`;
  const also = others.length === 0 ? "" : ` (also found: ${others.map(({ food }) => food.description).join("; ")})`;
  const row = ingredientRow({ food: first.food, id, headings });
  return `${write}for "${first.food.description}"${also} paste this row into ingredients.csv and fill in its class: ${row}`;
}

function placed({ placeOf }: ReadFormula, path: string): Pick<Slip, "row" | "at"> {
  const { row, at } = placeOf(path);
  return { row, at };
}

function linesOf(formula: Formula): readonly { readonly line: FormulaLine; readonly path: string }[] {
  return [
    ...formula.mix.map((line, at) => ({ line, path: `mix.${at}` })),
    ...formula.coating.flatMap((layer, layerAt) =>
      layer.lines.map((line, at) => ({ line, path: `coating.${layerAt}.lines.${at}` })),
    ),
  ];
}

/** Says what is wrong with an amount that stands by itself; percentages are of others and are held against them later. */
function amountSlip({ amount }: FormulaLine, ingredient: Ingredient, slip: (expected: string) => void): void {
  const fault = sentenceOf(() => {
    const { rest } = parseAmount(amount, "amount");
    // 460 may be grams or pieces, and as pieces it would pass
    if (rest === "") fail("amount", 'must say of what, such as "460 g" or "2 large"', amount);
    const lines = [{ ingredient: ingredient.id, amount }];
    if (!rest.startsWith("%")) weighLines({ lines, ingredients: [ingredient], where: "formula" });
  });
  if (fault !== null) slip(`an amount, which ${mustOf(fault)}`);
}

/** What an error says must hold, without where and what was given. */
function mustOf(fault: string): string {
  return fault.slice(fault.search(/\bmust\b/)).replace(/, got [\s\S]*$/, "");
}

function sentenceOf(work: () => unknown): string | null {
  try {
    work();
    return null;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return error.message;
  }
}
