import { expect, it } from "vitest";
import type { Door } from "../../../kernel-lib/host/src/kernel/door-names";
import { exampleCell } from "../../../kernel-lib/host/src/kitchen/example-cell";

const door = (name: string, values: string[]): Door => ({
  door: name,
  file: "",
  values: new Map(values.map((value) => [value, ""])),
  types: new Set(),
});
const doors = [
  door("kitchen", ["bake", "bakeFigure", "compare", "loadKitchen", "otherPans", "panOf", "show", "variantOf", "why"]),
  door("kitchen/heat", ["bake", "heat"]),
];
const ids = { variantIds: ["mine", "other"], panIds: ["tray", "tin"], trialIds: ["T-9"] };

function cell(name: string, gives: string, lines: string[], known: typeof ids | null = ids): string {
  return exampleCell({ example: { name, summary: "", gives, lines }, doors, ids: known });
}

it("puts the kitchen's ids where the example has its own, by the part they play", () => {
  expect(
    cell("bake", "Loaf", [
      'const one = bake({ kitchen: loadKitchen(), variantId: "demo" });',
      "one.timeMin; // → 12",
      'heat(variantOf(loadKitchen(), "demo"), panOf(loadKitchen(), "demo-pan")); // → 3',
    ]),
  ).toBe(
    [
      'import { bake, loadKitchen, panOf, variantOf } from "kitchen";',
      'import { heat } from "kitchen/heat";',
      "",
      "const kitchen = loadKitchen();",
      'const one = bake({ kitchen, variantId: "mine" });',
      "console.log(one.timeMin);",
      'console.log(heat(variantOf(kitchen, "mine"), panOf(kitchen, "tray")));',
    ].join("\n"),
  );
  expect(cell("compare", "X", ['compare({ variantIds: ["a", "b", "c"] }).n; // → 3'])).toContain(
    'compare({ variantIds: ["mine", "other"] }).n',
  );
  expect(cell("why", "X", ['why({ trialId: "D-1" }).clock; // → 1'])).toContain('why({ trialId: "T-9" })');
});

it("shows figures and tables whole, each once, and leaves out what is there to fail", () => {
  expect(
    cell("bakeFigure", "Figure", [
      "bakeFigure([1, 2]).data.length; // → 3",
      "bakeFigure([1, 2]).layout.width; // → 5",
      'bakeFigure([]); // throws "must hold"',
    ]),
  ).toBe('import { bakeFigure, show } from "kitchen";\n\nshow(bakeFigure([1, 2]));');
  expect(cell("bake", "Loaf", ['bake("no-log"); // throws "no-log"'])).toContain('\nbake("no-log");');
});

it("leaves out a line for which the kitchen has no second pan, and names no trial where none is logged", () => {
  const lines = [
    'pans.find((pan) => pan.panId === "a").advice; // → "keep"',
    'pans.find((pan) => pan.panId === "b").advice; // → "split"',
  ];
  const both = cell("otherPans", "X", lines);
  expect(both).toContain('"tray"');
  expect(both).toContain('"tin"');
  const one = cell("otherPans", "X", lines, { ...ids, panIds: ["tray"] });
  expect(one.split("\n").filter((line) => line.includes("find"))).toHaveLength(1);
  expect(cell("why", "X", ['why({ trialId: "D-1" }); // → 1'], { ...ids, trialIds: [] })).not.toContain("D-1");
});
