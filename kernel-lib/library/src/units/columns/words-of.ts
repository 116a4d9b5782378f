/** A heading's words in lower case, joined by underscores: `Floor (in²)` is `floor_in2`. */
export function wordsOf(heading: string): string {
  return heading
    .toLowerCase()
    .replaceAll("²", "2")
    .replace(/[^\p{L}\p{N}]+/gu, "_")
    .replace(/^_|_$/g, "");
}
