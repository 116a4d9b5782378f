import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { codePlace } from "../../../kernel-lib/host/src/notebook/code-place";
import { compileSentence } from "../../../kernel-lib/host/src/notebook/compile-sentence";

describe("compileSentence", () => {
  it("goes into a field whose own fields are wrong", () => {
    const lines = [
      "1:6 - Argument of type '{ pan: { id: string; }; }' is not assignable to parameter of type 'Options'.",
      "1:6 - Types of property 'pan' are incompatible.",
      "1:6 - Property 'depthMm' is missing in type '{ id: string; }' but required in type 'Pan'.",
    ];
    expect(compileSentence(lines, "bake(options)").sentence).toBe("pan must also have depthMm");
  });

  it("gives the compiler's finest line, long types cut, where it knows no better", () => {
    const long = `{ ${"wall: string; ".repeat(20)}}`;
    const lines = ["1:1 - Something is off.", `1:1 - The '${long}' and the 'Pan' do not go together.`];
    expect(compileSentence(lines, "x").sentence).toBe("The '…' and the 'Pan' do not go together.");
  });

  it("keeps every line, and the cell's own behind those about it", () => {
    const lines = ["1:1 - Cannot find name 'a'.", "./other.ts 3:1 - Cannot find name 'b'."];
    expect(compileSentence(lines, "a")).toEqual({
      sentence: "Cannot find name 'a'. (and 1 more)",
      lines: [lines[0], "1 | a", lines[1]],
    });
  });

  it("reads a line with a return in it, which was taken for none", () => {
    expect(compileSentence(["1:1 - Cannot find\rname 'a'."], "a").sentence).toBe("Cannot find\rname 'a'.");
  });

  it("says something of every complaint about any cell", () => {
    const words = fc.constantFrom(
      "Type 'string' is not assignable to type 'number'.",
      "Property 'a' is missing in type '{}' but required in type 'B'.",
      "Argument of type '{}' is not assignable to parameter of type 'B'.",
      "Property 'x' does not exist on type 'Y'.",
    );
    const code = fc.string({ unit: fc.constantFrom("f", "(", ")", "{", "}", ":", "'", ",", " ", "\n", "a") });
    fc.assert(
      fc.property(fc.array(words, { minLength: 1 }), code, fc.nat(5), fc.nat(9), (said, cell, line, column) => {
        const { sentence, lines } = compileSentence(
          said.map((one) => `${line + 1}:${column + 1} - ${one}`),
          cell,
        );
        expect(sentence.trim()).not.toBe("");
        expect(sentence).not.toMatch(/undefined|null/);
        expect(lines.filter((one) => / - /.test(one))).toHaveLength(said.length);
      }),
    );
  });
});

/** The place of the `|`. */
const placed = (marked: string) => {
  const before = marked.slice(0, marked.indexOf("|")).split("\n");
  return codePlace(marked.replace("|", ""), { line: before.length, column: (before.at(-1) ?? "").length + 1 });
};

describe("codePlace", () => {
  it.each([
    ["bake(|{ a: 1 })", { call: "bake", name: null, owner: "bake" }],
    ["bake({ |a: 1 })", { call: "bake", name: "a", owner: "bake" }],
    ["bake({ pan: { |a: 1 } })", { call: "bake", name: "a", owner: "pan" }],
    ['bake("(", [1, { |a: 1 }])', { call: "bake", name: "a", owner: "bake" }],
    ["bake(1);\nconst |a = 2;", { call: null, name: "a", owner: null }],
    ["kitchen.pans.|x", { before: "kitchen.pans", call: null }],
    ["bake({\n  // one\n  |a: 1,\n})", { call: "bake", name: "a" }],
    ["|", { call: null, name: null, owner: null, before: null }],
  ])("%s", (marked, due) => {
    expect(placed(marked)).toMatchObject(due);
  });
});
