import { clipped } from "../../../check/check";
import { freezeDeep } from "../../../check/freeze-deep";
import { nearestName } from "../../../check/nearest-name";
import type { Notice } from "../../../check/notice";
import type { FormulaLine } from "../formula";
import type { ReadFormula } from "./read-formula";

/** What a kitchen's ingredients go by. */
export interface IngredientName {
  readonly id: string;
  readonly name: string;
}

/** What an ingredient is that was typed by its name. */
export const SAME_WORDS = "the ingredient of the same words";

/** Ingredients by the words that people type. */
export interface IngredientWords {
  /** the id that is meant by the same words in another form; null for an id as it stands, and where none or several are meant */
  readonly meantBy: (typed: string) => string | null;
  /** the id whose words, or whose name's, are nearest; null where none is near */
  readonly nearestTo: (typed: string) => string | null;
}

/** Finds ingredients by id or name, in any capitals, marks, plurals and order of words. */
export function ingredientWords(known: readonly IngredientName[]): IngredientWords {
  const ids = new Set(known.map(({ id }) => id));
  let made: ReadonlyMap<string, string | null> | null = null;
  const alike = (): ReadonlyMap<string, string | null> => {
    made ??= namesOf(known);
    return made;
  };
  return {
    meantBy: (typed) => (ids.has(typed) ? null : (alike().get(folded(typed)) ?? null)),
    nearestTo: (typed) => {
      const words = [...alike()].flatMap(([name, id]) => (id === null ? [] : [name])).slice(0, MOST_COMPARED);
      const nearest = nearestName(folded(typed), words);
      return nearest === null ? null : (alike().get(nearest) ?? null);
    },
  };
}

/** Among how many names the nearest is looked for: our judgement, many more than a kitchen has. */
const MOST_COMPARED = 1000;

/**
 * A formula with its ingredients as the kitchen writes them: a name that differs from an id, or from the one name that an
 * ingredient goes by, in nothing but capitals, marks, plurals and the order of its words is taken as that, with a notice. Others are left.
 */
export function settleIngredients(read: ReadFormula, known: readonly IngredientName[]): ReadFormula {
  const { formula, file, placeOf } = read;
  if (formula === null) return read;
  const notices: Notice[] = [];
  const { meantBy } = ingredientWords(known);
  const settled = <Line extends FormulaLine>(line: Line, path: string): Line => {
    const tell = (field: string, given: string, taken: string): void => {
      const { row, at } = placeOf(`${path}.${field}`);
      const says = `was taken as ${SAME_WORDS}`;
      notices.push({ file, row, at, kind: "read", given: clipped(JSON.stringify(given)), taken, says });
    };
    const ingredient = meantBy(line.ingredient);
    if (ingredient !== null) tell("ingredient", line.ingredient, ingredient);
    const [, percent, typedBase] = /^([\d\s./½¼¾⅓⅔⅛⅜⅝⅞]{1,40}%\s{0,9}of\s{1,9})(.+)$/.exec(line.amount) ?? [];
    const base = typedBase === undefined || typedBase === "mix" ? null : meantBy(typedBase);
    if (base !== null) tell("amount", typedBase, base);
    return {
      ...line,
      ingredient: ingredient ?? line.ingredient,
      amount: base === null ? line.amount : `${percent}${base}`,
    };
  };
  const mix = formula.mix.map((line, at) => settled(line, `mix.${at}`));
  const coating = formula.coating.map((layer, of) => ({
    ...layer,
    lines: layer.lines.map((line, at) => settled(line, `coating.${of}.lines.${at}`)),
  }));
  if (notices.length === 0) return read;
  return { ...read, formula: freezeDeep({ ...formula, mix, coating }), notices: [...read.notices, ...notices] };
}

/** Each id by its words, and each name that one ingredient alone goes by; `null` where two could be meant. */
function namesOf(known: readonly IngredientName[]): ReadonlyMap<string, string | null> {
  const byName = new Map<string, string | null>();
  for (const { id, name } of known) {
    const words = folded(name);
    byName.set(words, byName.has(words) && byName.get(words) !== id ? null : id);
  }
  const byId = new Map<string, string | null>();
  for (const { id } of known) byId.set(folded(id), byId.has(folded(id)) ? null : id);
  return new Map([...byName, ...byId]);
}

/** The words of a name in one order, each in the singular: `White rice, cooked` and `rice-white-cooked` are one. */
function folded(text: string): string {
  const words = text
    .slice(0, 300)
    .toLowerCase()
    .split(/[^\p{L}\p{N}%]+/u)
    .filter((word) => word !== "");
  return words
    .map((word) => word.replace(/(?<=[^s]{3})s$/, ""))
    .sort()
    .join("-");
}
