import { describe, expect, it } from "vitest";
import { formulaAllergens } from "../../../../kernel-lib/library/src/food/formula/formula-allergens";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { demoFormula, INGREDIENTS } from "../kitchen-data";

const gathered = (id: string): ReturnType<typeof formulaAllergens> =>
  formulaAllergens(formulaTotals(demoFormula(id), INGREDIENTS));

describe("formulaAllergens", () => {
  it("gathers from mix and coating, with species and the ingredients that bring them", () => {
    const { us, eu } = gathered("pollock-dill");
    expect(us.find((one) => one.allergen === "fish")).toEqual({
      allergen: "fish",
      species: ["Alaska pollock"],
      certainty: "inherent",
      from: ["Alaska pollock, raw"],
    });
    expect(us.find((one) => one.allergen === "wheat")!.from).toEqual([
      "all-purpose wheat flour",
      "dry bread crumbs, plain",
    ]);
    expect(us.find((one) => one.allergen === "soy")!.certainty).toBe("depends on the maker");
    expect(eu.map((one) => one.allergen)).toContain("gluten");
    expect(eu.find((one) => one.allergen === "sulphite")!.from).toEqual(["potato flakes, dry"]);
  });

  it("calls an allergen inherent when one ingredient has it for certain", () => {
    const milk = gathered("pollock-dill").us.find((one) => one.allergen === "milk")!;
    expect(milk.certainty).toBe("inherent");
    expect(milk.from).toEqual(["heavy whipping cream", "dry bread crumbs, plain"]);
  });

  it("never says free from", () => {
    for (const id of ["beet-lentil", "corn-puff"]) {
      const { cautions } = gathered(id);
      expect(cautions.join(" ")).toContain("Check the label");
      expect(JSON.stringify(gathered(id)).toLowerCase()).not.toContain("free from");
    }
  });
});
