import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { kitchenFolder } from "./kitchen-folder-of";

/**
 * The files in a kitchen's folder `photos`, by name; none where there is no such folder. Nothing of them is read.
 *
 * @param folder the kitchen's; found as `loadKitchen` finds it unless given
 * @example
 * kitchenPhotos().length; // → 0
 */
export function kitchenPhotos(folder?: string): readonly string[] {
  const photos = join(kitchenFolder(folder, "kitchenPhotos: folder"), "photos");
  if (!existsSync(photos)) return [];
  return readdirSync(photos, { withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.startsWith("."))
    .map(({ name }) => name)
    .sort();
}
