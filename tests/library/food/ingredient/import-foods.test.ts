import { describe, expect, it } from "vitest";
import { type ImportFoodsOptions, importFoods } from "../../../../kernel-lib/library/src/food/ingredient/import-foods";

const table: ImportFoodsOptions = {
  csvText: "food;kJ;prot;lip;gluc;fib;Na\nPois chiche cuit;512;8,3;<0,5;17,7;Tr;24\nÉpinard cru;-;2,7;0,4;1,3;2,1;N\n",
  fileName: "table.csv",
  nameColumn: "food",
  columns: {
    energyKcal: { column: "kJ", unit: "kJ" },
    proteinG: { column: "prot" },
    fatG: { column: "lip" },
    carbohydrateG: { column: "gluc" },
    fibreG: { column: "fib" },
    sodiumMg: { column: "Na", unit: "mg" },
  },
  carbohydrateIncludesFibre: false,
  delimiter: ";",
  decimalComma: true,
  source: "an invented table",
};

describe("importFoods", () => {
  it("maps columns and units, adds fibre, and keeps the unknown unknown", () => {
    const { ingredients, notices } = importFoods(table);
    const [pea, spinach] = ingredients;
    expect(pea.id).toBe("pois-chiche-cuit");
    expect(pea.per100G.energyKcal).toBeCloseTo(512 / 4.184, 10);
    expect(pea.per100G.fatG).toBe(0.25);
    expect(pea.per100G.fibreG).toBe(0);
    expect(pea.per100G.waterG).toBeNull();
    expect(spinach.id).toBe("epinard-cru");
    expect(spinach.per100G.energyKcal).toBeNull();
    expect(spinach.per100G.sodiumMg).toBeNull();
    expect(spinach.per100G.carbohydrateG).toBeCloseTo(3.4, 12);
    expect(spinach.source).toBe("an invented table (table.csv row 3)");
    expect(notices).toEqual(["table.csv: 1 traces taken as 0", 'table.csv: 1 values "below x" taken as x/2']);
  });

  it("turns grams of sodium into mg, and values of a portion into 100 g", () => {
    const { ingredients } = importFoods({
      ...table,
      csvText: "food,na\nbrine,1.2\n",
      columns: { sodiumMg: { column: "na", unit: "g" } },
      delimiter: ",",
      perG: 50,
    });
    expect(ingredients[0].per100G.sodiumMg).toBeCloseTo(2400, 9);
  });

  it.each([
    [{ nameColumn: "name" }, 'table.csv: expected a column "name", found none'],
    [{ decimalComma: false }, 'table.csv row 2, prot: expected a number, a blank, a trace or < a number, got "8,3"'],
    [
      { columns: { proteinG: { column: "prot", unit: "kJ" as const } } },
      "expected a unit that turns into proteinG, got unit kJ",
    ],
    [
      { csvText: `${table.csvText}Epinard CRU;1;1;1;1;1;1\n` },
      'expected names that differ, "Epinard CRU" is like row 3',
    ],
    [{ csvText: `${table.csvText}x;1\n` }, "table.csv row 4: expected 7 cells, got 2"],
    [{ csvText: `${table.csvText}too much;1;180;0;0;0;0\n` }, "table.csv row 4 (too much), per100G.proteinG"],
  ])("names damage (%#)", (change, message) => {
    expect(() => importFoods({ ...table, ...change })).toThrow(message);
  });
});
