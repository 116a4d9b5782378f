import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestName } from "../../../kernel-lib/library/src/check/nearest-name";

const PANS = ["three-quarter-sheet", "half-sheet", "quarter-sheet", "mini-wells"];

describe("nearestName", () => {
  it.each([
    ["haf-sheet", "half-sheet"],
    ["hlaf-sheet", "half-sheet"],
    ["half sheet", "half-sheet"],
    ["Half_Sheet", "half-sheet"],
    ["halfsheet", "half-sheet"],
    ["quartersheet", "quarter-sheet"],
    ["wells", "mini-wells"],
    ["mini-wells-2", "mini-wells"],
  ])("takes %s for %s", (given, meant) => {
    expect(nearestName(given, PANS)).toBe(meant);
  });

  it.each(["", " ", "stove", "?!", "x", "note", "x".repeat(1000)])("takes %j for none of them", (given) => {
    expect(nearestName(given, PANS)).toBeNull();
    expect(nearestName(given, [])).toBeNull();
  });

  it("counts a swap of neighbours as one edit, so that a short word is still found", () => {
    expect(nearestName("odre", ["ore", "order"])).toBe("ore");
    expect(nearestName("craon", ["carbon", "crayon", "caron"])).toBe("crayon");
  });

  it("finds every name of a list after one letter is lost, doubled or swapped", () => {
    const edits = [
      (name: string, at: number) => name.slice(0, at) + name.slice(at + 1),
      (name: string, at: number) => name.slice(0, at) + name[at] + name.slice(at),
      (name: string, at: number) => name.slice(0, at) + (name[at + 1] ?? "") + name[at] + name.slice(at + 2),
    ];
    fc.assert(
      fc.property(fc.constantFrom(...PANS), fc.nat(), fc.constantFrom(...edits), (name, at, edit) => {
        expect(nearestName(edit(name, at % name.length), PANS)).toBe(name);
      }),
    );
  });
});
