import { clipped } from "../../../check/check";
import { freezeDeep } from "../../../check/freeze-deep";
import type { Notice } from "../../../check/notice";
import type { FormulaLine } from "../formula";
import type { ReadFormula } from "./read-formula";

/** What a kitchen's ingredients go by. */
export interface IngredientName {
  readonly id: string;
  readonly name: string;
}

/**
 * A formula with its ingredients as the kitchen writes them: a name that differs from an id, or from the one name that an
 * ingredient goes by, in nothing but capitals, marks, plurals and the order of its words is taken as that, with a notice. Others are left.
 */
export function settleIngredients(read: ReadFormula, known: readonly IngredientName[]): ReadFormula {
  const { formula, file, placeOf } = read;
  if (formula === null) return read;
  const ids = new Set(known.map(({ id }) => id));
  const notices: Notice[] = [];
  let alike: ReadonlyMap<string, string | null> | null = null;
  const meantBy = (typed: string): string | null => {
    if (ids.has(typed)) return null;
    alike ??= namesOf(known);
    return alike.get(folded(typed)) ?? null;
  };
  const settled = <Line extends FormulaLine>(line: Line, path: string): Line => {
    const tell = (field: string, given: string, taken: string): void => {
      const { row, at } = placeOf(`${path}.${field}`);
      const says = "was taken as the ingredient of the same words";
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
