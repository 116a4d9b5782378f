import { writeFileSync } from "node:fs";
import type { BenchSheet } from "../advice/trial/bench-sheet";
import { fail } from "../check/check";
import { benchSheetPage } from "../views/log/bench-sheet-page";

/**
 * Writes a bench sheet as a page to open and print, on A4 or Letter.
 *
 * @param path a file that ends in `.html`; one of that name is replaced
 * @returns the path
 * @example
 * const sheet = benchSheet({ kitchen: loadKitchen(), trials: [{ variantId: "beet-lentil" }] });
 * writeBenchSheet(sheet, "monday.csv"); // throws "must end in .html"
 */
export function writeBenchSheet(sheet: BenchSheet, path: string): string {
  if (!path.toLowerCase().endsWith(".html")) fail("writeBenchSheet: path", "must end in .html", path);
  writeFileSync(path, benchSheetPage(sheet));
  return path;
}
