import { existsSync, lstatSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { unzipSync, zipSync } from "fflate";
import { writeWhole } from "../notebook/write-whole";
import { filesIn } from "./files-in";
import { fileSha256 } from "./sha256";

/** The manifest of a bundle: RO-Crate 1.1, https://w3id.org/ro/crate/1.1. */
export const CRATE = "ro-crate-metadata.json";

/** How much a bundle may hold once it is unpacked; our judgement. */
const MOST_FILES = 5000;
const MOST_BYTES = 300e6;
/** Whether a name stays inside the folder that it is put into, on any system. */
const isPlainName = (name: string): boolean =>
  !/^[a-z]:/i.test(name) &&
  name.split("/").every((part) => part !== "" && part !== "." && part !== ".." && !/[\\\p{Cc}]/u.test(part));

/** A bundle that can be read. */
export interface OpenBundle {
  readonly folder: string;
  /** files whose SHA-256 is not that of the manifest */
  readonly changed: readonly string[];
  /** takes away what was unpacked */
  readonly close: () => void;
}

/** Whether a path is a bundle: a zip file, or a folder with a manifest. */
export function isBundle(path: string): boolean {
  return existsSync(path) && (/\.zip$/i.test(path) || existsSync(join(path, CRATE)));
}

/**
 * Opens a bundle, a folder or a zip file, and holds each of its files against the manifest's SHA-256. Throws for one that is
 * missing, for a link, for a name that leads out of the bundle, and for a zip that unpacks to more than
 * 300 MB or 5,000 files.
 */
export async function openBundle(path: string): Promise<OpenBundle> {
  if (statSync(path).isDirectory()) {
    return { folder: path, changed: checkFiles(path), close: () => {} };
  }
  const folder = mkdtempSync(join(tmpdir(), "slabwright-bundle-"));
  const close = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    for (const [name, content] of Object.entries(unpacked(new Uint8Array(await readFile(path)), basename(path))))
      await writeWhole(join(folder, ...name.split("/")), content);
    // a zip of a folder holds that folder alone
    const [only, ...more] = readdirSync(folder);
    const inner =
      more.length === 0 && only !== undefined && !existsSync(join(folder, CRATE)) ? join(folder, only) : folder;
    return { folder: inner, changed: checkFiles(inner), close };
  } catch (error) {
    close();
    throw error;
  }
}

function unpacked(zip: Uint8Array, name: string): Record<string, Uint8Array> {
  let files = 0;
  let bytes = 0;
  const entries = unzipSync(zip, {
    filter: (entry) => {
      if (entry.name.endsWith("/")) return false;
      if (!isPlainName(entry.name))
        throw new Error(`${name}: a name in a bundle must not lead out of it, got ${JSON.stringify(entry.name)}`);
      files++;
      bytes += entry.originalSize;
      if (files > MOST_FILES || bytes > MOST_BYTES)
        throw new Error(`${name}: a bundle must hold at most ${MOST_FILES} files of ${MOST_BYTES / 1e6} MB in all`);
      return true;
    },
  });
  return entries;
}

/** The folders and files of a crate, as its manifest lists them. */
interface Crate {
  readonly "@graph"?: readonly { readonly "@id"?: unknown; readonly "@type"?: unknown; readonly sha256?: unknown }[];
}

/** Holds a bundle's folder against its manifest; the files that are not those that were shared. */
function checkFiles(folder: string): readonly string[] {
  const manifest = join(folder, CRATE);
  if (!existsSync(manifest)) throw new Error(`a bundle must hold ${CRATE}, got none in ${folder}`);
  noLinks(folder, "");
  const crate = JSON.parse(readFileSync(manifest, "utf8")) as Crate;
  return (crate["@graph"] ?? []).flatMap(({ "@id": id, "@type": type, sha256: digest }) => {
    if (type !== "File" || typeof id !== "string" || typeof digest !== "string") return [];
    const name = decodeURIComponent(id);
    if (!isPlainName(name)) throw new Error(`${CRATE}: a file must lie in the bundle, got ${JSON.stringify(name)}`);
    const path = join(folder, ...name.split("/"));
    if (!existsSync(path)) throw new Error(`${name} must be in the bundle, as its manifest lists it; it is not there`);
    return fileSha256(path) === digest ? [] : [name];
  });
}

function noLinks(folder: string, inner: string): void {
  for (const name of readdirSync(join(folder, inner))) {
    const path = inner === "" ? name : `${inner}/${name}`;
    const entry = lstatSync(join(folder, path));
    if (entry.isSymbolicLink()) throw new Error(`a bundle must hold no links, got ${path}`);
    if (entry.isDirectory()) noLinks(folder, path);
  }
}

/** A path in a bundle as its manifest names it. */
export function crateId(path: string): string {
  return path.split("/").map(encodeURIComponent).join("/");
}

/** Packs a folder as a zip file beside it; the same files give the same bytes. */
export async function packBundle(folder: string, path: string): Promise<void> {
  const top = basename(folder);
  const entries = filesIn(folder).map((name) => [`${top}/${name}`, new Uint8Array(readFileSync(join(folder, name)))]);
  await writeWhole(path, zipSync(Object.fromEntries(entries), { level: 6, mtime: new Date(2000, 0, 1) }), {
    replace: false,
  });
}
