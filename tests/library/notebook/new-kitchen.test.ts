import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { checkKitchenFolder } from "../../../kernel-lib/library/src/notebook/check-kitchen-folder";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { newKitchen } from "../../../kernel-lib/library/src/notebook/new-kitchen";

let base: string;
beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), "kitchen-"));
});
afterEach(() => rmSync(base, { recursive: true }));

describe("newKitchen", () => {
  it.each(["us", "metric"] as const)("writes a kitchen in %s units that checks clean and loads", (units) => {
    const folder = join(base, "deep", "corner-kitchen");
    const written = newKitchen({ folder, units });
    const found = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) => name.includes("."));
    expect(found.map((name) => name.replaceAll("\\", "/")).sort()).toEqual([...written].sort());
    expect(checkKitchenFolder(folder)).toMatchObject({ problems: [], notices: [] });
    expect(loadKitchen(folder)).toMatchObject({ name: "corner-kitchen", units, trials: [], notices: [] });
  });

  it("copies the table of ingredients that is named", () => {
    const table = join(base, "table.csv");
    writeFileSync(table, readFileSync("data/ingredients.csv", "utf8").split("\n").slice(0, 3).join("\n"));
    newKitchen({ folder: join(base, "k"), ingredients: table });
    expect(readFileSync(join(base, "k", "ingredients.csv"), "utf8")).toBe(readFileSync(table, "utf8"));
  });

  it("overwrites nothing: a folder that holds something is refused and left as it is", () => {
    const folder = join(base, "mine");
    mkdirSync(folder);
    writeFileSync(join(folder, ".DS_Store"), "");
    newKitchen({ folder, units: "us" });
    expect(() => newKitchen({ folder })).toThrow(
      /^newKitchen: folder must be new or empty, and holds README\.md, appliances\.csv, day\.csv, formulas, ingredients\.csv and 7 more, got ".*mine"$/,
    );
    expect(loadKitchen(folder).units).toBe("us");
    const other = join(base, "other");
    mkdirSync(other);
    writeFileSync(join(other, "notes.txt"), "keep");
    expect(() => newKitchen({ folder: other })).toThrow("must be new or empty, and holds notes.txt, got");
    expect(readdirSync(other)).toEqual(["notes.txt"]);
    expect(() => newKitchen({ folder: join(other, "notes.txt") })).toThrow(
      "must be new or an empty folder, and is a file",
    );
  });
});
