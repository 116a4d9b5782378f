import { describe, expect, it } from "vitest";
import { noticeLines } from "../../../../../kernel-lib/library/src/check/notice";
import { readFormula } from "../../../../../kernel-lib/library/src/food/formula/read/read-formula";
import { settleIngredients } from "../../../../../kernel-lib/library/src/food/formula/read/settle-ingredients";

const KNOWN = [
  { id: "rice-cooked", name: "white rice, cooked" },
  { id: "salt-fine", name: "fine salt" },
  { id: "salt", name: "any salt" },
  { id: "cod-a", name: "cod" },
  { id: "cod-b", name: "Cod" },
];
const settle = (...rows: string[]) =>
  settleIngredients(readFormula(`ingredient,amount\n${rows.join("\n")}\n`, "a.csv"), KNOWN);

describe("settleIngredients", () => {
  it("takes ids and names in other capitals, blanks and hyphens as the kitchen's, each with a notice", () => {
    const { formula, notices } = settle(
      "Rice Cooked,1 lb",
      "Fine salt,1.5 % of rice cooked",
      '"Cooked rices, white",2 oz',
    );
    expect(formula?.mix).toEqual([
      { ingredient: "rice-cooked", amount: "1 lb" },
      { ingredient: "salt-fine", amount: "1.5 % of rice-cooked" },
      { ingredient: "rice-cooked", amount: "2 oz" },
    ]);
    expect(noticeLines(notices).slice(2)).toEqual([
      'a.csv rows 2 to 4, column ingredient: was taken as the ingredient of the same words ("Rice Cooked" as rice-cooked, "Fine salt" as salt-fine and "Cooked rices, white" as rice-cooked)',
      'a.csv row 3, column amount: was taken as the ingredient of the same words ("rice cooked" as rice-cooked)',
    ]);
  });

  it("leaves what is known, what is not, and a name that two go by", () => {
    const read = readFormula("ingredient,amount\nsalt,1 g\ncod,2 g\nparsnip,1 % of mix\n", "a.csv");
    expect(settleIngredients(read, KNOWN)).toBe(read);
    const none = readFormula("{", "a.json");
    expect(settleIngredients(none, KNOWN)).toBe(none);
  });
});
