import { clipped } from "../../check/check";
import { failAll, numberOf } from "../../check/csv";
import { ownValue } from "../../check/own-value";
import type { EnergyFactors, HouseholdWeight } from "./ingredient";
import type { Nutrients } from "./nutrients";

/** One food of USDA SR28. */
export interface Sr28Food {
  /** five-digit number, text */
  readonly ndb: string;
  /** USDA's long description */
  readonly description: string;
  readonly per100G: Nutrients;
  readonly householdWeights: readonly HouseholdWeight[];
  readonly energyFactors: EnergyFactors | null;
  /** share of the bought food that is thrown away (peel, bone) (%); the values are for the rest */
  readonly refusePercent: number | null;
}

/** The two text files of SR28. */
export interface Sr28Texts {
  /** the abbreviated table, ABBREV.txt: one food a line, 53 fields */
  readonly abbreviated: string;
  /** the descriptions, FOOD_DES.txt: one food a line, 14 fields */
  readonly descriptions: string;
}

/** Household weights of SR28 that cannot be right, by number, and why they are left out. */
export const SR28_REFUSED_WEIGHTS: Readonly<Record<string, string>> = Object.freeze({
  "11510": "1 cup, mashed, 328 g is 1.39 g/mL, denser than any boiled sweet potato can be",
});

const SOURCE = "USDA SR28 (2015)";

/**
 * Reads the National Nutrient Database for Standard Reference, Release 28 (USDA Agricultural Research Service,
 * September 2015): fields separated by `^`, text between tildes, a blank for "not known". Energy factors are given only
 * for foods whose three factors the table lists.
 *
 * @param texts the two files as text
 * @returns one record a food, in the order of the descriptions
 */
export function parseSr28(texts: Sr28Texts): readonly Sr28Food[] {
  const problems: string[] = [];
  const abbreviated = new Map<string, readonly string[]>();
  for (const [at, fields] of linesOf(texts.abbreviated)) {
    if (fields.length !== 53) problems.push(`ABBREV.txt row ${at}: expected 53 fields, got ${fields.length}`);
    else abbreviated.set(fields[0], fields);
  }
  const foods: Sr28Food[] = [];
  for (const [at, fields] of linesOf(texts.descriptions)) {
    if (fields.length !== 14) {
      problems.push(`FOOD_DES.txt row ${at}: expected 14 fields, got ${fields.length}`);
      continue;
    }
    const values = abbreviated.get(fields[0]);
    if (!values)
      problems.push(`FOOD_DES.txt row ${at}: expected food ${clipped(fields[0])} in ABBREV.txt too, found none`);
    else foods.push(foodOf(fields, values, problems));
  }
  failAll(problems);
  return Object.freeze(foods);
}

function foodOf(description: readonly string[], values: readonly string[], problems: string[]): Sr28Food {
  const ndb = description[0];
  const number = (cell: string, field: string): number | null => {
    if (cell === "") return null;
    const value = numberOf(cell);
    if (value === null)
      problems.push(`SR28 food ${clipped(ndb)}, ${field}: expected a number, got ${clipped(`"${cell}"`)}`);
    return value;
  };
  const householdWeights: HouseholdWeight[] = [];
  for (const [gramsCell, measure] of [
    [values[48], values[49]],
    [values[50], values[51]],
  ]) {
    const massG = number(gramsCell, "household weight");
    if (massG !== null && massG > 0 && measure !== "" && ownValue(SR28_REFUSED_WEIGHTS, ndb) === undefined) {
      householdWeights.push(Object.freeze({ measure, massG, source: SOURCE }));
    }
  }
  const [protein, fat, carbohydrate] = [11, 12, 13].map((at) => number(description[at], "energy factor"));
  return Object.freeze({
    ndb,
    description: description[2],
    per100G: Object.freeze({
      waterG: number(values[2], "water"),
      energyKcal: number(values[3], "energy"),
      proteinG: number(values[4], "protein"),
      fatG: number(values[5], "fat"),
      saturatedFatG: number(values[44], "saturated fat"),
      carbohydrateG: number(values[7], "carbohydrate"),
      fibreG: number(values[8], "fibre"),
      sugarsG: number(values[9], "sugars"),
      sodiumMg: number(values[15], "sodium"),
      cholesterolMg: number(values[47], "cholesterol"),
      ashG: number(values[6], "ash"),
    }),
    householdWeights: Object.freeze(householdWeights),
    energyFactors:
      protein === null || fat === null || carbohydrate === null
        ? null
        : Object.freeze({ proteinKcalG: protein, fatKcalG: fat, carbohydrateKcalG: carbohydrate }),
    refusePercent: number(values[52], "refuse"),
  });
}

function* linesOf(text: string): Generator<[number, readonly string[]]> {
  let row = 0;
  for (const line of text.split(/\r?\n/)) {
    row += 1;
    if (line === "") continue;
    yield [row, line.split("^").map((cell) => (cell.startsWith("~") ? cell.slice(1, -1) : cell))];
  }
}
