import { fail } from "../../../check/check";
import { nearestName } from "../../../check/nearest-name";
import type { Slip } from "../../../check/slip";
import { parseAmount } from "../../../units/typed/parse-amount";
import type { Ingredient } from "../../ingredient/ingredient";
import type { ReadIngredients } from "../../ingredient/parse-ingredients";
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
}

/**
 * What is wrong with a formula beyond its own file: ingredients that the kitchen has not, and amounts that cannot be
 * weighed, each with its line; and percentages that do not come out.
 */
export function formulaSlips(options: FormulaSlipsOptions): readonly Slip[] {
  const { read, ingredients, ids, whole, file } = options;
  if (read.formula === null) return [];
  const slips: Slip[] = [];
  let isKnown = true;
  for (const { line, path } of linesOf(read.formula)) {
    const slip = (field: keyof FormulaLine, expected: string, nearest: string | null = null): void => {
      const at = `${path}.${field}`;
      slips.push({ file: read.file, ...placed(read, at), expected, got: JSON.stringify(line[field]), nearest });
    };
    const ingredient = ingredients.find(({ id }) => id === line.ingredient);
    if (ingredient !== undefined) amountSlip(line, ingredient, (expected) => slip("amount", expected));
    else {
      isKnown = false;
      if (whole && !ids.includes(line.ingredient))
        slip("ingredient", `an ingredient of ${file}`, nearestName(line.ingredient, ids));
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
