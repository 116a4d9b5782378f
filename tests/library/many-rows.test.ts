// A list that is handed over as arguments (`push(...rows)`, `Math.max(...values)`) overflows the stack beyond some
// 125,000 entries: no source does it, and what takes rows or readings takes more of them than that.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fitLinear } from "../../kernel-lib/library/src/fit/curve/fit-linear";
import { fitPolynomial } from "../../kernel-lib/library/src/fit/curve/fit-polynomial";
import { parseIngredients } from "../../kernel-lib/library/src/food/ingredient/parse-ingredients";
import { readProbeTrace } from "../../kernel-lib/library/src/heat/probe/probe-trace";
import { evenness } from "../../kernel-lib/library/src/pan/evenness";
import { readPans } from "../../kernel-lib/library/src/pan/read-pans";
import { buildKitchen } from "../../kernel-lib/library/src/trials/build-kitchen";
import type { KitchenFile, KitchenFiles } from "../../kernel-lib/library/src/trials/kitchen";
import { readTrials } from "../../kernel-lib/library/src/trials/log/read-trials";
import { tableText } from "../../kernel-lib/library/src/views/table/table-text";

const MANY = 130_000;
const file = (name: string): KitchenFile => ({ file: name, text: readFileSync(`data/${name}`, "utf8") });
const demo: KitchenFiles = {
  name: "demo",
  pans: file("pans.csv"),
  appliances: file("appliances.csv"),
  ingredients: file("ingredients.csv"),
  variants: file("variants.csv"),
  formulas: readdirSync("data/formulas").map((name) => file(`formulas/${name}`)),
  trials: [file("trials/beet-lentil.csv")],
};
const headingsOf = ({ text }: KitchenFile): string => text.split("\n").find((line) => !line.startsWith("#")) as string;
const badRows = (one: KitchenFile): KitchenFile => ({
  ...one,
  text: `${headingsOf(one)}\n${"x\nx,x\n".repeat(MANY / 2)}`,
});

/** Rows of one cell, and rows of one cell more than there are headings. */
const misfits = (one: KitchenFile): KitchenFile => ({
  ...one,
  text: `${headingsOf(one)}\n${`x\nx${",x".repeat(headingsOf(one).split(",").length)}\n`.repeat(MANY / 2)}`,
});

describe("more rows than fit on the stack", () => {
  it.each(["pans", "appliances", "ingredients", "variants"] as const)("in %s are refused in sentences", (field) => {
    const build = (): unknown => buildKitchen({ ...demo, [field]: misfits(demo[field]) });
    expect(build).toThrow(
      /rows 2, 4, 6, .* and 64990 more: expected \d+ cells, got 1\n.*rows 3, 5, 7, .* and 64990 more: expected \d+ cells, got \d\d?$/,
    );
  });

  it("in a log are refused in sentences, one for all that are alike", () => {
    const log = badRows(demo.trials[0]);
    expect(readTrials(log.text, "log.csv").slips).toHaveLength(MANY);
    let message = "";
    try {
      buildKitchen({ ...demo, trials: [log] });
    } catch (error) {
      message = (error as Error).message;
    }
    expect(message.split("\n")).toEqual([
      `trials/beet-lentil.csv rows 2, 4, 6, 8, 10, 12, 14, 16, 18, 20 and 64990 more: expected ${cellsOf(log)} cells, got 1`,
      `trials/beet-lentil.csv rows 3, 5, 7, 9, 11, 13, 15, 17, 19, 21 and 64990 more: expected ${cellsOf(log)} cells, got 2`,
    ]);
  });

  it("whose problems differ are told to the first thousand, and how many more", () => {
    const rows = Array.from({ length: 1500 }, (_, at) => `${"x,".repeat(at % 2 === 0 ? 300 + at : 2000 + at)}x`);
    const log = { ...demo.trials[0], text: `${headingsOf(demo.trials[0])}\n${rows.join("\n")}` };
    let message = "";
    try {
      buildKitchen({ ...demo, trials: [log] });
    } catch (error) {
      message = (error as Error).message;
    }
    const lines = message.split("\n");
    expect(lines[0]).toBe(`trials/beet-lentil.csv row 2: expected ${cellsOf(log)} cells, got 301`);
    expect(lines).toHaveLength(1001);
    expect(lines.at(-1)).toBe("and 500 problems more");
  });

  it("in a log that has all its cells are told once, and kept one by one", () => {
    const [row] = demo.trials[0].text.split("\n").filter((line) => line.startsWith("BL-01,"));
    const text = `${headingsOf(demo.trials[0])}\n${`${row.replace("BL-01", "no name")}\n`.repeat(MANY)}`;
    const { problems, slips } = readTrials(text, "log.csv");
    expect(slips).toHaveLength(MANY);
    expect(slips[MANY - 1]).toMatchObject({ row: 130001, at: "column trial", got: '"no name"' });
    expect(problems).toEqual([
      expect.stringMatching(/^log.csv rows 2 to 130001, column trial: expected a trial name .*, got "no name"$/),
    ]);
  }, 60_000);

  it("in other readers are refused or read, never an overflow", () => {
    expect(readPans(badRows(demo.pans).text, "pans.csv").slips).toHaveLength(MANY);
    expect(() => parseIngredients(badRows(demo.ingredients).text, "x.csv")).toThrow(
      /and 64990 more: expected \d+ cells/,
    );
    const rows = Array.from({ length: MANY }, (_, at) => `${at},${20 + (at % 7)}`).join("\n");
    expect(readProbeTrace(`time_s,core_c\n${rows}`, { file: "x.csv" }).timeMin).toHaveLength(MANY);
  });

  it("are taken by what counts, fits and prints them", () => {
    const values = Array.from({ length: MANY }, (_, at) => 8 + (at % 10) / 10);
    expect(evenness(values).maxMm).toBe(8.9);
    const x = values.map((_, at) => at / MANY);
    expect(fitLinear({ y: values, covariates: { x } }).parameters.intercept.estimate).toBeCloseTo(8.45, 2);
    expect(fitPolynomial({ x, y: values, degree: 2 }).n).toBe(MANY);
    const table = {
      kind: "table" as const,
      title: "t",
      columns: [{ heading: "a" }],
      rows: x.map((one) => [one]),
      notes: [],
    };
    expect(tableText(table).length).toBeGreaterThan(MANY);
  });
});

function cellsOf(one: KitchenFile): number {
  return headingsOf(one).split(",").length;
}

describe("every source of the library and the host", () => {
  const root = join(__dirname, "../../kernel-lib");
  const sources = ["library/src", "host/src"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => join(root, folder, name)),
  );
  const SPREAD =
    /(?:\.(?:push|unshift|splice|concat|apply)|\bMath\.(?:max|min|hypot)|\bfromC(?:har|odePoint)Code)\(\s*(?:[^();{}]*,\s*)?\.\.\./;

  it("hands no list over as arguments", () => {
    expect(sources.length).toBeGreaterThan(300);
    const found = sources.filter((path) =>
      SPREAD.test(readFileSync(path, "utf8").replace(/^\s*(\*|\/\*\*|\/\/).*$/gm, "")),
    );
    expect(found).toEqual([]);
    for (const bad of ["a.push(...b)", "Math.max(0, ...c)", "Math.min(\n  ...d)"]) expect(bad).toMatch(SPREAD);
  });
});
