import { writeFileSync } from "node:fs";
import { fail } from "../check/check";

/**
 * Writes a page, such as those of `dayPage` and `cardPage`, to open and print.
 *
 * @param page HTML
 * @param path a file that ends in `.html`; one of that name is replaced
 * @returns the path
 * @example
 * const plan = batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "beet-lentil" }] });
 * writePage(dayPage(plan), "monday.txt"); // throws "must end in .html"
 */
export function writePage(page: string, path: string): string {
  if (!path.toLowerCase().endsWith(".html")) fail("writePage: path", "must end in .html", path);
  writeFileSync(path, page);
  return path;
}
