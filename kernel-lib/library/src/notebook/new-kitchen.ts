import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { fail } from "../check/check";
import { starterKitchen } from "../trials/starter-kitchen";
import type { KitchenUnits } from "../units/unit-table";
import { nearestData } from "./nearest-data";

/** What `newKitchen` works from. */
export interface NewKitchenOptions {
  /** where the kitchen goes: a folder that is new or empty */
  readonly folder: string;
  /** what its headings are written in; metric unless given */
  readonly units?: KitchenUnits;
  /** a table of ingredients to copy; that of the nearest `data` folder unless given */
  readonly ingredients?: string;
}

/**
 * Writes a kitchen to begin with, named after its folder: one pan to measure, one appliance, one formula and one variant to
 * replace, the table of ingredients, a log without trials, and a page that says what to do next. Nothing is overwritten: a
 * folder that holds something is refused.
 *
 * @returns the files that were written, by their names in the folder
 */
export function newKitchen(options: NewKitchenOptions): readonly string[] {
  const folder = resolve(options.folder);
  refuseFilled(folder);
  const ingredients = options.ingredients ?? join(nearestData("newKitchen: ingredients"), "ingredients.csv");
  const files = starterKitchen({
    name: basename(folder),
    units: options.units ?? "metric",
    ingredientsCsv: readFileSync(ingredients, "utf8"),
  });
  for (const { file, text } of files) {
    const path = join(folder, file);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text ?? "", { flag: "wx" });
  }
  return files.map(({ file }) => file);
}

function refuseFilled(folder: string): void {
  if (!existsSync(folder)) return;
  if (!statSync(folder).isDirectory())
    fail("newKitchen: folder", "must be new or an empty folder, and is a file", folder);
  const inside = readdirSync(folder).filter((name) => !name.startsWith("."));
  if (inside.length === 0) return;
  const named = inside.sort().slice(0, 5).join(", ");
  const more = inside.length > 5 ? ` and ${inside.length - 5} more` : "";
  fail("newKitchen: folder", `must be new or empty, and holds ${named}${more}`, folder);
}
