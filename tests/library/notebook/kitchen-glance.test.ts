import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { kitchenGlance } from "../../../kernel-lib/library/src/notebook/kitchen-glance";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

it("counts the trials of each product, and names the ids of the one with the most first", () => {
  const { products, exampleIds, problems, notices } = kitchenGlance(folder);
  const kitchen = loadKitchen(folder);
  expect(problems).toEqual([]);
  expect(notices).toEqual(kitchen.notices);
  expect(products.map(({ name }) => name)).toEqual(kitchen.variants.map(({ name }) => name));
  expect(products.reduce((sum, { trials }) => sum + trials, 0)).toBe(kitchen.trials.length);
  const most = Math.max(...products.map(({ trials }) => trials));
  expect(products.find(({ variantId }) => variantId === exampleIds?.variantIds[0])?.trials).toBe(most);
  expect([...(exampleIds?.panIds ?? [])].sort()).toEqual(kitchen.pans.map(({ id }) => id).sort());
  expect(exampleIds?.panIds[0]).toBe(
    kitchen.variants.find(({ variantId }) => variantId === exampleIds?.variantIds[0])?.panId,
  );
  expect(kitchen.trials.find(({ trialId }) => trialId === exampleIds?.trialIds[0])?.crispMin).toBeNull();
});

it("of a kitchen with a slip says the slip, and nothing of its products", () => {
  const file = join(folder, "variants.csv");
  writeFileSync(file, readFileSync(file, "utf8").replace("half-sheet", "halv-sheet"));
  const { products, exampleIds, problems } = kitchenGlance(folder);
  expect(problems).toEqual([expect.stringContaining('got "halv-sheet"')]);
  expect({ products, exampleIds }).toEqual({ products: [], exampleIds: null });
});
