import { existsSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

/** A door of the library, and what it shows. */
export interface Door {
  /** as an import names it: `"slabwright/heat"` */
  readonly door: string;
  /** the declarations that it stands in */
  readonly file: string;
  /** names of functions and constants; by the file, without its ending, that declares them */
  readonly values: ReadonlyMap<string, string>;
  readonly types: ReadonlySet<string>;
}

/** The package that cells import. */
export const LIBRARY = "slabwright";

/**
 * The doors of the library that a folder's cells import, the cook's own first, read from its declaration files; none
 * where no library is to be found. A door is a file of named re-exports.
 */
export function doorNames(from: string): Door[] {
  const home = libraryAbove(resolve(from));
  if (home === null) return [];
  // a local named `exports` would stand before the module's own, which constants are read from once compiled
  const { exports: doors } = JSON.parse(readFileSync(join(home, "package.json"), "utf8")) as {
    exports?: Record<string, { types?: string }>;
  };
  return Object.entries(doors ?? {}).flatMap(([path, { types }]) => {
    const file = types && join(home, types);
    return file && existsSync(file) ? [doorOf(path.replace(/^\./, LIBRARY), file)] : [];
  });
}

function libraryAbove(from: string): string | null {
  for (let folder = from; ; folder = dirname(folder)) {
    const home = join(folder, "node_modules", LIBRARY);
    if (existsSync(join(home, "package.json"))) return home;
    if (dirname(folder) === folder) return null;
  }
}

function doorOf(door: string, file: string): Door {
  const values = new Map<string, string>();
  const types = new Set<string>();
  for (const [, allTypes, names, source] of readFileSync(file, "utf8").matchAll(
    /^export (type )?\{([^}]*)\} from "([^"]+)";/gm,
  )) {
    for (const part of names.split(",")) {
      const [, isType, name] = /^\s*(type\s+)?(\w+)\s*$/.exec(part) ?? [];
      if (name && (allTypes || isType)) types.add(name);
      else if (name) values.set(name, resolve(dirname(file), source));
    }
  }
  return { door, file, values, types };
}
