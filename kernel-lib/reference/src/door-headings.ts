/** A heading of a door, and the names below it in the order of the file. */
export interface DoorHeading {
  readonly heading: string;
  readonly names: readonly string[];
}

/** The headings of a door's `index.ts`: one-line comments, each above its named re-exports. */
export function doorHeadings(source: string): readonly DoorHeading[] {
  const found: { heading: string; names: string[] }[] = [];
  for (const [, heading, names] of source.matchAll(/^\/\/ (.*)$|export (?:type )?\{([^}]*)\}/gm)) {
    if (heading !== undefined) found.push({ heading: heading.trim(), names: [] });
    else
      found.at(-1)?.names.push(
        ...names
          .split(",")
          .map((name) => name.trim().replace(/^type /, ""))
          .filter((name) => name !== ""),
      );
  }
  return found;
}
