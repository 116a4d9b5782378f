import { describe, expect, it } from "vitest";
import { frameOf } from "../../../../kernel-lib/library/src/views/table/frame-of";
import type { Table } from "../../../../kernel-lib/library/src/views/table/table";
import { tableHtml } from "../../../../kernel-lib/library/src/views/table/table-html";
import { tableOf } from "../../../../kernel-lib/library/src/views/table/table-of";
import { tableText } from "../../../../kernel-lib/library/src/views/table/table-text";

const table: Table = {
  kind: "table",
  title: "Pans <of the kitchen>",
  columns: [{ heading: "pan" }, { heading: "depth (mm)", decimals: 1 }, { heading: "holds (mL)" }],
  rows: [
    ["half & half", 25, 3099.91],
    ["quarter", null, 1509.2],
  ],
  notes: ["measured <inside>"],
};

describe("tableText", () => {
  it("aligns numbers right, words left, and shows what is not known as a dash", () => {
    expect(tableText(table).split("\n")).toEqual([
      "Pans <of the kitchen>",
      "",
      "pan          depth (mm)  holds (mL)",
      "-----------  ----------  ----------",
      "half & half        25.0        3100",
      "quarter               –        1509",
      "",
      "measured <inside>",
    ]);
  });
});

describe("tableHtml", () => {
  it("escapes every text", () => {
    const html = tableHtml(table);
    expect(html).toContain("<caption>Pans &lt;of the kitchen&gt;</caption>");
    expect(html).toContain("half &amp; half");
    expect(html).toContain("measured &lt;inside&gt;");
    expect(html.match(/<td/g)).toHaveLength(6);
  });

  it("labels every cell that holds something with its column's heading", () => {
    expect(tableHtml(table).match(/data-label="[^"]*"/g)).toEqual([
      'data-label="pan"',
      'data-label="depth (mm)"',
      'data-label="holds (mL)"',
      'data-label="pan"',
      'data-label="holds (mL)"',
    ]);
    const attack = { ...table, columns: [{ heading: '" onclick="x' }, ...table.columns.slice(1)] };
    expect(tableHtml(attack)).toContain('data-label="&quot; onclick=&quot;x"');
  });

  it("keeps a number beside its unit", () => {
    const html = tableHtml({ ...table, rows: [["core by 18.7 min: at 68.5 °C", 1, 2]] });
    for (const quantity of ["18.7\u00a0min", "68.5\u00a0°C"]) expect(html).toContain(quantity);
  });
});

describe("frameOf", () => {
  it("makes a danfojs frame without touching the table", () => {
    const frame = frameOf(table);
    expect(frame.columns).toEqual(["pan", "depth (mm)", "holds (mL)"]);
    expect(frame.shape).toEqual([2, 3]);
    expect(frame.at(0, "depth (mm)")).toBe(25);
    expect(table.rows[0][1]).toBe(25);
  });

  it("comes back as a table after filtering, printed as its columns say", () => {
    const deep = frameOf(table).query(frameOf(table)["depth (mm)"].gt(20));
    const back = tableOf(deep, "Deep pans", table.columns);
    expect(back.columns).toEqual(table.columns);
    expect(back.rows).toEqual([["half & half", 25, 3099.91]]);
  });
});
