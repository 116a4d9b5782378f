import { sep } from "node:path";
import type { CellStore, FileState } from "./cell-store";

/** What tslab makes of a cell. */
export interface Converted {
  readonly diagnostics: readonly unknown[];
  readonly output?: string;
  readonly declOutput?: string;
  readonly sideOutputs?: readonly unknown[];
}

/** The part of tslab that compiles. */
export interface Converter {
  readonly convert: (declarations: string, source: string) => Converted;
  readonly inspect: (...question: unknown[]) => unknown;
  readonly complete: (...question: unknown[]) => unknown;
  readonly addModule: (...module: unknown[]) => unknown;
  readonly close: () => void;
}

/** A converter, and the files that it has read so far. */
export interface LoadedConverter {
  readonly converter: Converter;
  readonly files: () => readonly FileState[];
}

/** What `storedConverter` needs to know. */
export interface StoredConverterOptions {
  readonly store: CellStore;
  /** the kernel's working folder: what a cell imports from there may change under its hands, and is compiled each time */
  readonly folder: string;
  /** loads the compiler */
  readonly load: () => LoadedConverter;
}

/**
 * A converter that takes from the store what it has compiled before, and loads the compiler for what it has not. What a
 * cell compiles to follows from its source, from the declarations of the cells before it and from the files that the
 * compiler reads; a cell that does not compile, or that other code of the notebook's folder has a part in, is not kept.
 */
export function storedConverter({ store, folder, load }: StoredConverterOptions): Converter {
  let loaded: LoadedConverter | undefined;
  let hasModules = false;
  const late = (): LoadedConverter => {
    loaded ??= load();
    return loaded;
  };
  const isOfFolder = (path: string): boolean =>
    path.startsWith(`${folder}${sep}`) && !path.slice(folder.length).includes(`${sep}node_modules${sep}`);
  return {
    convert: (declarations, source) => {
      const cell = [process.version, folder, declarations, source];
      const known = hasModules ? null : (store.find(cell) as Converted | null);
      if (known !== null) return known;
      const { converter, files } = late();
      const converted = converter.convert(declarations, source);
      const { diagnostics, output, sideOutputs } = converted;
      const read = files();
      if (
        !hasModules &&
        diagnostics.length === 0 &&
        output !== undefined &&
        sideOutputs === undefined &&
        !read.some(([path]) => isOfFolder(path))
      )
        store.keep(cell, converted, read);
      return converted;
    },
    inspect: (...question) => late().converter.inspect(...question),
    complete: (...question) => late().converter.complete(...question),
    addModule: (...module) => {
      hasModules = true;
      return late().converter.addModule(...module);
    },
    close: () => loaded?.converter.close(),
  };
}
