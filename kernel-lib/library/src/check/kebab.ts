/**
 * Words as an id of lower-case words joined by hyphens; `null` where they hold other signs.
 *
 * @example
 * kebab("Ground beef, 80 & 20"); // → "ground-beef-80-20"
 */
export function kebab(words: string): string | null {
  if (words.length > 300 || !/^[\w\s.&,'-]+$/.test(words)) return null;
  const id = words
    .toLowerCase()
    .replace(/'/g, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return id === "" ? null : id;
}
