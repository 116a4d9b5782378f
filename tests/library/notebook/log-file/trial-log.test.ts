import { appendFileSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { openAgain, openKitchen } from "../../../../kernel-lib/library/src/notebook/log-file/trial-log";
import { writeKitchenOf } from "../../../notebooks/kitchen-of";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  writeKitchenOf(folder, { trials: { "beet-lentil": 2 }, pans: ["half-sheet"] });
});
afterEach(() => rmSync(folder, { recursive: true }));

it("openAgain gives the kitchen that was opened while no file has changed", () => {
  const seen = openKitchen(folder, "here");
  expect(openAgain(seen, "here")).toBe(seen);
});

it.each<[string, () => void]>([
  ["a log grew", () => appendFileSync(join(folder, "trials/beet-lentil.csv"), "# measured again\n")],
  ["a file came", () => writeFileSync(join(folder, "cooks.txt"), "AB")],
  [
    "a file was renamed",
    () => {
      renameSync(join(folder, "trials/beet-lentil.csv"), join(folder, "trials/week.csv"));
    },
  ],
])("openAgain reads the kitchen anew when %s", (_, change) => {
  const seen = openKitchen(folder, "here");
  change();
  const now = openAgain(seen, "here");
  expect(now).not.toBe(seen);
  expect(now.files).toEqual(openKitchen(folder, "here").files);
});

it("openAgain refuses a kitchen that is no longer sound", () => {
  const seen = openKitchen(folder, "here");
  writeFileSync(join(folder, "pans.csv"), "pan\n");
  expect(() => openAgain(seen, "here")).toThrow("pans.csv");
});
