/**
 * The known name that a mistyped one most likely means, by edit distance (insertions, deletions, replacements and swaps of
 * neighbours, after F. Damerau 1964, each counted as one; capitals, and what parts words, count for nothing). A name that
 * differs in more than a third of its letters is not meant, unless one of the two holds the other.
 *
 * @param given as typed
 * @param known the names that exist
 * @returns the nearest, the first of equals; `null` when none is near
 * @example
 * nearestName("haf sheet", ["half-sheet", "quarter-sheet"]); // → "half-sheet"
 * nearestName("stove", ["half-sheet", "quarter-sheet"]); // → null
 */
export function nearestName(given: string, known: readonly string[]): string | null {
  const asked = given.length > LONGEST ? "" : folded(given);
  if (asked === "") return null;
  let best: { readonly name: string; readonly distance: number } | null = null;
  for (const name of known) {
    const one = name.length > LONGEST ? "" : folded(name);
    if (one === "") continue;
    const shorter = Math.min(one.length, asked.length);
    const isHeld = shorter >= 4 && (one.includes(asked) || asked.includes(one));
    const limit = Math.max(1, Math.floor(Math.max(one.length, asked.length) / 3));
    const distance = Math.abs(one.length - asked.length) > limit && !isHeld ? limit + 1 : editDistance(asked, one);
    if ((distance <= limit && distance < shorter) || isHeld) {
      if (best === null || distance < best.distance) best = { name, distance };
    }
  }
  return best?.name ?? null;
}

/** The longest name that is compared: our judgement, as the work grows with the square of the length. */
const LONGEST = 300;

function folded(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "-");
}

/** Optimal string alignment: the fewest edits that turn one text into the other, none within another. */
function editDistance(from: string, to: string): number {
  let twoBack: number[] = [];
  let oneBack = Array.from({ length: to.length + 1 }, (_, at) => at);
  for (let i = 1; i <= from.length; i++) {
    const row = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = oneBack[j - 1] + (from[i - 1] === to[j - 1] ? 0 : 1);
      row[j] = Math.min(oneBack[j] + 1, row[j - 1] + 1, replaced);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1])
        row[j] = Math.min(row[j], twoBack[j - 2] + 1);
    }
    twoBack = oneBack;
    oneBack = row;
  }
  return oneBack[to.length];
}
