import { describe, expect, it } from "vitest";
import { decideOwnPan } from "../../../../kernel-lib/library/src/advice/window/decide";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { decisionTable } from "../../../../kernel-lib/library/src/views/advice/decision-table";
import { decisionText } from "../../../../kernel-lib/library/src/views/advice/decision-text";

const kitchen = loadKitchen();

describe("decisionText and decisionTable", () => {
  it("weigh the coated piece that the kcal beside it are of, not the bare one", () => {
    const decision = decideOwnPan({ kitchen, variantId: "chickpea-carrot" });
    const { macros, pieces } = decision.outcome as NonNullable<typeof decision.outcome>;
    const coated = macros.coatedG.value;
    expect(coated).toBeGreaterThan(1.25 * pieces.pieceG);
    expect(decisionText([decision])).toMatch(new RegExp(`mm +${coated.toFixed(1)} |× \\d+ +${coated.toFixed(1)} `));
    expect(decisionText([decision])).toContain("g: one piece, coated, as it goes in");
    const { columns, rows } = decisionTable([decision]);
    expect(rows[0][columns.findIndex(({ heading }) => heading === "coated piece (g)")]).toBe(coated);
  });

  it("says ounces where it prints them", () => {
    const decision = decideOwnPan({ kitchen: { ...kitchen, units: "us" }, variantId: "chickpea-carrot" });
    const ounces = ((decision.outcome?.macros.coatedG.value as number) / 28.349523125).toFixed(2);
    expect(decisionText([decision])).toContain(` ${ounces} `);
    expect(decisionText([decision])).toContain("oz: one piece, coated, as it goes in");
  });
});
