import { describe, expect, it } from "vitest";
import type { Table } from "../../../../kernel-lib/library/src/views/table/table";
import { tableIn } from "../../../../kernel-lib/library/src/views/table/table-in";

const table: Table = {
  kind: "table",
  title: "slabs",
  columns: [
    { heading: "pan" },
    { heading: "thickness (mm)", decimals: 1 },
    { heading: "batch (g)", decimals: 0 },
    { heading: "core (°C)", decimals: 0 },
    { heading: "crisp (min)", decimals: 1 },
  ],
  rows: [
    ["a", 11.1, 1190, 74, 9.5],
    ["b", null, -50, null, null],
  ],
  notes: ["note"],
};

describe("tableIn", () => {
  it("leaves a metric kitchen's table as it is", () => {
    expect(tableIn(table, "metric")).toBe(table);
  });

  it("turns sizes and weights into texts with both units, and °C into °F", () => {
    const { columns, rows, notes } = tableIn(table, "us");
    expect(columns.map(({ heading }) => heading)).toEqual(["pan", "thickness", "batch", "core (°F)", "crisp (min)"]);
    expect(rows).toEqual([
      ["a", "7/16 in (11.1 mm)", "2 lb 10 oz (1190 g)", expect.closeTo(165.2, 9), 9.5],
      ["b", null, "−1.76 oz (50 g)", null, null],
    ]);
    expect(notes).toEqual(["note"]);
  });
});
