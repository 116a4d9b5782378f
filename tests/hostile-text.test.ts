// Every reader of text, of the host and of the library, is fed a megabyte of each shape that makes careless readers
// slow. This bounds how the work grows, it does not measure a machine: a reader whose time grows in proportion takes some
// 20 to 200 ms of processor time for a megabyte, one whose time grows with the square takes minutes to hours, and the
// bound of one second of processor time (other programs on the machine do not count) lies between. The size grows in
// steps, so that a cubic reader is caught at two thousand characters and not waited for.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import {
  compareOutputs,
  errorOutput,
  failureText,
  leadOf,
  type Notebook,
  notebookText,
  parseNotebook,
  renderMarkdown,
  safeHtml,
  terminalText,
  titleOf,
  writeReport,
} from "slabwright-host";
import { afterAll, describe, expect, it } from "vitest";
import { printable } from "../kernel-lib/host/src/command/printable";
import { completeImport } from "../kernel-lib/host/src/kernel/complete-import";
import { doorNames } from "../kernel-lib/host/src/kernel/door-names";
import { readCsv } from "../kernel-lib/library/src/check/csv";
import { mendJson } from "../kernel-lib/library/src/check/mend-json";
import { gramsOf } from "../kernel-lib/library/src/food/formula/grams-of";
import { parseFormula } from "../kernel-lib/library/src/food/formula/read/parse-formula";
import { scaledMeasure } from "../kernel-lib/library/src/food/formula/scaled-measure";
import { readAllergenMarks, US_ALLERGENS } from "../kernel-lib/library/src/food/ingredient/allergens";
import { importFoods } from "../kernel-lib/library/src/food/ingredient/import-foods";
import { INGREDIENT_COLUMNS } from "../kernel-lib/library/src/food/ingredient/ingredient-columns";
import { ingredientFromLabel } from "../kernel-lib/library/src/food/ingredient/ingredient-from-label";
import { parseIngredients } from "../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { parseSr28 } from "../kernel-lib/library/src/food/ingredient/parse-sr28";
import { searchFoods } from "../kernel-lib/library/src/food/ingredient/search-foods";
import { readProbeTrace } from "../kernel-lib/library/src/heat/probe/probe-trace";
import { loadFoods } from "../kernel-lib/library/src/notebook/load-foods";
import { loadKitchen } from "../kernel-lib/library/src/notebook/load-kitchen";
import { panPreset } from "../kernel-lib/library/src/pan/pan-preset";
import { readPans } from "../kernel-lib/library/src/pan/read-pans";
import { readAppliances } from "../kernel-lib/library/src/trials/appliance";
import { buildKitchen } from "../kernel-lib/library/src/trials/build-kitchen";
import type { KitchenFile, KitchenFiles } from "../kernel-lib/library/src/trials/kitchen";
import { variantOf } from "../kernel-lib/library/src/trials/kitchen-lookup";
import { readTrials } from "../kernel-lib/library/src/trials/log/read-trials";
import { readVariants } from "../kernel-lib/library/src/trials/variant";
import { columnUnit } from "../kernel-lib/library/src/units/columns/column-unit";
import { convertUnit } from "../kernel-lib/library/src/units/convert-unit";
import { parseQuantity } from "../kernel-lib/library/src/units/typed/parse-quantity";
import { escapeXml } from "../kernel-lib/library/src/views/figure/svg/marks";
import { tableHtml } from "../kernel-lib/library/src/views/table/table-html";

const DOORS = doorNames("notebooks");
const SIZES = [2000, 20_000, 200_000, 1_000_000];
const LIMIT_S = 1;

/** Pieces that are repeated to the size wanted, and texts made to it. */
const SHAPES: Readonly<Record<string, string | ((size: number) => string)>> = {
  spaces: " ",
  "spaces between two words": (size) => `a${" ".repeat(size)}b`,
  tabs: "\t",
  newlines: "\n",
  "line ends of Windows": "\r\n",
  "spaces and newlines": " \n",
  "lines of a word": "word\n",
  "lines of two cells": "word,1\n",
  "rows of empty cells": `${",".repeat(30)}\n`,
  "opening brackets": "[",
  "closing brackets": "]",
  parentheses: "(",
  braces: "{",
  quotes: '"',
  "quoted quotes": '""',
  apostrophes: "'",
  backslashes: "\\",
  "less-than signs": "<",
  "greater-than signs": ">",
  ampersands: "&",
  commas: ",",
  semicolons: ";",
  digits: "1",
  "digits and a letter": (size) => `${"1".repeat(size)}x`,
  "numbers in a row": "1 ",
  letters: "a",
  hyphens: "-",
  underscores: "_",
  stars: "*",
  "stars and letters": "*a",
  hashes: "#",
  "a heading of spaces": (size) => `# a${" ".repeat(size)}b`,
  percents: "%",
  dollars: "$",
  "dollars and words": "$x ",
  backticks: "`",
  pipes: "|",
  circumflexes: "^",
  tildes: "~",
  slashes: "/",
  "pictures that never end": "![",
  "links that never end": "[a](",
  "tags that never end": "<b ",
  "tags with quotes that never end": '<a href="',
  "comments that never end": "<!--",
  "nested tags": "<b>",
  "tags opened and closed wrongly": "<b></i>",
  "references that never end": "&#1",
  "nested lists of JSON": (size) => "[".repeat(size / 2) + "]".repeat(size / 2),
  "nested objects of JSON": (size) => `${'{"a":'.repeat(size / 6)}1${"}".repeat(size / 6)}`,
  "nested quotes of markdown": "> ",
  "nested lists of markdown": (size) =>
    Array.from({ length: Math.sqrt(size) }, (_, depth) => `${" ".repeat(2 * depth)}- a\n`)
      .join("")
      .slice(0, size),
  "colours of a terminal": "\u001b[1",
  "quantities in a row": "1 g ",
  "units in a row": "cup ",
  "fractions in a row": "1/2 ",
};

/** The shapes that differ for a reader behind `readCsv`, which itself is fed them all. */
const CSV_SHAPES = [
  "spaces between two words",
  "newlines",
  "spaces and newlines",
  "lines of a word",
  "lines of two cells",
  "rows of empty cells",
  "opening brackets",
  "quotes",
  "quoted quotes",
  "commas",
  "semicolons",
  "digits",
  "digits and a letter",
  "numbers in a row",
  "letters",
  "hyphens",
  "hashes",
];

function shapeOf(name: string, size: number): string {
  const shape = SHAPES[name];
  return typeof shape === "string" ? shape.repeat(Math.ceil(size / shape.length)).slice(0, size) : shape(size);
}

const data = resolve(__dirname, "../data");
const file = (name: string): KitchenFile => ({ file: name, text: readFileSync(join(data, name), "utf8") });
const FILES: KitchenFiles = {
  name: "a kitchen",
  pans: file("pans.csv"),
  appliances: file("appliances.csv"),
  ingredients: file("ingredients.csv"),
  variants: file("variants.csv"),
  formulas: ["beet-lentil", "turkey-sage"].map((name) => file(`formulas/${name}.json`)),
  trials: [file("trials/beet-lentil.csv")],
};
const kitchen = loadKitchen(data);
const foods = loadFoods();
const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const heading = (text: string): string => text.split("\n").find((line) => !line.startsWith("#")) ?? "";
/** A row of a file with the text in one cell, quoted as CSV has it, so that it is read as that cell. */
function inCell(csv: string, column: string, text: string): string {
  const headings = heading(csv).split(",");
  const row = headings.map((one) => (one === column ? `"${text.replaceAll('"', '""')}"` : ""));
  return `${headings.join(",")}\n${row.join(",")}\n`;
}
const notebook = (source: string, outputs: unknown[] = []): Notebook =>
  ({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: [
      { id: "a", cell_type: "markdown", metadata: {}, source },
      { id: "b", cell_type: "code", metadata: { tags: ["terminal"] }, source, outputs },
    ],
  }) as Notebook;
const printed = (text: string): unknown => ({ output_type: "stream", name: "stdout", text });
const shown = (mime: string, text: string): unknown => ({
  output_type: "display_data",
  metadata: {},
  data: { [mime]: text },
});

const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  "parseNotebook, a file": (text) => parseNotebook(text, "x.ipynb"),
  "parseNotebook and notebookText, an output": (text) =>
    notebookText(parseNotebook(JSON.stringify(notebook("", [printed(text)])), "x.ipynb")),
  "parseNotebook, JSON in a display": (text) =>
    parseNotebook(`{"nbformat":4,"cells":[{"cell_type":"code","source":"","outputs":[{"a":${text}}]}]}`, "x.ipynb"),
  titleOf: (text) => titleOf(notebook(text), "none"),
  "titleOf, in a heading": (text) => titleOf(notebook(`# a ${text} b`), "none"),
  leadOf: (text) => leadOf(notebook(text), "none"),
  renderMarkdown: (text) => renderMarkdown(text, { prefix: "p" }),
  "renderMarkdown, maths": (text) => renderMarkdown(`$$\n${text}\n$$`, { prefix: "p" }),
  "renderMarkdown, a picture": (text) => renderMarkdown(`![a](data:image/png;base64,${text})`, { prefix: "p" }),
  safeHtml: (text) => safeHtml(text),
  "safeHtml, in a tag": (text) => safeHtml(`<td ${text}>1</td>`),
  "safeHtml, in an attribute": (text) => safeHtml(`<td title='${text}' style='text-align: ${text}'>1</td>`),
  terminalText: (text) => terminalText(notebook("", [printed(text), shown("text/plain", text)])),
  printable: (text) => printable(text),
  compareOutputs: (text) => compareOutputs(notebook("", [printed(text)]), notebook("", [printed(`${text}1`)])),
  failureText: (text) => failureText([text, text]),
  errorOutput: (text) => errorOutput(text, ""),
  "errorOutput, the compiler's words": (text) => errorOutput(`1:7 - ${text}`, "", text),
  "errorOutput, a type": (text) => errorOutput(`1:7 - Type '${text}' is not assignable to type '${text}'.`, "", text),
  completeImport: (text) => completeImport(`import { a${text}`, 10, DOORS),
  "completeImport, at the end": (text) => completeImport(`import { ${text}`, 9 + text.length, DOORS),
  readCsv: (text) => readCsv(text, "x.csv"),
  "readCsv, below a heading": (text) => readCsv(`a,b\n${text}`, "x.csv"),
  readPans: (text) => readPans(text, "x.csv"),
  readAppliances: (text) => readAppliances(text, "x.csv"),
  readVariants: (text) => readVariants(text, "x.csv"),
  readTrials: (text) => readTrials(text, "x.csv"),
  "readTrials, below the headings": (text) => readTrials(`${heading(FILES.trials[0].text)}\n${text}`, "x.csv"),
  "readTrials, thickness": (text) => readTrials(inCell(FILES.trials[0].text, "thickness_mm", text), "x.csv"),
  "readTrials, batch": (text) => readTrials(inCell(FILES.trials[0].text, "batch_g", text), "x.csv"),
  "readTrials, date": (text) => readTrials(inCell(FILES.trials[0].text, "date", text), "x.csv"),
  "readTrials, trial": (text) => readTrials(inCell(FILES.trials[0].text, "trial", text), "x.csv"),
  "readTrials, scores": (text) => readTrials(inCell(FILES.trials[0].text, "crisp_scores", text), "x.csv"),
  "readTrials, note": (text) => readTrials(inCell(FILES.trials[0].text, "note", text), "x.csv"),
  "readTrials, load": (text) => readTrials(inCell(FILES.trials[0].text, "load_fraction", text), "x.csv"),
  "readTrials, JSON Lines": (text) => readTrials(text, "x.jsonl"),
  "readTrials, a field of JSON Lines": (text) =>
    readTrials(JSON.stringify({ trialId: "a", setpointC: text }), "x.jsonl"),
  "readTrials, a heading": (text) => readTrials(`"thickness_${text.replaceAll('"', '""')}",trial\n1,2`, "x.csv"),
  parseIngredients: (text) => parseIngredients(text, "x.csv"),
  "parseIngredients, below the headings": (text) =>
    parseIngredients(`${INGREDIENT_COLUMNS.join(",")}\n${text}`, "x.csv"),
  "parseIngredients, water": (text) => parseIngredients(inCell(INGREDIENT_COLUMNS.join(","), "water_g", text), "x.csv"),
  "parseIngredients, id": (text) => parseIngredients(inCell(INGREDIENT_COLUMNS.join(","), "id", text), "x.csv"),
  readAllergenMarks: (text) => readAllergenMarks(`milk${text}!`, US_ALLERGENS),
  "readAllergenMarks, species": (text) => readAllergenMarks(`fish (${text}`, US_ALLERGENS),
  importFoods: (text) => importFoods(importOf(text)),
  "importFoods, below the headings": (text) => importFoods(importOf(`food,kJ\n${text}`)),
  "importFoods, a value": (text) => importFoods(importOf(inCell("food,kJ", "kJ", text))),
  "importFoods, a name": (text) => importFoods(importOf(inCell("food,kJ", "food", text))),
  "parseSr28, foods": (text) => parseSr28({ abbreviated: text, descriptions: "" }),
  "parseSr28, descriptions": (text) => parseSr28({ abbreviated: "", descriptions: text }),
  searchFoods: (text) => searchFoods(foods, text),
  ingredientFromLabel: (text) =>
    ingredientFromLabel({
      id: text,
      name: text,
      style: "US",
      perG: 100,
      printed: { energyKcal: 100, proteinG: 5, fatG: 5, carbohydrateG: 10 },
      householdWeights: [{ measure: text, massG: 1, source: text }],
    }),
  parseFormula: (text) => parseFormula(text, "x.json"),
  "parseFormula, an amount": (text) =>
    parseFormula(
      FILES.formulas[0].text.replace('"460 g"', () => JSON.stringify(text)),
      "x.json",
    ),
  "parseFormula, a table": (text) => parseFormula(text, "x.csv"),
  "parseFormula, below the headings of a table": (text) => parseFormula(`part,ingredient,amount\n${text}`, "x.csv"),
  mendJson: (text) => mendJson(text),
  "mendJson, in a list": (text) => mendJson(`{ "a": [1,${text}`),
  "parseFormula, lines": (text) =>
    parseFormula(
      FILES.formulas[0].text.replace('"mix": [', () => `"mix": [${text},`),
      "x",
    ),
  gramsOf: (text) => gramsOf({ name: "peas", householdWeights: [] }, text),
  "gramsOf, after a number": (text) => gramsOf({ name: "peas", householdWeights: [] }, `1 ${text}`),
  "gramsOf, a household measure": (text) =>
    gramsOf({ name: "peas", householdWeights: [{ measure: `1 ${text}`, massG: 1, source: "" }] }, "1 cup"),
  scaledMeasure: (text) => scaledMeasure(`1 ${text}`, 2),
  parseQuantity: (text) => parseQuantity(text),
  "parseQuantity, after a number": (text) => parseQuantity(`1 ${text}`),
  "parseQuantity, after a quantity": (text) => parseQuantity(`1 cup ${text} 1 tsp`),
  convertUnit: (text) => convertUnit({ value: 1, from: text, to: "g" }),
  columnUnit: (text) => columnUnit(`a_${text}`),
  panPreset: (text) => panPreset(text),
  variantOf: (text) => variantOf(kitchen, text),
  readProbeTrace: (text) => readProbeTrace(text, { file: "x.csv" }),
  "readProbeTrace, a heading": (text) => readProbeTrace(`time_s,core ${text} c\n0,1\n1,2`, { file: "x.csv" }),
  "readProbeTrace, below the headings": (text) => readProbeTrace(`time_s,core_c\n0,1\n${text}`, { file: "x.csv" }),
  "readProbeTrace, a time": (text) => readProbeTrace(`time,core_c\n0,1\n${text},2`, { file: "x.csv" }),
  "readProbeTrace, a reading": (text) => readProbeTrace(`time_s,core_c\n0,1\n1,${text}`, { file: "x.csv" }),
  "buildKitchen, pans": (text) => buildKitchen({ ...FILES, pans: { file: "pans.csv", text } }),
  "buildKitchen, ingredients": (text) => buildKitchen({ ...FILES, ingredients: { file: "ingredients.csv", text } }),
  "buildKitchen, a formula": (text) => buildKitchen({ ...FILES, formulas: [{ file: "x.json", text }] }),
  "buildKitchen, trials": (text) => buildKitchen({ ...FILES, trials: [{ file: "x.csv", text }] }),
  "buildKitchen, below the headings of trials": (text) =>
    buildKitchen({ ...FILES, trials: [{ file: "x.csv", text: `${FILES.trials[0].text}${text}` }] }),
  escapeXml: (text) => escapeXml(text),
  tableHtml: (text) => tableHtml({ kind: "table", title: "", columns: [{ heading: "" }], rows: [[text]], notes: [] }),
};

function importOf(csvText: string): Parameters<typeof importFoods>[0] {
  return {
    csvText,
    fileName: "x.csv",
    nameColumn: "food",
    columns: { energyKcal: { column: "kJ", unit: "kJ" } },
    carbohydrateIncludesFibre: false,
    source: "invented",
  };
}

/**
 * Processor time that a reader takes (s), the least of three readings where the first is over the limit but near it: the
 * collector of garbage works on threads of its own, whose time counts with the reader's.
 */
function leastSeconds(read: (text: string) => unknown, text: string): number {
  let least = cpuSeconds(read, text);
  for (let again = 0; again < 2 && least > LIMIT_S && least < 2 * LIMIT_S; again++)
    least = Math.min(least, cpuSeconds(read, text));
  return least;
}

/** Processor time that a reader takes once (s); what it throws must be said in a sentence, not be a stack that overflowed. */
function cpuSeconds(read: (text: string) => unknown, text: string): number {
  const before = process.cpuUsage();
  try {
    read(text);
  } catch (error) {
    expect(error).toBeInstanceOf(Error);
    expect((error as Error).message).not.toMatch(/call stack|Invalid string length|is not a function|of undefined/);
  }
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

describe("a megabyte of hostile text", () => {
  it.each(Object.keys(READERS))(
    "%s reads every shape within a second of processor time",
    (name) => {
      const slow: string[] = [];
      let worst = 0;
      const behindCsv = /^(read(Pans|App|Var|Tri)|parseIng|importF|buildKitchen, [^a])/.test(name);
      for (const shape of behindCsv ? CSV_SHAPES : Object.keys(SHAPES))
        for (const size of SIZES) {
          const seconds = leastSeconds(READERS[name], shapeOf(shape, size));
          worst = Math.max(worst, seconds);
          if (seconds <= LIMIT_S) continue;
          slow.push(`${shape}: ${seconds.toFixed(1)} s for ${size} characters`);
          break;
        }
      expect(slow).toEqual([]);
      if (process.env.HOSTILE_ROWS) console.log(`${worst.toFixed(2)} s at worst: ${name}`);
    },
    240_000,
  );

  it("readTrials bears a log of empty rows", () => {
    const headings = heading(FILES.trials[0].text);
    const row = `${headings.replace(/[^,]/g, "")}\n`;
    const text = `${headings}\n${row.repeat(1_000_000 / row.length)}`;
    expect(cpuSeconds((log) => readTrials(log, "x.csv"), text)).toBeLessThan(LIMIT_S);
  });

  it.each(["stars and letters", "nested tags", "quotes", "newlines"])(
    "writeReport bears a notebook of %s",
    async (shape) => {
      const text = shapeOf(shape, 1_000_000);
      const outputs = [printed(text), ...["text/html", "text/markdown", "text/plain"].map((mime) => shown(mime, text))];
      const path = join(folder, "report.html");
      const before = process.cpuUsage();
      await writeReport({ notebooks: [{ path: "x.ipynb", notebook: notebook(text, outputs) }], path });
      const { user, system } = process.cpuUsage(before);
      expect((user + system) / 1e6).toBeLessThan(4 * LIMIT_S);
    },
  );
});
