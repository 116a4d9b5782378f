import { describe, expect, it } from "vitest";
import { coldShare, MOST_COLD } from "./card-rows";
import { holdCard } from "./hold-card";

/** The first of the kitchens that `node tests/worlds/card/run.mjs` holds; DEVELOPERS.md has the figures of many. */
const KITCHENS = 48;

describe("cards of drawn kitchens", () => {
  const cards = Array.from({ length: KITCHENS }, (_, seed) => holdCard(seed));

  it("leave a cold piece in no more than one load of a hundred at the time they print, ready or not", () => {
    expect(cards.filter((card) => coldShare(card, "card") > MOST_COLD)).toEqual([]);
  });

  it("are often ready, and ready only where nothing is missing", () => {
    expect(cards.filter(({ ready }) => ready).length).toBeGreaterThan(KITCHENS / 5);
    for (const { ready, unmet } of cards) expect(ready).toBe(unmet.length === 0);
  });
});
