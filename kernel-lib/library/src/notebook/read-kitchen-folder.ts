import { type Dirent, existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fail } from "../check/check";
import { type FolderFile, isKitchenFile, isWorkbook, KITCHEN_FILES, KITCHEN_FOLDERS } from "../trials/kitchen-folder";

/**
 * The files of a kitchen's folder: those of a kitchen with their text, all others by name, folders with a slash at the end.
 * Names are those that stand on the disk, whatever its rules for capitals. Throws, naming `where`, when the folder holds
 * nothing of a kitchen.
 */
export function readKitchenFolder(folder: string, where: string): readonly FolderFile[] {
  if (!existsSync(folder)) fail(where, "must exist", folder);
  if (!statSync(folder).isDirectory()) fail(where, "must be a folder", folder);
  const files: FolderFile[] = [];
  for (const entry of entriesOf(folder)) {
    if (!isFolder(folder, entry)) files.push(folderFile(folder, entry.name));
    else if (!Object.hasOwn(KITCHEN_FOLDERS, entry.name)) files.push({ file: `${entry.name}/`, text: null });
    else
      for (const inner of entriesOf(join(folder, entry.name))) {
        const path = `${entry.name}/${inner.name}`;
        if (isFolder(join(folder, entry.name), inner)) files.push({ file: `${path}/`, text: null });
        else files.push(folderFile(folder, path));
      }
  }
  if (files.every(({ text }) => text === null))
    fail(where, `must hold ${KITCHEN_FILES.join(", ")} and a folder formulas`, folder);
  return files;
}

function entriesOf(folder: string): Dirent[] {
  return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Whether an entry is a folder, or a link to one. */
function isFolder(folder: string, entry: Dirent): boolean {
  if (!entry.isSymbolicLink()) return entry.isDirectory();
  return statSync(join(folder, entry.name), { throwIfNoEntry: false })?.isDirectory() ?? false;
}

function folderFile(folder: string, file: string): FolderFile {
  const path = join(folder, file);
  if (!isKitchenFile(file) || !existsSync(path)) return { file, text: null };
  if (!file.startsWith("trials/")) return { file, text: readFileSync(path, "utf8") };
  const bytes = readFileSync(path);
  return { file, text: isWorkbook(file) ? "workbook" : bytes.toString("utf8"), bytes: new Uint8Array(bytes) };
}
