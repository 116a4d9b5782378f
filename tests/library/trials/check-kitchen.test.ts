import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildKitchen } from "../../../kernel-lib/library/src/trials/build-kitchen";
import { checkKitchen } from "../../../kernel-lib/library/src/trials/check-kitchen";
import type { KitchenFile } from "../../../kernel-lib/library/src/trials/kitchen";
import type { FolderFile } from "../../../kernel-lib/library/src/trials/kitchen-folder";
import { starterFiles, withFile, withJsonFormula } from "./starter-files";

const LOG = "trials/first-log.csv";
const FORMULA = "formulas/first-formula.json";
const US = withJsonFormula(starterFiles("us", 6));
const METRIC = withJsonFormula(starterFiles("metric", 6));

type Change = (files: readonly FolderFile[]) => readonly FolderFile[];
const put =
  (name: string, from: string | RegExp, to: string): Change =>
  (files) =>
    withFile(files, name, (text) => text.replaceAll(from, to));
const all =
  (...changes: Change[]): Change =>
  (files) =>
    changes.reduce((changed, change) => change(changed), files);
const problemsOf = (files: readonly FolderFile[]): readonly string[] => checkKitchen(files).problems;
/** A text with a column taken out of it. */
const withoutColumn = (text: string, heading: string): string => {
  const lines = text.trimEnd().split("\n");
  const at = lines[0].split(",").indexOf(heading);
  return `${lines.map((line) => line.split(",").toSpliced(at, 1).join(",")).join("\n")}\n`;
};
/** A text without quotes, whose cells can be counted by commas. */
const plain = (files: readonly FolderFile[]): readonly FolderFile[] =>
  withFile(files, "ingredients.csv", (text) => text.replace(/"([^"\n]*)"/g, (_, cell) => cell.replaceAll(",", "")));

describe("checkKitchen", () => {
  it("finds nothing wrong with a new kitchen that has its first trials", () => {
    for (const files of [US, METRIC, plain(US)])
      expect(checkKitchen(files)).toMatchObject({ problems: [], notices: [], kitchen: { trials: { length: 6 } } });
  });

  const DAMAGED: Readonly<Record<string, { readonly damage: Change; readonly lines: readonly RegExp[] }>> = {
    "a column that a log must have is gone": {
      damage: (files) => withFile(files, LOG, (text) => withoutColumn(text, "setpoint_f")),
      lines: [/^trials\/first-log\.csv row 1: expected a column setpoint_f \(a setpoint\), got none$/],
    },
    "a mark in a pan's id": {
      damage: put("pans.csv", "half-sheet,", "half*sheet,"),
      lines: [/^pans\.csv row 2, column pan: expected an id of letters, .*, got "half\*sheet"$/],
    },
    "°C typed under a °F heading": {
      damage: put(LOG, ",390,", ",200,"),
      lines: [
        /^trials\/first-log\.csv rows 2 to 7, column setpoint_f: expected a setpoint of 100 to 290 °C .*, got "200"$/,
      ],
    },
    "a heading without its unit": {
      damage: put(LOG, "thickness_in", "thickness"),
      lines: [
        /^trials\/first-log\.csv row 1, column thickness: expected a heading that ends in its unit, such as thickness_in$/,
      ],
    },
    "semicolons in place of commas": {
      damage: (files) => withFile(files, "variants.csv", (text) => text.replaceAll(",", ";")),
      lines: [/^variants\.csv row 1: expected headings and cells parted by commas, got semicolons/],
    },
    "a formula that is no JSON": {
      damage: put(FORMULA, '"mix": [', '"mix": '),
      lines: [/^formulas\/first-formula\.json line 8: expected JSON: a name in double quotes, got "\{"$/],
    },
    "a comma too many in a formula, with the rest of the kitchen looked at all the same": {
      damage: all(
        put(FORMULA, '"1/2 tsp" }', '"1/2 tsp" },'),
        put(FORMULA, "peas-frozen", "pees-frozen"),
        put(LOG, ",43.4,", ",444,"),
      ),
      lines: [
        /^formulas\/first-formula\.json line 8, mix\.1\.ingredient: .* got "pees-frozen" \(nearest: peas-frozen\)$/,
        /^formulas\/first-formula\.json line 13: expected JSON: no comma before the closing "\]", got "\]"$/,
      ],
    },
    "a comma too many in a formula, and a batch that no pan holds": {
      damage: all(put(FORMULA, '"1/2 tsp" }', '"1/2 tsp" },'), put(LOG, ",43.4,", ",444,")),
      lines: [
        /^formulas\/first-formula\.json line 13: expected JSON: no comma before the closing "\]", got "\]"$/,
        /^trials\/first-log\.csv row 5, column batch_oz: expected at most .* of this mix, got "444"$/,
      ],
    },
    "an ingredient that is not in the table, and an amount that is none": {
      damage: all(put(FORMULA, "peas-frozen", "pees-frozen"), put(FORMULA, '"3 oz"', '"some"')),
      lines: [
        /^formulas\/first-formula\.json line 8, mix\.1\.ingredient: expected an ingredient of ingredients\.csv or labels\.csv, got "pees-frozen" \(nearest: peas-frozen\)$/,
        /^formulas\/first-formula\.json line 9, mix\.2\.amount: expected an amount, which must begin with a number/,
      ],
    },
    "a pan that was renamed where it is measured": {
      damage: put("pans.csv", "half-sheet,", "haf-sheet,"),
      lines: [
        /^variants\.csv row 2 and trials\/first-log\.csv rows 2 to 7, column pan: expected one of haf-sheet, got "half-sheet", which pans\.csv does not hold \(nearest: haf-sheet\)$/,
      ],
    },
    "a log that was copied": {
      damage: (files) => [
        ...files,
        { file: "trials/second.csv", text: files.find(({ file }) => file === LOG)?.text ?? "" },
      ],
      lines: [
        /^trials\/second\.csv rows 2 to 7, column trial: expected a name not used before, and trials\/first-log\.csv has this one, got "T-1", "T-2", "T-3" and 3 others$/,
      ],
    },
    "two files that are missing, one under another name": {
      damage: (files) => [
        ...files.filter(({ file }) => file !== "pans.csv" && file !== "variants.csv"),
        { file: "Pans.CSV", text: null },
      ],
      lines: [
        /^pans\.csv: expected a file of that name, got none \(nearest: Pans\.CSV\)$/,
        /^variants\.csv: expected a file of that name, got none$/,
      ],
    },
    "a slip in every file": {
      damage: all(
        put("kitchen.json", '"us"', '"USA"'),
        put("pans.csv", "rectangle", "square"),
        put("appliances.csv", "air fryer,85", "air frier,85"),
        put("ingredients.csv", ",150,18.73,", ",lots,18.73,"),
        put(FORMULA, '"airFraction": 0.03', '"airFraction": 3'),
        put("variants.csv", "slab", "slice"),
        put(LOG, "2026-05-03", "5/3/2026"),
      ),
      lines: [
        /^kitchen\.json line 3, units: expected "us" or "metric", got "USA"/,
        /^pans\.csv row 2, column shape: expected rectangle, round or wells, got "square"$/,
        /^appliances\.csv row 2, column kind: expected air fryer, fan oven or still oven, got "air frier"$/,
        /^ingredients\.csv row 2, column energy_kcal: expected a number or blank, got "lots"$/,
        /^formulas\/first-formula\.json line 5, airFraction: expected a share of air, 0 to below 0\.8 \(80 %\), got 3$/,
        /^variants\.csv row 2, column form: expected slab or batter, got "slice"$/,
        /^trials\/first-log\.csv row 4, column date: expected a day such as 2026-03-14; this may be 2026-05-03 or 2026-03-05, and the heading "date \(m\/d\/y\)" or "date \(d\/m\/y\)" says which, got "5\/3\/2026"$/,
      ],
    },
    "batches that no pan could hold, as the pan was typed in the wrong unit": {
      damage: put("pans.csv", "16.5,11.5,,1,", "1.65,1.15,,1,"),
      lines: [
        /^pans\.csv row 2, column corner_radius_in: expected at most half the shorter side \(14\.\d+ mm\), got "0\.6"$/,
      ],
    },
    "a pan that is too shallow for all that is spread on it": {
      damage: put("pans.csv", "16.5,11.5,,1,", "16.5,11.5,,0.1,"),
      lines: [
        /^pans\.csv row 2: expected sizes of a pan that holds what is spread on it, 2 lb 8 oz to 2 lb 11\.6 oz, got sizes that hold 11\.5 oz$/,
      ],
    },
  };

  it.each(Object.entries(DAMAGED))("tells in as many lines as there are slips: %s", (_, { damage, lines }) => {
    const { problems, kitchen } = checkKitchen(damage(US));
    expect(problems).toHaveLength(lines.length);
    for (const [at, line] of lines.entries()) expect(problems[at]).toMatch(line);
    expect(kitchen).toBeNull();
  });

  it("reads a young kitchen: no folder of trials, an empty log, a log of headings alone", () => {
    const none = US.filter(({ file }) => file !== LOG);
    expect(checkKitchen(none)).toMatchObject({ problems: [], notices: [], kitchen: { trials: [] } });
    expect(checkKitchen(withFile(US, LOG, () => "\n"))).toMatchObject({
      problems: [],
      notices: ["trials/first-log.csv is empty: it has not even headings"],
    });
    expect(checkKitchen(starterFiles("us"))).toMatchObject({ problems: [], notices: [], kitchen: { trials: [] } });
  });

  it("guesses the units from the headings when kitchen.json does not say them, and says so", () => {
    const silent = (files: readonly FolderFile[]): readonly FolderFile[] =>
      withFile(files, "kitchen.json", () => '{ "name": "mine" }');
    for (const units of ["us", "metric"] as const) {
      const { kitchen, notices } = checkKitchen(silent(starterFiles(units)));
      expect(kitchen?.units).toBe(units);
      expect(notices).toEqual([
        expect.stringMatching(
          new RegExp(`^kitchen\\.json does not say the units: taken as ${units}, as (\\d+) of the \\1 headings`),
        ),
      ]);
    }
  });

  it("takes what is no damage to a log: capitals of its ending, lines of commas, semicolons, ids in capitals", () => {
    const commas = withFile(US, LOG, (text) => `${text}${`${",".repeat(25)}\n`.repeat(3)}`);
    expect(checkKitchen(commas)).toMatchObject({ problems: [], notices: [], kitchen: { trials: { length: 6 } } });
    const capitals = withFile(US, LOG, (text) => text.replaceAll(",half-sheet,", ",Half sheet,"));
    expect(checkKitchen(capitals)).toMatchObject({
      problems: [],
      notices: [
        'trials/first-log.csv rows 2 to 7, column pan: was taken as the id in pans.csv that differs in capitals or blanks alone ("Half sheet" as half-sheet)',
      ],
      kitchen: { trials: [{ panId: "half-sheet" }, {}, {}, {}, {}, {}] },
    });
  });

  it("holds days of trials against today, where it is told", () => {
    expect(checkKitchen(US, { today: "2026-06-30" }).notices).toEqual([]);
    expect(checkKitchen(US, { today: "2026-04-01" }).notices).toEqual([
      expect.stringMatching(/^trials\/first-log\.csv rows 2 to 7, column date: lies in the future /),
    ]);
  });

  it("names what is not read, and what a person should look at, without stopping", () => {
    const heavy = withFile(US, LOG, (text) => text.replace(",43.1,", ",61,"));
    const { kitchen, notices } = checkKitchen([...heavy, { file: "trials/week.ods", text: null }]);
    expect(kitchen?.notices).toEqual(notices);
    expect(notices).toEqual([
      expect.stringMatching(/^trials\/week\.ods is not read: /),
      expect.stringMatching(/^trial T-1: the probes say 3\/8 in \(9\.7 mm\), but \d+ lb /),
    ]);
  });

  it("goes on behind a slip: ids, amounts and batches are held against what else is sound", () => {
    const damaged = all(
      put(LOG, "half-sheet,air-fryer,43.2", "half-shet,air-fryer,43.2"),
      put(LOG, "T-3,2026-05-03", "T-3,yesterday"),
      put(LOG, "air-fryer,43.4,", "air-fryer,444,"),
      put(FORMULA, "salt-fine", "salt-fin"),
    )(US);
    expect(problemsOf(damaged)).toEqual([
      expect.stringMatching(/^formulas\/first-formula\.json line 12, mix\.5\.ingredient: .*\(nearest: salt-fine\)$/),
      expect.stringMatching(/^trials\/first-log\.csv row 3, column pan: .*\(nearest: half-sheet\)$/),
      expect.stringMatching(/^trials\/first-log\.csv row 4, column date: /),
    ]);
    const mended = put(FORMULA, "salt-fin", "salt-fine")(damaged);
    expect(problemsOf(mended)[2]).toMatch(
      /row 5, column batch_oz: expected at most \d+ lb [\d.]+ oz, .* of this mix, got "444"$/,
    );
  });

  it("gives buildKitchen its lines", () => {
    const [pans, appliances, ingredients, variants] = ["pans", "appliances", "ingredients", "variants"].map(
      (name) => US.find(({ file }) => file === `${name}.csv`) as KitchenFile,
    );
    const formulas = US.filter(({ file }) => file === FORMULA) as readonly KitchenFile[];
    const parts = { name: "mine", units: "us" as const, pans, appliances, ingredients, variants, formulas, trials: [] };
    expect(buildKitchen(parts).name).toBe("mine");
    const broken = { ...pans, text: pans.text.replace("rectangle", "square") };
    const amiss = formulas.map(({ file, text }) => ({ file, text: text.replace("peas-frozen", "peas") }));
    expect(() => buildKitchen({ ...parts, pans: broken, formulas: amiss })).toThrow(
      /^pans\.csv row 2, column shape: .*\nformulas\/first-formula\.json line 8, mix\.1\.ingredient: .*$/,
    );
  });
});

/** One slip in a text of comma-separated cells, at a cell that matters. */
interface Damage {
  readonly file: string;
  readonly what: string;
  readonly text: string | null;
}
const FREE = ["name", "note", "slab", "cook", "session", "card", "household_source", "source", "ndb", "about"];
/** Columns that may be blank, or hold other numbers, without being wrong. */
const damageOf = (files: readonly FolderFile[], file: string, pick: (below: number) => number): Damage => {
  const text = files.find((one) => one.file === file)?.text ?? "";
  if (file.endsWith(".json")) {
    const ways: readonly [string, string][] = [
      ["a brace is lost", text.replace("{", "")],
      ["a quote is lost", text.replace('": "', '": ')],
      ["a comma is doubled", text.replace(",\n", ",,\n")],
      ["a name is misspelt", text.replace('"name"', '"nmae"')],
    ];
    const inFormula: readonly [string, string][] = [
      ["an ingredient is misspelt", text.replace("potato-boiled", "potatoboild")],
      ["an amount has no unit", text.replace('"1 tbsp"', '"1"')],
      ["a share is a text", text.replace("0.03", '"0.03"')],
      ["a word is misspelt", text.replace("coating", "coatin")],
    ];
    const possible = file === FORMULA ? ways.concat(inFormula) : ways;
    const [what, changed] = possible[pick(possible.length)];
    return { file, what, text: changed };
  }
  const lines = text.trimEnd().split("\n");
  const headings = lines[0].split(",");
  const row = 1 + pick(lines.length - 1);
  const cells = lines[row].split(",");
  const kept = headings.flatMap((heading, at) => (FREE.includes(heading) ? [] : [at]));
  const filled = kept.filter((at) => cells[at] !== "");
  const at = filled[pick(filled.length)];
  const whole = (rows: readonly string[]): string => `${rows.join("\n")}\n`;
  const ways: readonly [string, string | null][] = [
    ["the file is gone", null],
    [
      `cell ${headings[at]} of row ${row + 1} holds what it cannot`,
      whole(lines.with(row, cells.with(at, "?!").join(","))),
    ],
    [`row ${row + 1} has a cell too many`, whole(lines.with(row, `${lines[row]},x,y`))],
    [`row ${row + 1} has a cell too few`, whole(lines.with(row, cells.slice(0, -1).join(",")))],
    [`row ${row + 1} stands twice`, whole(lines.toSpliced(row, 0, lines[row]))],
    ["a row of commas", whole(lines.toSpliced(row, 0, ",".repeat(headings.length - 1)))],
    ["a quote in a cell", whole(lines.with(row, cells.with(at, 'x" y').join(",")))],
    ["semicolons", text.replaceAll(";", " ").replaceAll(",", ";")],
    ["the first heading is misspelt", text.replace(headings[0], `${headings[0]}z`)],
    ["the first column is gone", whole(lines.map((line) => line.split(",").slice(1).join(",")))],
  ];
  // a log takes lines of commas, and semicolons in place of commas; of the others a row may end before the last heading
  const harmless = ["a row of commas", file === LOG ? "semicolons" : `row ${row + 1} has a cell too few`];
  const possible = ways.filter(([what]) => !harmless.includes(what));
  const [what, changed] = possible[pick(possible.length)];
  return { file, what, text: changed };
};

describe("what a kitchen has for its day and in its stores", () => {
  const filled = (name: string, rows: string) => problemsOf(withFile(plain(US), name, (text) => `${text}${rows}\n`));

  it("is sound as people type it", () => {
    expect(filled("pantry.csv", "Oats-Rolled,1 lb 2 oz,2.40,2026-05-02,9,")).toEqual([]);
    expect(filled("pantry.csv", "Rolled oats,1 lb 2 oz,2.40,2026-05-02,9,\nfrozen pea,1 lb,2,,,")).toEqual([]);
    expect(filled("packs.csv", "first,First Variant,2026-05-02,24,0,14,1.5,,")).toEqual([]);
    expect(filled("day.csv", "closes,6 pm\nbreak,2 pm to 2:15 pm")).toEqual([]);
    expect(filled("packs.csv", "first,first-variant,2026-05-02,24,0,14,1.5,,")).toEqual([]);
    expect(filled("day.csv", "break,3:00 pm to 3:15 pm")).toEqual([]);
  });

  it("names what the kitchen does not have, with the nearest", () => {
    expect(filled("pantry.csv", "oats-roled,1 lb,2.40,2026-05-02,9,")).toEqual([
      expect.stringMatching(
        /^pantry\.csv row 4, column ingredient: .*got "oats-roled", which .*\(nearest: oats-rolled\)$/,
      ),
    ]);
    expect(filled("packs.csv", "first,first-varaint,2026-05-02,24,0,,,,")).toEqual([
      expect.stringMatching(/^packs\.csv row 4, column variant: .*\(nearest: first-variant\)$/),
    ]);
    expect(filled("day.csv", "hands,none")).toEqual([
      expect.stringMatching(/^day\.csv row \d+, column value: expected a whole number from 1 to 50, got "none"$/),
    ]);
    expect(filled("pantry.csv", "Roled oats,1 lb,2.40,,,")[0]).toMatch(/\(nearest: oats-rolled\)$/);
    expect(filled("pantry.csv", "Rolled Oats,1 lb,2.40,,,\noats-rolled,2 lb,4.40,,,")[0]).toMatch(/each id once/);
    expect(filled("pantry.csv", "oats-rolled,1 lb,2.40,,,\noats-rolled,2 lb,4.40,,,")[0]).toMatch(/each id once/);
  });
});

describe("one slip in a kitchen that is sound", () => {
  it.each([
    ["us", plain(US)],
    ["metric", plain(METRIC)],
  ] as const)("is told in one line, which names its file (%s)", (_, files) => {
    const empty = ["README.md", "labels.csv", "day.csv", "pantry.csv", "packs.csv"];
    const names = files.map(({ file }) => file).filter((file) => !empty.includes(file));
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.infiniteStream(fc.nat(9999)), (name, draws) => {
        const draw = draws[Symbol.iterator]();
        const { file, what, text } = damageOf(files, name, (below) => (draw.next().value as number) % below);
        fc.pre(!(file === LOG && text === null)); // a kitchen needs no log
        const problems = problemsOf(withFile(files, file, () => text));
        const named = text === null && file === FORMULA ? "formulas" : file;
        expect(problems, `${file}: ${what}\n${problems.join("\n")}`).toHaveLength(1);
        expect(problems[0], what).toContain(named);
      }),
      { numRuns: 120 },
    );
  });
});
