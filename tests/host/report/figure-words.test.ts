import { describe, expect, it } from "vitest";
import { figureWords } from "../../../kernel-lib/host/src/report/figure-words";

describe("figureWords", () => {
  it("says title, axes with their units and ranges, and what each trace is", () => {
    const words = figureWords({
      data: [
        { mode: "lines", fill: "toself", name: "95 % band", x: [5, 15], y: [6, 15.04] },
        { mode: "lines", name: "curve", x: [5, 15], y: [7, 14] },
        { mode: "markers", name: "trials", x: [6, 9], y: [8, 9] },
        { mode: "markers", name: "unseen", visible: "legendonly", x: [-100], y: [-100] },
      ],
      layout: {
        title: { text: "Crisp time" },
        xaxis: { title: { text: "thickness (mm)" } },
        yaxis: { title: "crisp time<br>(min)" },
      },
    });
    expect(words).toBe(
      "Crisp time. Across: thickness (mm), 5 to 15. Upwards: crisp time (min), 6 to 15.04. " +
        "Drawn: a band “95 % band”, a line “curve”, 2 marks “trials”.",
    );
  });

  it("names panels and what stands on an axis of names or days", () => {
    const words = figureWords({
      data: [
        { type: "bar", x: ["2026-02-01", "2026-01-30"], y: ["oats", "rye"] },
        { type: "bar", x: ["2026-02-03"], y: ["oats"], xaxis: "x2", yaxis: "y2" },
      ],
      layout: {
        annotations: [
          { xref: "x domain", yref: "y domain", y: 1, text: "185 °C" },
          { xref: "x2 domain", yref: "y2 domain", y: 1, text: "200 °C" },
          { xref: "x", yref: "y domain", y: 0.96, text: "a note" },
        ],
      },
    });
    expect(words).toBe(
      "2 panels: 185 °C, 200 °C. Across: 2026-01-30 to 2026-02-03. Upwards: oats, rye. Drawn: 3 bars.",
    );
  });

  it("says how many names there are where they are many, and a negative number with its sign", () => {
    const y = Array.from({ length: 30 }, (_, at) => `food ${at}`);
    const words = figureWords({ data: [{ mode: "markers", x: y.map((_, at) => -at), y }], layout: {} });
    expect(words).toContain("food 11 and 18 more");
    expect(words).toContain("Across: −29 to 0");
  });

  it("bears whatever a figure holds", () => {
    for (const data of [[null], ["text"], [{ x: 5, y: "text", mode: 3, name: {} }], [{ type: "sunburst", fill: 1 }]])
      expect(figureWords({ data, layout: { title: 5, annotations: "none", xaxis: null } })).toMatch(/^Drawn: /);
    expect(figureWords({ data: [], layout: null })).toBe("");
  });
});
