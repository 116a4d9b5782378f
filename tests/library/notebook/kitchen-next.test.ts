import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen, whatNext } from "slabwright";
import { kitchenNext } from "slabwright/notebook";
import { afterAll, expect, it } from "vitest";
import { writeKitchenOf } from "../../notebooks/kitchen-of";

const folder = mkdtempSync(join(tmpdir(), "kitchen-"));
afterAll(() => rmSync(folder, { recursive: true }));

it("kitchenNext says what whatNext says of each product, as plain data, with its cautions", () => {
  writeKitchenOf(folder, { trials: { "turkey-sage": 0, "beet-lentil": 0 }, pans: ["half-sheet"] });
  const kitchen = loadKitchen(folder);
  const next = kitchenNext(folder);
  expect(next.map(({ variantId }) => variantId)).toEqual(kitchen.variants.map(({ variantId }) => variantId));
  for (const { variantId, stage, known, steps, cautions } of next) {
    const own = whatNext({ kitchen, variantId });
    expect([stage, known, cautions]).toEqual([own.stage, own.known, own.cautions]);
    expect(steps).toEqual(own.steps.map(({ sentence }) => sentence));
    expect(steps.length).toBeGreaterThan(0);
    expect(cautions.join(" ")).toContain("Local food codes");
  }
});
