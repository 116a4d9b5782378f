import { checkKitchen, type KitchenCheck } from "../trials/check-kitchen";
import { loadFoods } from "./load-foods";
import { readKitchenFolder } from "./read-kitchen-folder";
import { today } from "./today";

/**
 * Reads a kitchen's folder, every file of it, and says everything that is wrong; nothing is run and nothing is thrown for a
 * problem in a file.
 *
 * @param folder the kitchen's folder
 * @returns problems, notices, and how much of everything there is
 */
export function checkKitchenFolder(folder: string): Omit<KitchenCheck, "kitchen" | "aside"> {
  const { problems, notices, summary } = checkKitchen(readKitchenFolder(folder, "checkKitchenFolder: folder"), {
    today: today(),
    foods: loadFoods,
  });
  return Object.freeze({ problems, notices, summary });
}
