import { describe, expect, it } from "vitest";
import { trialsToTell } from "../../../../kernel-lib/library/src/advice/tell/trials-to-tell";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { trialsToTellFigure } from "../../../../kernel-lib/library/src/views/plan/trials-to-tell-figure";
import { trialsToTellTable } from "../../../../kernel-lib/library/src/views/plan/trials-to-tell-table";

const told = trialsToTell({ kitchen: loadKitchen(), variantId: "corn-puff" });

describe("the views of trialsToTell", () => {
  it("draw every chance, and name each quantity with its difference", () => {
    const { data, summary } = trialsToTellFigure(told);
    const lines = (data as { name: string; y: number[]; mode: string }[]).filter(({ mode }) => mode !== "lines");
    expect(lines.map(({ y }) => y)).toEqual(
      told.quantities.map(({ chances }) => chances.map(({ sideBySide }) => 100 * sideBySide)),
    );
    expect(lines[0].name).toBe("crisp time, 1 min");
    expect(summary).toContain("Every core is probed as ever");
  });

  it("set a row for every quantity", () => {
    const { rows, columns } = trialsToTellTable(told);
    expect(rows.length).toBe(told.quantities.length);
    for (const row of rows) expect(row.length).toBe(columns.length);
    expect(rows[0][4]).toBe(told.quantities[0].sideBySide);
  });
});
