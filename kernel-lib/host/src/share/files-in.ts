import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** All files in a folder, by their path in it, parted by slashes. */
export function filesIn(folder: string, inner = ""): readonly string[] {
  return readdirSync(join(folder, inner), { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = inner === "" ? entry.name : `${inner}/${entry.name}`;
      return entry.isDirectory() ? filesIn(folder, path) : [path];
    });
}

/** A file and what it is called in a digest. */
export interface NamedFile {
  readonly name: string;
  readonly path: string;
}

/** One SHA-256 over files, by what they are called and by content. */
export function filesDigest(files: readonly NamedFile[]): string {
  const hash = createHash("sha256");
  for (const { name, path } of files) hash.update(`${name}\0`).update(new Uint8Array(readFileSync(path)));
  return hash.digest("hex");
}
