import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fail } from "../check/check";
import { nameSchema } from "../check/text-schema";
import { buildKitchen, type Kitchen, type KitchenFile } from "../trials/kitchen";

/**
 * Reads a kitchen from its folder: `kitchen.json`, `pans.csv`, `appliances.csv`, `ingredients.csv`, `variants.csv`,
 * `formulas/*.json` and `trials/*.csv`. Nothing is skipped: one error lists every problem of every file, with row and
 * column. Doubts about the logs stand in `notices`.
 *
 * @param folder the kitchen's folder; left out, the environment variable `SLABWRIGHT_KITCHEN`, or else the nearest
 *   `data` folder at or above the working folder
 */
export function loadKitchen(folder?: string): Kitchen {
  const from = folder ?? process.env.SLABWRIGHT_KITCHEN ?? nearestData();
  const kitchenFile = (file: string): KitchenFile => {
    const path = join(from, file);
    if (!existsSync(path)) fail("loadKitchen: folder", `must hold ${file}`, from);
    return { file, text: readFileSync(path, "utf8") };
  };
  const filesIn = (subfolder: string, ending: string): KitchenFile[] => {
    const path = join(from, subfolder);
    if (!existsSync(path)) fail("loadKitchen: folder", `must hold a folder ${subfolder}`, from);
    return readdirSync(path)
      .filter((name) => name.endsWith(ending))
      .sort()
      .map((name) => kitchenFile(join(subfolder, name)));
  };
  return buildKitchen({
    name: nameOf(kitchenFile("kitchen.json")),
    pans: kitchenFile("pans.csv"),
    appliances: kitchenFile("appliances.csv"),
    ingredients: kitchenFile("ingredients.csv"),
    variants: kitchenFile("variants.csv"),
    formulas: filesIn("formulas", ".json"),
    trials: filesIn("trials", ".csv"),
  });
}

function nameOf({ file, text }: KitchenFile): string {
  try {
    const { name } = JSON.parse(text) as { name?: unknown };
    if (typeof name === "string" && name.trim() !== "" && nameSchema().safeParse(name).success) return name;
  } catch {
    fail(file, "must be JSON", text.slice(0, 60));
  }
  return fail(`${file}: name`, "must be a text that names the kitchen", text.slice(0, 60));
}

function nearestData(): string {
  for (let at = resolve("."); ; at = dirname(at)) {
    const candidate = join(at, "data");
    if (existsSync(join(candidate, "pans.csv"))) return candidate;
    if (dirname(at) === at)
      fail(
        "loadKitchen: folder",
        "must be given when no folder data with a pans.csv is at or above the working folder",
        resolve("."),
      );
  }
}
