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
import { buildKitchen, type KitchenFile, type KitchenFiles } from "../../kernel-lib/library/src/trials/kitchen";
import { readTrials } from "../../kernel-lib/library/src/trials/trial";
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
const badRows = (one: KitchenFile): KitchenFile => ({ ...one, text: `${headingsOf(one)}\n${"x\n".repeat(MANY)}` });

describe("more rows than fit on the stack", () => {
  it.each(["pans", "appliances", "ingredients", "variants"] as const)("in %s are refused in sentences", (field) => {
    const build = (): unknown => buildKitchen({ ...demo, [field]: badRows(demo[field]) });
    expect(build).toThrow(/row 2: expected \d+ cells, got 1\n(.*\n){900,}and \d+ problems more$/);
  });

  it("in a log are refused in sentences, the first thousand and how many more", () => {
    const log = badRows(demo.trials[0]);
    expect(readTrials(log.text, "log.csv").problems).toHaveLength(MANY);
    let message = "";
    try {
      buildKitchen({ ...demo, trials: [log] });
    } catch (error) {
      message = (error as Error).message;
    }
    const lines = message.split("\n");
    expect(lines[0]).toBe("trials/beet-lentil.csv row 2: expected 28 cells, got 1".replace("28", String(cellsOf(log))));
    expect(lines).toHaveLength(1001);
    expect(lines.at(-1)).toBe(`and ${MANY - 1000} problems more`);
  });

  it("in a log that has all its cells are told one by one", () => {
    const [row] = demo.trials[0].text.split("\n").filter((line) => line.startsWith("BL-01,"));
    const text = `${headingsOf(demo.trials[0])}\n${`${row.replace("BL-01", "no name")}\n`.repeat(MANY)}`;
    const { problems } = readTrials(text, "log.csv");
    expect(problems).toHaveLength(MANY);
    expect(problems[MANY - 1]).toMatch(/^log.csv row 130001, column trial: expected a trial name .*, got "no name"$/);
  }, 60_000);

  it("in other readers are refused or read, never an overflow", () => {
    expect(readPans(badRows(demo.pans).text, "pans.csv").problems).toHaveLength(MANY);
    expect(() => parseIngredients(badRows(demo.ingredients).text, "x.csv")).toThrow(/and \d+ problems more$/);
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
    /(?:\.(?:push|unshift|splice|concat|apply)|\bMath\.(?:max|min|hypot)|\bfromC(?:har|odePoint)Code)\(\s*(?:[^();]*,\s*)?\.\.\./;

  it("hands no list over as arguments", () => {
    expect(sources.length).toBeGreaterThan(300);
    const found = sources.filter((path) =>
      SPREAD.test(readFileSync(path, "utf8").replace(/^\s*(\*|\/\*\*|\/\/).*$/gm, "")),
    );
    expect(found).toEqual([]);
    for (const bad of ["a.push(...b)", "Math.max(0, ...c)", "Math.min(\n  ...d)"]) expect(bad).toMatch(SPREAD);
  });
});
