import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { checkKitchenFolder } from "../../../kernel-lib/library/src/notebook/check-kitchen-folder";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { newKitchen } from "../../../kernel-lib/library/src/notebook/new-kitchen";
import { readKitchenFolder } from "../../../kernel-lib/library/src/notebook/read-kitchen-folder";

let folder: string;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "kitchen-")), "mine");
  newKitchen({ folder });
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true }));

describe("readKitchenFolder", () => {
  it("gives the text of a kitchen's files and the names of all others", () => {
    mkdirSync(join(folder, "old"));
    mkdirSync(join(folder, "trials", "2024"));
    writeFileSync(join(folder, "week.xlsx"), "PK");
    const files = readKitchenFolder(folder, "here");
    expect(files.filter(({ text }) => text === null).map(({ file }) => file)).toEqual([
      "README.md",
      "old/",
      "trials/2024/",
      "week.xlsx",
    ]);
    expect(files.filter(({ text }) => text !== null).map(({ file }) => file)).toEqual([
      "appliances.csv",
      "day.csv",
      "formulas/first-formula.csv",
      "ingredients.csv",
      "kitchen.json",
      "labels.csv",
      "packs.csv",
      "pans.csv",
      "pantry.csv",
      "trials/first-log.csv",
      "variants.csv",
    ]);
  });

  it("follows links, and names one that leads nowhere", () => {
    renameSync(join(folder, "trials"), join(folder, "..", "logs"));
    symlinkSync(join(folder, "..", "logs"), join(folder, "trials"));
    symlinkSync(join(folder, "gone.csv"), join(folder, "trials", "lost.csv"));
    const files = readKitchenFolder(folder, "here");
    expect(files.find(({ file }) => file === "trials/first-log.csv")?.text).toMatch(/^trial,date,/);
    expect(files.find(({ file }) => file === "trials/lost.csv")?.text).toBeNull();
  });

  it("refuses a folder that is absent or holds nothing of a kitchen, naming who asked", () => {
    expect(() => readKitchenFolder(join(folder, "absent"), "here")).toThrow(/^here must exist, got/);
    expect(() => readKitchenFolder(join(folder, "pans.csv"), "here")).toThrow(/^here must be a folder, got/);
    mkdirSync(join(folder, "empty"));
    expect(() => readKitchenFolder(join(folder, "empty"), "here")).toThrow(
      /^here must hold kitchen\.json, pans\.csv, /,
    );
  });
});

describe("loadKitchen", () => {
  it("loads a kitchen without a folder of trials", () => {
    rmSync(join(folder, "trials"), { recursive: true });
    expect(loadKitchen(folder)).toMatchObject({ trials: [], notices: [] });
  });

  it("carries in its notices what was not read, and lists all problems in its error", () => {
    cpSync(join(folder, "trials", "first-log.csv"), join(folder, "trials", "week.ods"));
    expect(loadKitchen(folder).notices).toEqual([expect.stringMatching(/^trials\/week\.ods is not read: /)]);
    rmSync(join(folder, "variants.csv"));
    writeFileSync(join(folder, "kitchen.json"), "{");
    expect(() => loadKitchen(folder)).toThrow(
      /^variants\.csv: expected a file of that name, got none\nkitchen\.json line 1: .*$/,
    );
    expect(checkKitchenFolder(folder).problems).toHaveLength(2);
  });
});
