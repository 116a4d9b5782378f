import { nearestName } from "../check/nearest-name";
import type { Slip } from "../check/slip";
import type { ReadFormula } from "../food/formula/read/read-formula";
import type { IngredientName } from "../food/formula/read/settle-ingredients";
import { ingredientWords, SAME_WORDS } from "../food/formula/read/settle-ingredients";
import { cellSlip, type Draft, type ReadRecords } from "../units/columns/read-records";
import type { Kitchen } from "./kitchen";
import type { Trial } from "./trial";

/** Records with the file that they stand in. */
export type FileOf<T> = Omit<ReadRecords<T>, "problems"> & { readonly file: string };

/** The names that a file gives, with those that are wrong. */
export interface KnownNames {
  /** where they stand: `"pans.csv"` */
  readonly file: string;
  readonly known: readonly string[];
  /** those of them that cannot stand as they are */
  readonly faulty: readonly string[];
  readonly has: (name: string) => boolean;
  /** the one known name that differs in nothing but capitals, blanks and hyphens; `null` when there is none, or several */
  readonly sameAs: (name: string) => string | null;
  /** what that is, for a notice: `"the id in pans.csv that differs in capitals or blanks alone"` */
  readonly likeness: string;
  /** the known name that is nearest to one that is not known; `null` when none is near */
  readonly nearestTo: (name: string) => string | null;
}

/** How many names a sentence lists before it speaks of their file alone. */
const MOST_LISTED = 12;
/** Of how many names the nearest is looked for, and among how many: our judgement, many more than a kitchen has. */
const MOST_ASKED = 500;

/** The names in one column of a file; `null` when not all of them could be read, so that none can be called unknown. */
export function namesOf<T>(read: FileOf<T> | null, field: keyof T & string): KnownNames | null {
  if (read === null || !read.whole || read.drafts.some(({ fields }) => typeof fields[field] !== "string")) return null;
  const name = ({ fields }: Draft<T>): string => fields[field] as string;
  const faulty = read.drafts.filter((draft) => draft.faulty.has(field));
  return knownNames(read.file, read.drafts.map(name), faulty.map(name));
}

/** The ids that a sound kitchen has for what trials speak of. */
export function kitchenNames(
  kitchen: Pick<Kitchen, "variants" | "pans" | "appliances">,
): Readonly<Record<"variantId" | "panId" | "applianceId", KnownNames>> {
  return {
    variantId: knownNames(
      "variants.csv",
      kitchen.variants.map(({ variantId }) => variantId),
      [],
    ),
    panId: knownNames(
      "pans.csv",
      kitchen.pans.map(({ id }) => id),
      [],
    ),
    applianceId: knownNames(
      "appliances.csv",
      kitchen.appliances.map(({ applianceId }) => applianceId),
      [],
    ),
  };
}

/** The ids of the formulas; `null` when there is none or one cannot be read. */
export function formulaNames(formulas: readonly ReadFormula[]): KnownNames | null {
  if (formulas.length === 0 || formulas.some(({ id }) => id === null)) return null;
  const faulty = formulas.filter(({ slips }) => slips.some(({ at }) => at === "id"));
  const name = ({ id }: ReadFormula): string => id as string;
  return knownNames("formulas/", formulas.map(name), faulty.map(name));
}

/** Ingredients as far as they could be read. */
interface IngredientsRead {
  readonly file: string;
  readonly ids: readonly string[];
  readonly ingredients: readonly IngredientName[];
  readonly whole: boolean;
}

/** The ids of the ingredients, which go by their names too, as in formulas; `null` when not all of them could be read. */
export function ingredientNames(read: IngredientsRead | null): KnownNames | null {
  if (read === null || !read.whole) return null;
  const byId = knownNames(read.file, read.ids, []);
  const { meantBy, nearestTo } = ingredientWords(read.ingredients);
  return {
    ...byId,
    sameAs: meantBy,
    likeness: SAME_WORDS,
    nearestTo: nearestOf((name) => nearestTo(name) ?? nearestName(name, read.ids.slice(0, MOST_ASKED))),
  };
}

function knownNames(file: string, known: readonly string[], faulty: readonly string[]): KnownNames {
  const all = new Set(known);
  const alike = new Map<string, string | null>();
  for (const name of all) alike.set(folded(name), alike.has(folded(name)) ? null : name);
  return {
    file,
    known,
    faulty,
    has: (name) => all.has(name),
    sameAs: (name) => (name.length > 300 ? null : (alike.get(folded(name)) ?? null)),
    likeness: `the id in ${file} that differs in capitals or blanks alone`,
    nearestTo: nearestOf((name) => nearestName(name, known.slice(0, MOST_ASKED))),
  };
}

/** Looks each name up once, and no more of them than anybody mistypes. */
function nearestOf(look: (name: string) => string | null): KnownNames["nearestTo"] {
  const nearest = new Map<string, string | null>();
  return (name) => {
    const found = nearest.get(name);
    if (found !== undefined || nearest.size >= MOST_ASKED) return found ?? null;
    const one = look(name);
    nearest.set(name, one);
    return one;
  };
}

function folded(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");
}

/**
 * Names that a file uses and that none gives. The same one is one slip wherever it is used; one that most likely is what a
 * faulty name should be is no slip here.
 */
export function unknownNames<T>(
  read: FileOf<T> | null,
  names: { readonly [Field in keyof T & string]?: KnownNames | null },
): readonly Slip[] {
  if (read === null) return [];
  const { file, drafts, headings } = read;
  return drafts.flatMap(({ row, fields, faulty, cells }) =>
    (Object.entries(names) as [keyof T & string, KnownNames | null][]).flatMap(([field, given]): readonly Slip[] => {
      const id: unknown = fields[field];
      if (given === null || typeof id !== "string" || faulty.has(field) || given.has(id)) return [];
      const nearest = given.nearestTo(id);
      if (given.faulty.length > 0 && (nearest === null || given.faulty.includes(nearest))) return [];
      const isFew = given.known.length <= MOST_LISTED;
      const expected = isFew ? `one of ${given.known.join(", ")}` : "a known name";
      const slip = cellSlip({ file, row, heading: headings[field], cells, expected, nearest });
      return [{ ...slip, got: `${slip.got}, which ${given.file} does not hold`, anywhere: true }];
    }),
  );
}

/** Names that stand twice in one column of a file. */
export function repeatedNames<T>(read: FileOf<T> | null, field: keyof T & string): readonly Slip[] {
  if (read === null) return [];
  const { file, drafts, headings } = read;
  const seen = new Map<unknown, number>();
  return drafts.flatMap(({ row, fields, cells }) => {
    const name: unknown = fields[field];
    const earlier = seen.get(name);
    if (typeof name !== "string") return [];
    if (earlier === undefined) seen.set(name, row);
    const expected = `each id once, and row ${earlier} has this one`;
    return earlier === undefined ? [] : [cellSlip({ file, row, heading: headings[field], cells, expected })];
  });
}

/** Formulas that go by the id of an earlier one. */
export function repeatedFormulas(formulas: readonly ReadFormula[]): readonly Slip[] {
  return formulas.flatMap(({ file, id, placeOf }, at) => {
    const earlier = formulas.slice(0, at).find((one) => id !== null && one.id === id);
    const expected = `each id once, and ${earlier?.file} has this one`;
    const { row, at: place } = placeOf("id");
    return earlier ? [{ file, row, at: place, expected, got: JSON.stringify(id), nearest: null }] : [];
  });
}

/** Trials that go by the name of an earlier one in any log; a log that is the copy of another is one slip. */
export function repeatedTrials(logs: readonly FileOf<Trial>[]): readonly Slip[] {
  const seen = new Map<string, { readonly file: string; readonly row: number }>();
  return logs.flatMap(({ file, drafts, headings }) =>
    drafts.flatMap(({ row, fields: { trialId }, cells }) => {
      const earlier = seen.get(trialId ?? "");
      if (typeof trialId !== "string") return [];
      if (earlier === undefined) seen.set(trialId, { file, row });
      if (earlier === undefined) return [];
      const place = earlier.file === file ? `row ${earlier.row}` : earlier.file;
      const expected = `a name not used before, and ${place} has this one`;
      return [cellSlip({ file, row, heading: headings.trialId, cells, expected })];
    }),
  );
}
