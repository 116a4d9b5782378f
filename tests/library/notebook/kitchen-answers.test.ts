import { expect, it } from "vitest";
import { kitchenAnswers } from "../../../kernel-lib/library/src/notebook/kitchen-answers";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { youngKitchen } from "../../host/kitchen/young-kitchen";

it("gives a row a product, in the kitchen's order, and never fails for want of trials", () => {
  for (const trials of [0, 2]) {
    const folder = youngKitchen(trials);
    const { rows, notes } = kitchenAnswers(folder);
    expect(rows.map(([name]) => name)).toEqual(loadKitchen(folder).variants.map(({ name }) => name));
    expect(rows[0].at(-1)).not.toMatch(/^ready/);
    expect(notes.join(" ")).toContain("Core at least");
  }
});
