import { clipped } from "../../check/check";

/** The nine major food allergens of US law (FALCPA 2004, Public Law 108-282; FASTER Act 2021, Public Law 117-11). */
export type UsAllergen = "milk" | "egg" | "fish" | "crustacean" | "tree nut" | "wheat" | "peanut" | "soy" | "sesame";

/** The fourteen groups of Annex II of Regulation (EU) 1169/2011. */
export type EuAllergen =
  | "gluten"
  | "crustacean"
  | "egg"
  | "fish"
  | "peanut"
  | "soy"
  | "milk"
  | "nut"
  | "celery"
  | "mustard"
  | "sesame"
  | "sulphite"
  | "lupin"
  | "mollusc";

/** The US nine, in the order of the law. */
export const US_ALLERGENS: readonly UsAllergen[] = Object.freeze([
  "milk",
  "egg",
  "fish",
  "crustacean",
  "tree nut",
  "wheat",
  "peanut",
  "soy",
  "sesame",
] as const);

/** The EU fourteen, in the order of Annex II. */
export const EU_ALLERGENS: readonly EuAllergen[] = Object.freeze([
  "gluten",
  "crustacean",
  "egg",
  "fish",
  "peanut",
  "soy",
  "milk",
  "nut",
  "celery",
  "mustard",
  "sesame",
  "sulphite",
  "lupin",
  "mollusc",
] as const);

/** One allergen of an ingredient: a reminder to check the label, never a declaration. */
export interface AllergenMark<Name extends string> {
  readonly allergen: Name;
  /** the species or grain, which labels must name: `"Alaska pollock"`, `"wheat"`; empty when none applies */
  readonly species: string;
  /** inherent in the food, or dependent on the maker's recipe */
  readonly certainty: "inherent" | "depends on the maker";
}

/**
 * Reads a cell of allergen marks: names separated by `;` or by commas, in capitals or plurals too, the species in brackets, `?` at the end when it depends on
 * the maker: `fish (Alaska pollock); milk?`. Returns the marks, or a sentence saying what is wrong.
 */
export function readAllergenMarks<Name extends string>(
  cell: string,
  known: readonly Name[],
): { readonly marks: readonly AllergenMark<Name>[]; readonly problem: string | null } {
  const marks: AllergenMark<Name>[] = [];
  // as packs print them: Milk, Wheat; eggs
  for (const word of cell.split(/;|,(?![^(]{0,200}\))/).map((part) => part.trim())) {
    if (word === "") continue;
    const certainty = word.endsWith("?") ? "depends on the maker" : "inherent";
    const sure = word.endsWith("?") ? word.slice(0, -1).trimEnd() : word;
    const bracket = sure.indexOf("(");
    const species = bracket < 0 ? "" : sure.slice(bracket + 1, -1);
    const typed = (bracket < 0 ? sure : sure.slice(0, bracket).trimEnd()).toLowerCase();
    const allergen = known.find((name) => [name, `${name}s`, `${name}beans`].includes(typed));
    if (!allergen || (bracket >= 0 && (species === "" || species.includes(")") || !sure.endsWith(")")))) {
      const got = clipped(JSON.stringify(word));
      return { marks: [], problem: `expected allergens among ${known.join(", ")} separated by ";", got ${got}` };
    }
    marks.push(Object.freeze({ allergen, species: species.trim(), certainty }));
  }
  return { marks: Object.freeze(marks), problem: null };
}
