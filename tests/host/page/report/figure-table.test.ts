import { describe, expect, it } from "vitest";
import { figureTable } from "../../../../kernel-lib/host/page/report/figure-table";

const axis = (text: string) => ({ title: { text } });

describe("figureTable", () => {
  it("has a row a point, under the axes' own titles, with the ends of its error bar and what is written at it", () => {
    const { headings, rows } = figureTable({
      data: [
        {
          name: "trials",
          x: [6, 9],
          y: [10.123456789, 12],
          error_y: { array: [1, 2], arrayminus: [0.5, 2] },
          text: ["<b>T-1</b><br>soft", "T-2"],
        },
        { name: "curve", x: [6], y: [10] },
        { name: "hidden", visible: false, x: [1], y: [1] },
      ],
      layout: { xaxis: axis("thickness (mm)"), yaxis: axis("crisp time (min)") },
    });
    expect(headings).toEqual([
      "series",
      "thickness (mm)",
      "crisp time (min)",
      "crisp time (min), from",
      "crisp time (min), to",
      "note",
    ]);
    expect(rows).toEqual([
      ["trials", "6", "10.12346", "9.623457", "11.12346", "T-1 soft"],
      ["trials", "9", "12", "10", "14", "T-2"],
      ["curve", "6", "10", "", "", ""],
    ]);
  });

  it("names the panel of each point, and keeps apart what panels measure", () => {
    const { headings, rows } = figureTable({
      data: [
        { x: [1], y: [2] },
        { x: [3], y: [4], xaxis: "x2", yaxis: "y2" },
      ],
      layout: {
        xaxis: axis("time (min)"),
        yaxis: axis("core (°C)"),
        xaxis2: axis("time (min)"),
        yaxis2: axis("loss (%)"),
        annotations: [
          { xref: "x domain", yref: "y domain", y: 1, text: "oats" },
          { xref: "x2 domain", yref: "y2 domain", y: 1, text: "rye" },
        ],
      },
    });
    expect(headings).toEqual(["panel", "time (min)", "core (°C)", "loss (%)"]);
    expect(rows).toEqual([
      ["oats", "1", "2", ""],
      ["rye", "3", "", "4"],
    ]);
  });

  it("writes bars that do not begin at zero from end to end, and a map cell by cell", () => {
    const bars = figureTable({
      data: [{ type: "bar", orientation: "h", x: [2, 3], y: ["mix", "cut"], base: [8, 10] }],
      layout: { xaxis: axis("time of day (h)"), yaxis: axis("step") },
    });
    expect(bars.rows[1]).toEqual(["3", "10", "13", "cut"]);
    const map = figureTable({
      data: [{ type: "heatmap", x: [1, 2], y: [5], z: [[0.5, null]], colorbar: { title: { text: "chance (%)" } } }],
      layout: { xaxis: axis("mm"), yaxis: axis("°C") },
    });
    expect(map.headings).toEqual(["mm", "°C", "chance (%)"]);
    expect(map.rows).toEqual([
      ["1", "5", "0.5"],
      ["2", "5", ""],
    ]);
  });

  it("bears both axes under one title, and fields that are no lists", () => {
    const { headings, rows } = figureTable({
      data: [{ x: [1], y: [2] }, { x: "text", y: null }, null, { type: "pie", labels: ["a"], values: [3] }],
      layout: { xaxis: axis("mass (g)"), yaxis: axis("mass (g)") },
    });
    expect(headings).toEqual(["mass (g)", "mass (g), y", "label", "value"]);
    expect(rows).toEqual([
      ["1", "2", "", ""],
      ["", "", "a", "3"],
    ]);
  });

  it("leaves a field's text as text", () => {
    const { rows } = figureTable({ data: [{ x: ["<img src=x onerror=alert(1)>"], y: [1] }], layout: null });
    expect(rows).toEqual([["<img src=x onerror=alert(1)>", "1"]]);
  });
});
