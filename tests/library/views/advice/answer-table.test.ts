import { describe, expect, it } from "vitest";
import { answers } from "../../../../kernel-lib/library/src/advice/answer/answers";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { answerTable } from "../../../../kernel-lib/library/src/views/advice/answer-table";

const demo = answers({ kitchen: loadKitchen() });

describe("answerTable", () => {
  it("has one row a product: pan, batch, thickness, setting, time, core, chance, state", () => {
    const { rows, columns, notes } = answerTable(demo);
    expect(rows).toHaveLength(demo.products.length);
    expect(columns.map(({ heading }) => heading).slice(4)).toEqual(["card", "core by", "chance", "state"]);
    for (const [at, { variantName, panName, cardMin, missing, state }] of demo.products.entries()) {
      expect(rows[at][0]).toBe(variantName);
      expect(rows[at][1]).toContain(panName);
      expect(rows[at][4]).toBe(state === "ready" ? `${cardMin} min` : `(${cardMin} min)`);
      expect(rows[at][7]).toBe(missing === null ? "ready" : `${state}: ${missing}`);
    }
    for (const { limit } of demo.products) expect(notes.join(" ")).toContain(limit.caution.split(". ")[0]);
  });

  it("says the limit where there is no time", () => {
    const young = { ...demo.products[0], cardMin: null, coreByMin: null, success: null };
    expect(answerTable({ ...demo, products: [young] }).rows[0].slice(4, 7)).toEqual([
      null,
      "at least 74 °C (165 °F)",
      null,
    ]);
  });
});
