import { describe, expect, it } from "vitest";
import { formulaAllergens } from "../../../../kernel-lib/library/src/food/formula/formula-allergens";
import { formulaTotals } from "../../../../kernel-lib/library/src/food/formula/formula-totals";
import { scaleFormula } from "../../../../kernel-lib/library/src/food/formula/scale-formula";
import { searchFoods } from "../../../../kernel-lib/library/src/food/ingredient/search-foods";
import { labelUs } from "../../../../kernel-lib/library/src/macros/label-values";
import { pieceMacros } from "../../../../kernel-lib/library/src/macros/piece-macros";
import { loadFoods } from "../../../../kernel-lib/library/src/notebook/load-foods";
import { allergenTable } from "../../../../kernel-lib/library/src/views/food/allergen-table";
import { foodTable } from "../../../../kernel-lib/library/src/views/food/food-table";
import { formulaTable } from "../../../../kernel-lib/library/src/views/food/formula-table";
import { labelTable } from "../../../../kernel-lib/library/src/views/food/label-table";
import { macroTable } from "../../../../kernel-lib/library/src/views/food/macro-table";
import type { Table } from "../../../../kernel-lib/library/src/views/table/table";
import { tableText } from "../../../../kernel-lib/library/src/views/table/table-text";
import { batchFlowTable } from "../../../../kernel-lib/library/src/views/yield/batch-flow-table";
import { coatingPlanTable } from "../../../../kernel-lib/library/src/views/yield/coating-plan-table";
import { batchFlow } from "../../../../kernel-lib/library/src/yield/batch-flow";
import { coatingPlan } from "../../../../kernel-lib/library/src/yield/coating-plan";
import { demoFormula, INGREDIENTS } from "../../food/kitchen-data";

const totals = formulaTotals(demoFormula("pollock-dill"), INGREDIENTS);
const macros = pieceMacros({ totals, pieceG: 24, pieceSeG: 1, reheat: { yieldPercent: 88, yieldSePercent: 1 } });
const cell = (table: Table, row: string, heading: string): unknown =>
  table.rows.find((cells) => cells.includes(row))![
    table.columns.findIndex((column) => column.heading.startsWith(heading))
  ];

describe("tables of formula, coating, yield and macros", () => {
  it("keeps grams beside the measure, with the household weight's source", () => {
    const table = formulaTable(totals);
    expect(cell(table, "potato flakes, dry", "as written")).toBe("1 cup");
    expect(cell(table, "potato flakes, dry", "mass")).toBe(60);
    expect(cell(table, "potato flakes, dry", "grams from")).toContain("USDA SR28");
    const half = formulaTable(totals, scaleFormula(totals, { mixG: totals.mixG / 2 }));
    expect(cell(half, "potato flakes, dry", "measure")).toBe("1/2 cup");
    expect(cell(half, "potato flakes, dry", "mass")).toBeCloseTo(30, 10);
    expect(half.rows.reduce((sum, row) => sum + (row[3] as number), 0)).toBeCloseTo(100, 9);
  });

  it("prints at least where a value is not known, and says for what", () => {
    const table = macroTable(macros);
    expect(cell(table, "sugars (g)", "a piece")).toMatch(/^≥ \d/);
    expect(cell(table, "protein (g)", "a piece")).toMatch(/^\d+\.\d+ ± \d/);
    expect(table.notes.join(" ")).toContain("not known for fresh dill");
    expect(table.notes.join(" ")).toContain("not a compliance document");
  });

  it("shows what a label could print, and its rule", () => {
    const table = labelTable(labelUs(macros));
    expect(table.title).toContain("21 CFR 101.9(c)");
    expect(cell(table, "calories", "printed")).toBe(labelUs(macros).lines[0].printed);
  });

  it("lists allergens under both laws with their cautions", () => {
    const table = allergenTable(formulaAllergens(totals));
    expect(cell(table, "fish", "species")).toBe("Alaska pollock");
    expect(new Set(table.rows.map((row) => row[0]))).toEqual(new Set(["US nine", "EU fourteen"]));
    expect(tableText(table)).toContain("Check the label");
  });

  it("prints coating, flow and foods", () => {
    const coating = coatingPlanTable(coatingPlan({ totals, pieces: 48, pieceG: 24 }));
    expect(coating.rows.map((row) => row[0])).toEqual(["predust", "wash", "breading", "spray oil"]);
    const flow = batchFlowTable(batchFlow({ mixG: 1200, cutYieldFraction: 0.95, pieces: 48 }));
    expect(cell(flow, "mix in the bowl", "batch")).toBe(1200);
    expect(cell(flow, "mix in the bowl", "a piece")).toBeNull();
    const foods = foodTable(searchFoods(loadFoods(), "parsnips", 2));
    expect(foods.rows[0][1]).toBe("Parsnips, raw");
    expect(foods.rows).toHaveLength(2);
  });
});
