import { resolve } from "node:path";
import { expect, it } from "vitest";
import { doorNames } from "../../../kernel-lib/host/src/kernel/door-names";
import { docstringExamples } from "../../../kernel-lib/host/src/kitchen/docstring-examples";
import { exampleCell } from "../../../kernel-lib/host/src/kitchen/example-cell";
import { tellsOf, withExample } from "../../../kernel-lib/host/src/kitchen/with-example";

const doors = doorNames(resolve("."));
const ids = { variantIds: ["oat-bars"], panIds: ["tray"], trialIds: ["OB-1"] };

it("puts the kitchen's example in the place of the docstring's, for every function of the cook's door", () => {
  const examples = docstringExamples(doors[0]);
  expect(examples.length).toBeGreaterThan(20);
  for (const example of examples) {
    const code = exampleCell({ example, doors, ids });
    const words = `(alias) ${example.name}(options: Options): Table\nimport ${example.name}\n\n${example.summary}\n${example.lines.join("\n")}`;
    const told = withExample(words, { lines: example.lines, code });
    expect(told, example.name).toContain(code);
    expect(told, example.name).toContain(example.summary);
    expect(told.split("\n"), example.name).not.toContain(example.lines.find((line) => line.includes("// →")) ?? "none");
    expect(tellsOf(words, example.name)).toBe(true);
    expect(tellsOf(words, `${example.name}Of`)).toBe(false);
  }
});

it("leaves words as they are that hold no example", () => {
  expect(withExample("const half: number", { lines: [], code: "x" })).toBe("const half: number");
  expect(withExample("const half: number", { lines: ["a(1); // → 2"], code: "$& $1" })).toBe("const half: number");
  expect(withExample("a(1); // → 2", { lines: ["a(1); // → 2"], code: "$& $1" })).toBe("\n$& $1");
});
