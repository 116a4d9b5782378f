import { fail } from "../../check/check";
import type { Sr28Food } from "./parse-sr28";

/** One food that a search found. */
export interface FoundFood {
  readonly food: Sr28Food;
  /** how well it matches: 1 when every word of the query is a word of the food; higher for early words and short names */
  readonly score: number;
}

/** The longest query: our judgement, longer than any description of the database. */
const LONGEST_QUERY = 200;

const lowerCaseOf = new WeakMap<readonly Sr28Food[], readonly string[]>();

/**
 * Searches foods by the words of their description, best first. A word of the query matches a word of the food that is
 * equal, differs by a plural, or begins with it (three letters or more); every word must match, one may miss from three
 * words on. Foods that match early in their description, have short descriptions or are raw come first.
 *
 * @param foods from `loadFoods`
 * @param query words in any order: `"turkey ground raw"`; a five-digit number finds that food
 * @param limit most results, 12 unless given
 * @example
 * searchFoods(loadFoods(), "lentils pink raw")[0].food.description; // → "Lentils, pink or red, raw"
 * searchFoods(loadFoods(), "02047")[0].food.description; // → "Salt, table"
 */
export function searchFoods(foods: readonly Sr28Food[], query: string, limit: number = 12): readonly FoundFood[] {
  if (query.length > LONGEST_QUERY) fail("searchFoods: query", `must have at most ${LONGEST_QUERY} characters`, query);
  const wanted = split(query);
  if (wanted.length === 0) fail("searchFoods: query", "must hold a word or a food number", query);
  if (!(Number.isInteger(limit) && limit > 0)) fail("searchFoods: limit", "must be a whole number > 0", limit);
  if (/^\d{5}$/.test(query.trim())) {
    return foods.filter((food) => food.ndb === query.trim()).map((food) => Object.freeze({ food, score: 1 }));
  }
  let descriptions = lowerCaseOf.get(foods);
  if (!descriptions) {
    descriptions = foods.map((food) => food.description.toLowerCase());
    lowerCaseOf.set(foods, descriptions);
  }
  const stems = wanted.map((word) => word.replace(/e?s$/, ""));
  const mayMiss = wanted.length >= 3 ? 1 : 0;
  const found: FoundFood[] = [];
  for (let at = 0; at < foods.length; at++) {
    const description = descriptions[at];
    const hits = stems.reduce((count, stem) => count + (description.includes(stem) ? 1 : 0), 0);
    if (hits < wanted.length - mayMiss) continue;
    const score = scoreOf(wanted, split(description), mayMiss);
    if (score > 0) found.push({ food: foods[at], score });
  }
  found.sort((a, b) => b.score - a.score || a.food.ndb.localeCompare(b.food.ndb));
  return Object.freeze(found.slice(0, limit).map((one) => Object.freeze(one)));
}

function split(text: string): string[] {
  return text
    .toLowerCase()
    .split(/[^a-z0-9%]+/)
    .filter(Boolean);
}

function scoreOf(wanted: readonly string[], words: readonly string[], mayMiss: number): number {
  let missed = 0;
  let sum = 0;
  for (const word of wanted) {
    let best = 0;
    for (let at = 0; at < words.length; at++) {
      const match = matchOf(word, words[at]);
      if (match > 0) best = Math.max(best, match * (1 + 0.3 / (1 + at)));
    }
    if (best === 0) {
      missed += 1;
      if (missed > mayMiss) return 0;
    }
    sum += best;
  }
  const asBought = words.includes("raw") ? 1.05 : 1;
  return (asBought * sum) / wanted.length / (1 + 0.02 * words.length);
}

function matchOf(wanted: string, word: string): number {
  if (wanted === word) return 1;
  if (`${wanted}s` === word || `${word}s` === wanted || `${wanted}es` === word || `${word}es` === wanted) return 0.95;
  return wanted.length >= 3 && word.startsWith(wanted) ? 0.7 : 0;
}
