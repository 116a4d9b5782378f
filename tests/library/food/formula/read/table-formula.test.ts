import { describe, expect, it } from "vitest";
import { slipLines } from "../../../../../kernel-lib/library/src/check/slip";
import { readFormula } from "../../../../../kernel-lib/library/src/food/formula/read/read-formula";

const GOOD = `# our own
name,"Rice and cheese bites"
air_percent,3
food_class,ground meat
cooked,rice,2 lb 3 oz
pieces_per_serving,4
note,from the freezer,straight into hot air

part,ingredient,amount,pickup_percent,pot
mix,rice-white-cooked,2 lb,,rice
,water,8 oz,,rice
mix,salt-fine,1.5 % of mix,,
breading,crumbs-panko,75 g,12,
,cornmeal,25 g,,
spray oil,oil-canola,2 %,,
`;
const read = (text: string) => readFormula(text, "formulas/Rice bites.csv");
const lines = (from: string | RegExp, to: string): readonly string[] => slipLines(read(GOOD.replace(from, to)).slips);

describe("a formula in a table", () => {
  it("is the same formula as in JSON", () => {
    const { formula, slips } = read(GOOD);
    expect(slips).toEqual([]);
    expect(formula).toEqual({
      id: "rice-bites",
      name: "Rice and cheese bites",
      origin: "not stated",
      foodClass: "groundMeat",
      airFraction: 0.03,
      mix: [
        { ingredient: "rice-white-cooked", amount: "2 lb", pot: "rice" },
        { ingredient: "water", amount: "8 oz", pot: "rice" },
        { ingredient: "salt-fine", amount: "1.5 % of mix" },
      ],
      cookedG: { rice: "2 lb 3 oz" },
      coating: [
        {
          layer: "breading",
          lines: [
            { ingredient: "crumbs-panko", amount: "75 g" },
            { ingredient: "cornmeal", amount: "25 g" },
          ],
          pickupPercent: 12,
          pickupBasis: "substrate",
          pickupSePercent: expect.closeTo(2.4, 9),
        },
        {
          layer: "spray oil",
          lines: [{ ingredient: "oil-canola", amount: "100 g" }],
          pickupPercent: 2,
          pickupBasis: "substrate",
          pickupSePercent: expect.closeTo(0.4, 9),
        },
      ],
      piecesPerServing: 4,
      note: "from the freezer, straight into hot air",
    });
    const parted = "name;Rice bites\npart;ingredient;amount\nmix;oats-rolled;250 g\n;water;1 cup\n";
    expect(read(parted).formula?.mix).toHaveLength(2);
    expect(read(parted.replaceAll(";", "\t")).formula?.name).toBe("Rice bites");
  });

  it("needs ingredients and amounts alone; a unit may stand in the heading", () => {
    const { formula, slips } = read("ingredient,amount (g)\noats,250\nwater,1 cup\n");
    expect(slips).toEqual([]);
    expect(formula?.mix.map(({ amount }) => amount)).toEqual(["250 g", "1 cup"]);
    expect(formula).toMatchObject({ id: "rice-bites", coating: [] });
  });

  it.each([
    ["Part,", "Prt,", ["row 9, column Prt: expected one of ingredient, amount, part"]],
    [
      "breading,",
      "breding,",
      ['row 13, column part: expected one of mix, predust, .*, got "breding" \\(nearest: breading\\)'],
    ],
    ["air_percent,3", "air_percent,lots", ['row 3, air_percent: expected a share of air, .*, got "lots"']],
    [
      "air_percent,3",
      "air_percnt,3",
      ['row 3: expected a field above the headings .*, got "air_percnt" \\(nearest: air_percent\\)'],
    ],
    [
      "mix,rice-white-cooked,2 lb",
      "mix,rice-white-cooked,",
      ['row 10, column amount: expected an amount such as .*, got ""'],
    ],
    ["75 g,12", "75 g,", ['row 13, column pickup_percent: expected a pickup above 0 .*, got ""']],
    ["25 g,", "25 g,11", ['row 14, column pickup_percent: expected one value a layer, .*, got "11"']],
    ["75 g,12", "75 g,tall", ['row 13, column pickup_percent: expected a pickup above 0 .*, got "tall"']],
    ["2 %,,", "2 %,,,x", ["row 15: expected 5 cells; a text with a comma"]],
    ["rice,2 lb 3 oz", "rice,2 cups", ['row 5, cooked: expected a mass such as .*, got "rice, 2 cups"']],
  ])("tells each slip once: %s as %s", (from, to, expected) => {
    const found = lines(from === "Part," ? "part," : from, to);
    expect(found).toHaveLength(expected.length);
    for (const [at, line] of expected.entries())
      expect(found[at]).toMatch(new RegExp(`^formulas/Rice bites\\.csv ${line}`));
  });

  it("tells all slips at once", () => {
    const text = GOOD.replace("air_percent,3", "air_percent,99").replace("2 lb,", ",").replace("2 %", "400 %");
    expect(read(text).slips).toHaveLength(3);
  });

  it("says what a file that is no such table must hold", () => {
    for (const text of ["", "name,x\n", "oats,250 g\n"])
      expect(slipLines(read(text).slips)).toEqual([
        expect.stringMatching(/expected a row of headings, part,ingredient,amount, and below it a line an ingredient$/),
      ]);
    expect(slipLines(read("ingredient,amount\n").slips)).toEqual([
      expect.stringContaining("expected the lines of the mix"),
    ]);
  });
});
