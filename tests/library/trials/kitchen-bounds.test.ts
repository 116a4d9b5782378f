// Every number that a kitchen's files hold has an upper bound that no kitchen reaches: our judgement, generous.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { panPreset } from "../../../kernel-lib/library/src/pan/pan-preset";
import { slabMassG } from "../../../kernel-lib/library/src/pan/slab-mass";
import { slabThickness } from "../../../kernel-lib/library/src/pan/slab-thickness";
import { buildKitchen } from "../../../kernel-lib/library/src/trials/build-kitchen";
import type { KitchenFile, KitchenFiles } from "../../../kernel-lib/library/src/trials/kitchen";

const file = (name: string): KitchenFile => ({ file: name, text: readFileSync(`data/${name}`, "utf8") });
const demo: KitchenFiles = {
  name: "demo",
  pans: file("pans.csv"),
  appliances: file("appliances.csv"),
  // the demo's, with plain words where it has commas
  ingredients: {
    ...file("ingredients.csv"),
    text: file("ingredients.csv").text.replace(/"([^"]*)"/g, (_, cell) => cell.replaceAll(",", "")),
  },
  variants: file("variants.csv"),
  formulas: readdirSync("data/formulas").map((name) => file(`formulas/${name}`)),
  trials: [file("trials/beet-lentil.csv")],
};
const HUGE = ["2e54", "1e9"];

/** A file once for each of its columns that hold numbers, with one of them grown. */
function grown(text: string): { column: string; row: number; texts: string[] }[] {
  const lines = text.split("\n");
  const at = lines.findIndex((line) => line !== "" && !line.startsWith("#"));
  const headings = lines[at].split(",");
  return headings.flatMap((column, cell) => {
    const row = lines.findIndex((line, index) => {
      const cells = line.split(",");
      const isPlain = !line.includes('"') && cells.length === headings.length;
      return index > at && isPlain && /^-?[\d.]+(;[\d.]+)*$/.test(cells[cell]);
    });
    if (row < 0) return [];
    const cells = lines[row].split(",");
    const texts = HUGE.map((huge) =>
      lines.with(row, cells.with(cell, cells[cell].replace(/^-?[\d.]+/, huge)).join(",")).join("\n"),
    );
    return [{ column, row: row + 1, texts }];
  });
}

describe("a kitchen with one number that no kitchen holds", () => {
  it.each(["pans", "appliances", "ingredients", "variants"] as const)("is refused in every column of %s", (field) => {
    const cases = grown(demo[field].text);
    const least = { pans: 6, appliances: 2, ingredients: 12, variants: 7 }[field];
    expect(cases.length).toBeGreaterThanOrEqual(least);
    for (const { column, row, texts } of cases) {
      if (column === "ndb") continue; // five digits: a name
      for (const text of texts)
        expect(() => buildKitchen({ ...demo, [field]: { ...demo[field], text } }), column).toThrow(
          new RegExp(`${field}.csv row ${row}\\b.*(expected|must)`),
        );
    }
  });

  it("is refused in every column of a log", () => {
    const cases = grown(demo.trials[0].text);
    expect(cases.length).toBeGreaterThanOrEqual(14);
    for (const { column, row, texts } of cases)
      for (const text of texts)
        expect(() => buildKitchen({ ...demo, trials: [{ file: "log.csv", text }] }), column).toThrow(
          new RegExp(`log.csv row ${row}, column .*expected`),
        );
  });

  it("is refused in every number and amount of a formula", () => {
    let tried = 0;
    for (const [at, formula] of demo.formulas.entries())
      for (const match of formula.text.matchAll(/(?<=[": ])\d+(\.\d+)?(?=[, \n])/g)) {
        if (/"(id|name|origin|note)":/.test(formula.text.slice(0, match.index).split("\n").at(-1) ?? "")) continue;
        for (const huge of ["2000000000000000000", "9".repeat(150)]) {
          const text = `${formula.text.slice(0, match.index)}${huge}${formula.text.slice(match.index + match[0].length)}`;
          const formulas = demo.formulas.with(at, { ...formula, text });
          expect(() => buildKitchen({ ...demo, formulas }), `${formula.file}: ${match[0]}`).toThrow(
            /must|expected|Too big/i,
          );
          tried++;
        }
      }
    expect(tried).toBeGreaterThan(80);
  });

  it("is refused with the bound named", () => {
    const pans = (from: RegExp, to: string): KitchenFiles => ({
      ...demo,
      pans: { file: "pans.csv", text: demo.pans.text.replace(from, to) },
    });
    expect(() => buildKitchen(pans(/(half-sheet,half sheet,rectangle,\d+,\d+,,)[\d.]+/, "$12e54"))).toThrow(
      /^pans.csv row \d+, column depth_mm: expected between 1 and 500 mm, got "2e54"$/,
    );
    const formulas = demo.formulas.map((one) => ({ ...one, text: one.text.replace('"460 g"', '"2000000 g"') }));
    expect(() => buildKitchen({ ...demo, formulas })).toThrow(
      /^formulas\/beet-lentil.json line \d+, mix.0.amount: .* must be at most 1000000 g, got "2000000 g"$/,
    );
  });

  it("is refused for names and notes that are too long or hold control characters", () => {
    const named = (name: string): KitchenFiles => ({
      ...demo,
      pans: { file: "pans.csv", text: demo.pans.text.replace(",half sheet,", `,${name},`) },
    });
    expect(() => buildKitchen(named("a".repeat(301)))).toThrow("expected a name of at most 300 characters");
    for (const control of ["\u001b[2J", "a\u0007", "a\u009bb", '"a\nb"'])
      expect(() => buildKitchen(named(control)), JSON.stringify(control)).toThrow("a name without control characters");
    const noted = demo.trials.map((log) => ({ ...log, text: log.text.replace(/,\n/, `,${"a".repeat(2001)}\n`) }));
    expect(() => buildKitchen({ ...demo, trials: noted })).toThrow("expected a note of at most 2000 characters");
  });

  it("is refused in a pan that is handed over without a file", () => {
    const pan = { ...panPreset("half sheet"), depthMm: 2e54 };
    expect(() => slabThickness({ pan, batchG: 1000, densityKgM3: 1050 })).toThrow(
      "slabThickness: pan: depthMm must be between 1 and 500 mm, got 2e+54",
    );
    expect(() => slabMassG({ pan, thicknessMm: 10, densityKgM3: 1050 })).toThrow("slabMassG: pan: depthMm must be");
  });
});
