import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { extname, join } from "node:path";
import { gzipSync } from "node:zlib";
import { hostFolder, plotlySource } from "../report/plotly-source";
import { HttpError } from "./http-error";

/** A file that a page loads. */
export interface Asset {
  readonly type: string;
  /** compressed with gzip */
  readonly body: Uint8Array;
}

const TYPES: Record<string, string> = {
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
};

/** Reads the built files of the pages, and plotly when a figure first asks for it; each is compressed once. */
export function assets(folder: string = join(hostFolder(), "dist", "page")): (name: string) => Promise<Asset> {
  const kept = new Map<string, Promise<Asset>>();
  const read = async (name: string): Promise<Asset> => {
    const type = TYPES[extname(name)];
    if (!type || !/^[\w-]+(\.[\w-]+)*$/.test(name)) throw new HttpError(404, `no such file: ${name}`);
    if (name === "plotly.js") return { type, body: compressed(await plotlySource()) };
    const path = join(folder, name);
    if (!existsSync(path)) throw new HttpError(404, `no such file: ${name}`);
    return { type, body: compressed(new Uint8Array(await readFile(path))) };
  };
  return (name) => {
    const asset = kept.get(name) ?? read(name);
    kept.set(name, asset);
    asset.catch(() => kept.delete(name));
    return asset;
  };
}

function compressed(content: string | Uint8Array): Uint8Array {
  return new Uint8Array(gzipSync(content));
}
