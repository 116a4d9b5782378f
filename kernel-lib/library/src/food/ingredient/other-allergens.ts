import type { AllergenMark, EuAllergen, UsAllergen } from "./allergens";

/** The groups that both laws have: wheat is one of the EU's cereals with gluten. */
const IN_EU: Readonly<Record<UsAllergen, EuAllergen>> = {
  milk: "milk",
  egg: "egg",
  fish: "fish",
  crustacean: "crustacean",
  "tree nut": "nut",
  wheat: "gluten",
  peanut: "peanut",
  soy: "soy",
  sesame: "sesame",
};

/**
 * What marks by US law say of the EU's groups, for a food whose pack has only those: celery, mustard, sulphites, lupin, molluscs and
 * other cereals are not told by it.
 */
export function euMarksOf(marks: readonly AllergenMark<UsAllergen>[]): readonly AllergenMark<EuAllergen>[] {
  return marks.map(({ allergen, species, certainty }) => ({
    allergen: IN_EU[allergen],
    species: species === "" && allergen === "wheat" ? "wheat" : species,
    certainty,
  }));
}

/** What marks by EU law say of the US nine, for a food whose pack has only those; cereals with gluten may be wheat. */
export function usMarksOf(marks: readonly AllergenMark<EuAllergen>[]): readonly AllergenMark<UsAllergen>[] {
  return marks.flatMap(({ allergen, species, certainty }): readonly AllergenMark<UsAllergen>[] => {
    const found = (Object.keys(IN_EU) as UsAllergen[]).find((one) => IN_EU[one] === allergen);
    if (found === undefined) return [];
    if (found !== "wheat") return [{ allergen: found, species, certainty }];
    if (species === "") return [{ allergen: "wheat", species, certainty: "depends on the maker" }];
    return /wheat|spelt/i.test(species) ? [{ allergen: "wheat", species, certainty }] : [];
  });
}
