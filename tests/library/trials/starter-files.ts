import { readFileSync } from "node:fs";
import { readFormula } from "../../../kernel-lib/library/src/food/formula/read/read-formula";
import type { FolderFile } from "../../../kernel-lib/library/src/trials/kitchen-folder";
import { starterKitchen } from "../../../kernel-lib/library/src/trials/starter-kitchen";
import type { KitchenUnits } from "../../../kernel-lib/library/src/units/unit-table";

const INGREDIENTS = readFileSync("data/ingredients.csv", "utf8");
/** Invented trials for the log of a new kitchen, in its columns, with the number left to fill in. */
const TRIAL: Readonly<Record<KitchenUnits, string>> = {
  us: "T-#,2026-05-0#,first-variant,half-sheet,air-fryer,43.#,0.38;0.4;0.37,390,0.5,0,6,5.1,,8;10;12,10,12,12.5,205,,,4.6,6;7,3;4,,,",
  metric:
    "T-#,2026-05-0#,first-variant,half-sheet,air-fryer,123#,9.6;9.9;9.4,200,0.5,-18,6,145,,8;10;12,10,12,12.5,96,,,131,6;7,3;4,,,",
};

/** The files of a new kitchen, with so many invented trials in its log. */
export function starterFiles(units: KitchenUnits, trials = 0): readonly FolderFile[] {
  const rows = Array.from({ length: trials }, (_, at) => `${TRIAL[units].replaceAll("#", String(at + 1))}\n`).join("");
  return starterKitchen({ name: "mine", units, ingredientsCsv: INGREDIENTS }).map(({ file, text }) =>
    file.startsWith("trials/")
      ? { file, text: `${text}${rows}` }
      : file === "README.md"
        ? { file, text: null }
        : { file, text },
  );
}

/** The same files with one of them changed; a text that is `null` takes it away. */
export function withFile(
  files: readonly FolderFile[],
  name: string,
  change: (text: string) => string | null,
): readonly FolderFile[] {
  return files.flatMap(({ file, text }) => {
    if (file !== name) return [{ file, text }];
    const changed = change(text ?? "");
    if (changed === text) throw new Error(`the change must change ${name}`);
    return changed === null ? [] : [{ file, text: changed }];
  });
}

/** The same files with the formula of a new kitchen in JSON. */
export function withJsonFormula(files: readonly FolderFile[]): readonly FolderFile[] {
  return files.map((entry) => {
    if (entry.file !== "formulas/first-formula.csv") return entry;
    const { formula } = readFormula(entry.text ?? "", entry.file);
    const mix = formula?.mix.map(
      ({ ingredient, amount }) => `    { "ingredient": "${ingredient}", "amount": "${amount}" }`,
    );
    return { file: "formulas/first-formula.json", text: JSON_FORMULA.replace("MIX", mix?.join(",\n") ?? "") };
  });
}

const JSON_FORMULA = `{
  "id": "first-formula",
  "name": "first formula",
  "origin": "an example, to be replaced by your own",
  "airFraction": 0.03,
  "mix": [
MIX
  ],
  "coating": [
    {
      "layer": "spray oil",
      "lines": [{ "ingredient": "oil-canola", "amount": "100 g" }],
      "pickupPercent": 2,
      "pickupBasis": "substrate",
      "pickupSePercent": 0.5
    }
  ],
  "piecesPerServing": 4,
  "note": "Mixed, spread and frozen; the pieces go from the freezer straight into the hot air."
}
`;
