import type { Cell, Text } from "./nbformat";

/** Stored text as one string. */
export function textOf(text: Text): string {
  return Array.isArray(text) ? text.join("") : text;
}

/** The tags of a cell. */
export function tagsOf(cell: Cell): readonly string[] {
  const tags = cell.metadata.tags;
  return Array.isArray(tags) ? tags.filter((tag): tag is string => typeof tag === "string") : [];
}
