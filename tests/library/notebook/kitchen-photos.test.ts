import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { benchSheet } from "../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { kitchenPhotos } from "../../../kernel-lib/library/src/notebook/kitchen-photos";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { writeBenchSheet } from "../../../kernel-lib/library/src/notebook/write-bench-sheet";

const folder = mkdtempSync(join(tmpdir(), "slabwright-photos-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("kitchenPhotos", () => {
  it("names the files of the folder photos, hidden ones and folders apart", () => {
    expect(kitchenPhotos(folder)).toEqual([]);
    mkdirSync(join(folder, "photos", "raw"), { recursive: true });
    for (const name of ["b.jpg", "a.png", ".DS_Store"]) writeFileSync(join(folder, "photos", name), "");
    expect(kitchenPhotos(folder)).toEqual(["a.png", "b.jpg"]);
  });
});

describe("writeBenchSheet", () => {
  it("writes a page, and takes no other ending", () => {
    const sheet = benchSheet({ kitchen: loadKitchen(), trials: [{ variantId: "beet-lentil" }] });
    const path = writeBenchSheet(sheet, join(folder, "monday.html"));
    expect(readFileSync(path, "utf8")).toContain("bench sheet: BL-33");
    expect(() => writeBenchSheet(sheet, join(folder, "kitchen.json"))).toThrow("must end in .html");
  });
});
