import { writeFileSync } from "node:fs";
import type { RunSheet } from "../../advice/run-sheet/run-sheet";
import { fail } from "../../check/check";
import { runSheetCsv } from "../../views/plan/run-sheet-csv";
import { runSheetPage } from "../../views/plan/run-sheet-page";

/**
 * Writes a run sheet: as a page to open and print (`.html`), or as a log to fill in (`.csv`).
 *
 * @param path a file that ends in `.html` or `.csv`; one of that name is replaced
 * @returns the path
 */
export function writeRunSheet(sheet: RunSheet, path: string): string {
  const isPage = path.toLowerCase().endsWith(".html");
  if (!isPage && !path.toLowerCase().endsWith(".csv")) fail("writeRunSheet: path", "must end in .html or .csv", path);
  writeFileSync(path, isPage ? runSheetPage(sheet) : runSheetCsv(sheet));
  return path;
}
