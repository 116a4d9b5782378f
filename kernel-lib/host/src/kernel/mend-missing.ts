/*
 * Loaded into the kernel's process before tslab: lets its compiler name every field that an object lacks. It names four
 * and counts the rest, so that whoever has left out thirty columns of a record hears of four. A compiler that reads
 * otherwise is left as it is.
 */
import { readFileSync } from "node:fs";

import Module = require("node:module");

const COUNTED = "if (props.length > 5) {";
const NAMED = "if (props.length > 100) {";

interface Loader {
  readonly _extensions: Record<string, (module: { _compile(code: string, path: string): void }, path: string) => void>;
}

const extensions = (Module as unknown as Loader)._extensions;
const load = extensions[".js"];
extensions[".js"] = (module, path) => {
  if (!/[\\/]typescript-for-tslab[\\/]lib[\\/]typescript\.js$/.test(path)) return load(module, path);
  module._compile(readFileSync(path, "utf8").replace(COUNTED, NAMED), path);
};
