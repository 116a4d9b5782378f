import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { writeWhole } from "../notebook/write-whole";

/**
 * plotly.js made small for embedding (from 10 MB to about 4.7 MB, by esbuild), kept under `dist/` beside the built
 * host and made again when plotly's version changes.
 */
export async function plotlySource(): Promise<string> {
  const file = require.resolve("plotly.js-dist/plotly.js");
  const { version } = JSON.parse(await readFile(require.resolve("plotly.js-dist/package.json"), "utf8"));
  const kept = join(hostFolder(), "dist", `plotly-${version}.min.js`);
  if (existsSync(kept)) return readFile(kept, "utf8");
  const { transform } = await import("esbuild");
  const { code } = await transform(await readFile(file, "utf8"), { minify: true, legalComments: "inline" });
  await writeWhole(kept, code);
  return code;
}

/** plotly.js as a page carries it, to be unpacked there: gzip in base64, 2.0 MB. */
export async function packedPlotly(): Promise<{ readonly source: string; readonly base64: string }> {
  const source = await plotlySource();
  return { source, base64: gzipSync(source, { level: 9 }).toString("base64") };
}

/** The folder of this package, whether its sources or its built files run. */
export function hostFolder(): string {
  return join(__dirname, "..", "..");
}
