/*
 * A program: compiles the cells of notebooks one after the other and keeps what comes of it in the store, so that one
 * compiler, warm after its first notebook, does what each kernel would do for itself. Its input is a list of notebooks, each
 * a list of cells' sources, as JSON; for each notebook that is done it prints a line.
 */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Converter } from "./stored-converter";

const tslab = join(dirname(require.resolve("tslab/package.json")), "dist");
const { createConverter } = require(join(tslab, "converter.js")) as {
  createConverter: (options: { isJS: boolean; isBrowser: boolean }) => Converter;
};

const converter = createConverter({ isJS: false, isBrowser: false });
for (const sources of JSON.parse(readFileSync(0, "utf8")) as string[][]) {
  compile(sources);
  process.stdout.write("done\n");
}
converter.close();

/** The cells of a notebook, up to the first that its kernel has to look at itself. */
function compile(sources: readonly string[]): void {
  let declarations = "";
  for (const source of sources) {
    if (source.includes("/**")) return; // may be a module, or for a browser
    const { diagnostics, declOutput } = converter.convert(declarations, source);
    if (diagnostics.length > 0) return;
    declarations = declOutput ?? "";
  }
}
