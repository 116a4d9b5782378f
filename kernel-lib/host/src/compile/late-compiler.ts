/*
 * Loaded into a process before tslab, and after what mends it, where cells are only run: what a cell compiles to comes
 * from the store, and the compiler, which takes two seconds of a processor to load and to read its types, is loaded for
 * the first cell that the store does not know. Where nobody has compiled before, nothing is otherwise than without this.
 */
import { dirname, join, sep } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { cellStore, type FileState, fileState } from "./cell-store";
import { type Converter, type LoadedConverter, storedConverter } from "./stored-converter";

import Module = require("node:module");

interface Loaded {
  exports: unknown;
  readonly filename: string;
}

interface Loader {
  readonly _extensions: Record<string, (module: Loaded, path: string) => void>;
}

type CreateConverter = (options?: { readonly isJS?: boolean; readonly isBrowser?: boolean }) => Converter;
type CellMetadata = (source: string) => object;

const extensions = (Module as unknown as Loader)._extensions;
const load = extensions[".js"];
const tslabFile = (name: string): RegExp => new RegExp(`[\\\\/]tslab[\\\\/]dist[\\\\/]${name}\\.js$`);
const CONVERTER = tslabFile("converter");
const METADATA = tslabFile("metadata");

extensions[".js"] = (module, path) => {
  if (CONVERTER.test(path)) module.exports = lateConverter(once(() => loadedLater(module, path)));
  else if (METADATA.test(path)) module.exports = lateMetadata(once(() => loadedLater(module, path)));
  else load(module, path);
};

/** What a file of tslab exports, loaded as it would have been at first. */
function loadedLater<Exports>(module: Loaded, path: string): Exports {
  const inner = new Module(path, module as unknown as Module);
  Object.assign(inner, { filename: path, paths: (module as unknown as Module).paths });
  load(inner, path);
  return inner.exports as Exports;
}

function lateConverter(real: () => { readonly createConverter: CreateConverter }): object {
  return new Proxy(
    {},
    {
      get: (_, name) => (name === "createConverter" ? createConverter : real()[name as "createConverter"]),
      has: () => true,
    },
  );
  function createConverter(options: Parameters<CreateConverter>[0]): Converter {
    if (options?.isJS || options?.isBrowser) return real().createConverter(options);
    const packages = dirname(dirname(require.resolve("tslab/package.json")));
    return storedConverter({
      store: cellStore(join(packages, ".cache", "slabwright", "cells")),
      folder: process.cwd(),
      load: () => watched(real, options, join(packages, ".package-lock.json")),
    });
  }
}

/** The real converter, and every file that it reads, that it consists of, or that tells of packages put in. */
function watched(
  real: () => { readonly createConverter: CreateConverter },
  options: Parameters<CreateConverter>[0],
  lock: string,
): LoadedConverter {
  const read = new Map<string, FileState>();
  const note = (path: string): void => void read.set(path, fileState(path));
  note(lock);
  const tslab = dirname(require.resolve("tslab/package.json"));
  const { createConverter } = real();
  const { sys } = compiler(tslab);
  const readFile = sys.readFile.bind(sys);
  sys.readFile = (path, encoding) => {
    note(path);
    return readFile(path, encoding);
  };
  const converter = createConverter(options);
  const own = [tslab, dirname(__dirname), `${sep}typescript-for-tslab${sep}`];
  for (const path of Object.keys(require.cache)) if (own.some((part) => path.includes(part))) note(path);
  return { converter, files: () => [...read.values()] };
}

function compiler(tslab: string): typeof TypeScript {
  return require(require.resolve("@tslab/typescript-for-tslab", { paths: [tslab] }));
}

/** What a cell says of itself stands in comments that begin with two stars: without any, the compiler's scanner is not needed. */
function lateMetadata(real: () => { readonly getCodeMetadata: CellMetadata }): {
  readonly getCodeMetadata: CellMetadata;
} {
  return { getCodeMetadata: (source) => (source.includes("/**") ? real().getCodeMetadata(source) : {}) };
}

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
