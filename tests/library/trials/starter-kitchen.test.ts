import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCsv } from "../../../kernel-lib/library/src/check/csv";
import { checkKitchen } from "../../../kernel-lib/library/src/trials/check-kitchen";
import { logHeadings } from "../../../kernel-lib/library/src/trials/log/log-fields";
import { readTrials } from "../../../kernel-lib/library/src/trials/log/read-trials";
import { starterKitchen } from "../../../kernel-lib/library/src/trials/starter-kitchen";
import { starterFiles } from "./starter-files";

const textOf = (units: "us" | "metric", name: string): string =>
  starterKitchen({ name: "mine", units, ingredientsCsv: "" }).find(({ file }) => file === name)?.text ?? "";
const headingsOf = (units: "us" | "metric", name: string): readonly string[] =>
  readCsv(textOf(units, name), name).headings;

describe.each(["us", "metric"] as const)("starterKitchen in %s units", (units) => {
  it("is valid, empty and without a notice as it stands", () => {
    const { kitchen, problems, notices, summary } = checkKitchen(starterFiles(units));
    expect([problems, notices]).toEqual([[], []]);
    expect(kitchen).toMatchObject({ name: "mine", units, trials: [] });
    expect(kitchen?.pans[0].standing).toBe("nominal");
    expect(summary).toBe(`1 pan, 1 appliance, 229 ingredients, 1 formula, 1 variant, 0 trials, ${units} units`);
  });

  it("takes trials as they come", () => {
    const { kitchen, problems } = checkKitchen(starterFiles(units, 3));
    expect(problems).toEqual([]);
    expect(kitchen?.trials.map(({ trialId }) => trialId)).toEqual(["T-1", "T-2", "T-3"]);
    for (const { thicknessMm } of kitchen?.trials ?? []) expect(thicknessMm).toBeCloseTo(9.7, 0);
  });

  it("has a log with every column that a trial must have, and no other", () => {
    expect(readTrials(`${logHeadings(units).join(",")}\n`, "log.csv").problems).toEqual([]);
    expect(headingsOf(units, "trials/first-log.csv")).toEqual(logHeadings(units));
    expect(logHeadings(units)).toHaveLength(26);
  });

  it("has a page of one page that explains its own headings", () => {
    const readme = textOf(units, "README.md");
    expect(readme.split("\n").length).toBeLessThan(62);
    for (const heading of [units === "us" ? "setpoint_f" : "setpoint_c", "not_crisp_min", "trial"])
      expect(readme).toContain(`\`${heading}\``);
    expect(readme).not.toMatch(/undefined|\$\{/);
  });

  it("names nothing of another kitchen", () => {
    const { name, about } = JSON.parse(readFileSync("data/kitchen.json", "utf8"));
    const own = starterKitchen({ name: "mine", units, ingredientsCsv: "" })
      .map(({ text }) => text)
      .join("\n");
    const theirs = ["formulas", "variants", "appliances"].flatMap((file) =>
      file === "formulas"
        ? []
        : readCsv(readFileSync(`data/${file}.csv`, "utf8"), file).rows.map(({ cells }) => cells.name),
    );
    for (const word of [name, about, "Quarry", ...theirs]) expect(own).not.toContain(word);
  });
});

describe("the units of a new kitchen", () => {
  it("stand in every heading that has one", () => {
    for (const name of ["pans.csv", "appliances.csv", "variants.csv", "trials/first-log.csv"]) {
      expect(headingsOf("us", name).filter((heading) => /_(mm|cm2|g|c)$/.test(heading))).toEqual([]);
      expect(headingsOf("metric", name).filter((heading) => /_(in|in2|oz|lb|f)$/.test(heading))).toEqual([]);
    }
  });

  it("make kitchens of the same sizes", () => {
    const [us, metric] = (["us", "metric"] as const).map((units) => checkKitchen(starterFiles(units)).kitchen);
    const [a, b] = [us?.variants[0], metric?.variants[0]];
    expect(a?.setpointC).toBeCloseTo(b?.setpointC ?? 0, -1);
    expect((a?.batchG ?? 0) / (b?.batchG ?? 1)).toBeCloseTo(1, 1);
    expect((us?.appliances[0].floorCm2 ?? 0) / (metric?.appliances[0].floorCm2 ?? 1)).toBeCloseTo(1, 1);
    expect(us?.pans[0]).toMatchObject({ bottomLengthMm: expect.closeTo(419, -1), depthMm: expect.closeTo(25, 0) });
  });

  it("are refused when they are neither", () => {
    expect(() => starterKitchen({ name: "x", units: "imperial" as "us", ingredientsCsv: "" })).toThrow(
      'starterKitchen: units must be us or metric, got "imperial"',
    );
  });
});
