import { failAll } from "../check/csv";
import { checkKitchen } from "../trials/check-kitchen";
import type { Kitchen } from "../trials/kitchen";
import { kitchenFolder } from "./kitchen-folder-of";
import { loadFoods } from "./load-foods";
import { readKitchenFolder } from "./read-kitchen-folder";
import { today } from "./today";

/**
 * Reads a kitchen from its folder: `kitchen.json`, `pans.csv`, `appliances.csv`, `ingredients.csv`, `variants.csv`,
 * `formulas/*.json` and, once there are any, `trials/*.csv` and `traces/*.csv`. Nothing is skipped: one error lists every problem of every
 * file, with row and column. Doubts about the logs, and files that are not read, stand in `notices`.
 *
 * @param folder the kitchen's folder; left out, the environment variable `SLABWRIGHT_KITCHEN`, or else the nearest
 *   `data` folder at or above the working folder
 *
 * @example
 * loadKitchen().variants.length; // → 5
 */
export function loadKitchen(folder?: string): Kitchen {
  const from = kitchenFolder(folder, "loadKitchen: folder");
  const { kitchen, problems } = checkKitchen(readKitchenFolder(from, "loadKitchen: folder"), {
    today: today(),
    foods: loadFoods,
  });
  failAll(problems);
  return kitchen as Kitchen;
}
