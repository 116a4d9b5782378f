import { describe, expect, it } from "vitest";
import { decideOwnPan } from "../../../../kernel-lib/library/src/advice/window/decide";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { decisionTable } from "../../../../kernel-lib/library/src/views/advice/decision-table";
import { decisionText } from "../../../../kernel-lib/library/src/views/advice/decision-text";

const kitchen = loadKitchen();
const variantId = "chickpea-carrot";
const own = {
  metric: decideOwnPan({ kitchen, variantId }),
  us: decideOwnPan({ kitchen: { ...kitchen, units: "us" }, variantId }),
};

describe("decisionText and decisionTable", () => {
  it.each(Object.entries(own))(
    "decisionText is at most 80 wide in %s units, long names of pans and variants too",
    (_, decision) => {
      const long = "with the tall rim from the second shelf of the cold room";
      const decisions = [
        decision,
        { ...decision, panName: `a pan ${long}`, variantName: `bites ${long}`, outcome: null },
        { ...decision, panName: `a pan ${long}` },
      ];
      for (const line of decisionText(decisions).split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    },
  );

  it("weigh the coated piece that the kcal beside it are of, not the bare one", () => {
    const decision = own.metric;
    const { macros, pieces } = decision.outcome as NonNullable<typeof decision.outcome>;
    const coated = macros.coatedG.value;
    expect(coated).toBeGreaterThan(1.25 * pieces.pieceG);
    expect(decisionText([decision])).toMatch(new RegExp(`× \\d+ +${coated.toFixed(1)}$`, "m"));
    expect(decisionText([decision]).replace(/\s+/g, " ")).toContain("g: one piece, coated, as it goes in");
    const { columns, rows } = decisionTable([decision]);
    expect(rows[0][columns.findIndex(({ heading }) => heading === "coated piece (g)")]).toBe(coated);
  });

  it("says ounces where it prints them", () => {
    const decision = own.us;
    const ounces = ((decision.outcome?.macros.coatedG.value as number) / 28.349523125).toFixed(2);
    expect(decisionText([decision])).toContain(` ${ounces}\n`);
    expect(decisionText([decision]).replace(/\s+/g, " ")).toContain("oz: one piece, coated, as it goes in");
  });
});
