import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCsv } from "../../kernel-lib/library/src/check/csv";
import { readFormula } from "../../kernel-lib/library/src/food/formula/read/read-formula";
import { DAY_LINES } from "../../kernel-lib/library/src/trials/day/read-kitchen-day";

const readme = readFileSync("data/README.md", "utf8");
const files = [
  "pans.csv",
  "appliances.csv",
  "variants.csv",
  "ingredients.csv",
  "pantry.csv",
  "packs.csv",
  ...readdirSync("data/trials").map((name) => `trials/${name}`),
];

describe("data/README.md", () => {
  it.each(files)("explains every column of %s", (file) => {
    const { headings } = readCsv(readFileSync(`data/${file}`, "utf8"), file);
    const inKitchenUnits = headings.map((heading) =>
      heading.replace(/_in$/, "_mm").replace(/_lb$/, "_g").replace(/_f$/, "_c"),
    );
    expect(inKitchenUnits.filter((heading) => !readme.includes(`\`${heading}\``))).toEqual([]);
  });

  it("explains every line of day.csv", () => {
    expect(DAY_LINES.filter((line) => !readme.includes(`\`${line}\``))).toEqual([]);
  });

  it("shows a formula that reads as it stands", () => {
    const [, text] = /```\n(name,[\s\S]*?)```/.exec(readme) ?? [];
    const { formula, slips } = readFormula(text, "formulas/shown.csv");
    expect(slips).toEqual([]);
    expect(formula).toMatchObject({ id: "shown", mix: [{}, {}], coating: [{ lines: [{}, {}] }, { pickupPercent: 2 }] });
  });

  it("says that the kitchen is invented", () => {
    expect(readme).toContain("test kitchen is invented");
  });
});
