import fc from "fast-check";
import type { Figure } from "slabwright";
import { PALETTE, svgOf } from "slabwright/views";
import { describe, expect, it } from "vitest";

function figure(data: readonly object[], layout: Record<string, unknown> = {}, summary = "what it shows"): Figure {
  return { kind: "figure", data, layout, summary };
}

/** Checks that a text is one well-formed XML element, and returns its tags. */
function tagsOf(svg: string): string[] {
  const open: string[] = [];
  const tags: string[] = [];
  const rest = svg.replace(
    /<(\/?)([a-zA-Z]+)((?: [a-zA-Z:-]+="[^"<]*")*)(\/?)>/g,
    (_, closes, tag, attributes, empty) => {
      if (closes) expect(open.pop()).toBe(tag);
      else {
        if (!empty) open.push(tag);
        const names = [...attributes.matchAll(/ ([a-zA-Z:-]+)=/g)].map((match: RegExpMatchArray) => match[1]);
        expect(new Set(names).size, `attributes of ${tag}`).toBe(names.length);
        tags.push(`${tag}${attributes}`);
      }
      return "";
    },
  );
  expect(open).toEqual([]);
  expect(rest).not.toMatch(/[<>]|&(?!#\d+;)/);
  return tags;
}

const numbersOf = (tag: string, name: string): number => Number(new RegExp(` ${name}="([^"]*)"`).exec(tag)?.[1]);

describe("svgOf", () => {
  it("sets points where plotly would: in proportion along both axes, up meaning more", () => {
    const tags = tagsOf(svgOf(figure([{ type: "scatter", mode: "markers", x: [0, 5, 20], y: [1, 2, 5] }])));
    const points = tags
      .filter((tag) => tag.startsWith("circle"))
      .map((tag) => [numbersOf(tag, "cx"), numbersOf(tag, "cy")]);
    expect(points).toHaveLength(3);
    expect((points[1][0] - points[0][0]) / (points[2][0] - points[0][0])).toBeCloseTo(0.25, 2);
    expect((points[1][1] - points[0][1]) / (points[2][1] - points[0][1])).toBeCloseTo(0.25, 2);
    expect(points[2][1]).toBeLessThan(points[0][1]);
  });

  it("makes bars as long as their values, side by side or stacked, from zero", () => {
    const bars = (barmode: string): number[][] =>
      tagsOf(
        svgOf(
          figure(
            [
              { type: "bar", x: ["a", "b"], y: [2, 4] },
              { type: "bar", x: ["a", "b"], y: [1, 3] },
            ],
            { barmode },
          ),
        ),
      )
        .filter((tag) => tag.startsWith("rect") && [PALETTE[0], PALETTE[1]].some((colour) => tag.includes(colour)))
        .map((tag) => ["x", "y", "width", "height"].map((name) => numbersOf(tag, name)));
    const grouped = bars("group");
    expect(grouped).toHaveLength(4);
    expect(grouped[1][3] / grouped[0][3]).toBeCloseTo(2, 1);
    expect(grouped[0][0] + grouped[0][2], "the second stands right of the first").toBeCloseTo(grouped[2][0], 0);
    expect(grouped[0][1] + grouped[0][3], "both stand on zero").toBeCloseTo(grouped[2][1] + grouped[2][3], 0);
    const stacked = bars("stack");
    expect(stacked[2][1] + stacked[2][3], "the second stands on the first").toBeCloseTo(stacked[0][1], 0);
    expect(stacked[3][3] / stacked[2][3]).toBeCloseTo(3, 1);
  });

  it("draws steps of a waterfall from where the one before ended", () => {
    const trace = {
      type: "waterfall",
      x: ["mix", "coat", "cook"],
      y: [100, 20, -30],
      measure: ["absolute", "relative", "relative"],
    };
    const steps = tagsOf(svgOf(figure([trace])))
      .filter((tag) => tag.startsWith("rect") && tag.includes(PALETTE[0]))
      .map((tag) => [numbersOf(tag, "y"), numbersOf(tag, "height")]);
    expect(steps).toHaveLength(3);
    expect(steps[1][0] + steps[1][1], "coat stands on mix").toBeCloseTo(steps[0][0], 0);
    expect(steps[2][0], "cook hangs from coat").toBeCloseTo(steps[1][0], 0);
    expect(steps[2][1] / steps[1][1]).toBeCloseTo(1.5, 1);
  });

  it("draws error bars, bands, dashes, other markers, shapes and fields", () => {
    const svg = svgOf(
      figure(
        [
          { x: [1, 2, 2, 1], y: [1, 1, 2, 2], fill: "toself", fillcolor: "rgba(0,114,178,0.2)", line: { width: 0 } },
          { x: [1, 2], y: [1, 2], mode: "lines", line: { dash: "dot", color: "#d55e00" }, name: "curve" },
          { x: [1.5], y: [1.5], mode: "markers", marker: { symbol: "triangle-up-open" }, error_y: { array: [0.25] } },
        ],
        { shapes: [{ type: "line", x0: 0, x1: 1, xref: "paper", y0: 1.2, y1: 1.2 }] },
      ),
    );
    const tags = tagsOf(svg);
    expect(tags.some((tag) => tag.includes('fill="rgba(0,114,178,0.2)"'))).toBe(true);
    expect(tags.some((tag) => tag.includes('stroke-dasharray="2.5 4"'))).toBe(true);
    expect(tags.some((tag) => tag.startsWith("polygon") && tag.includes('fill="none"'))).toBe(true);
    expect(svg).toContain(">curve</text>");
    const field = tagsOf(
      svgOf(
        figure([
          {
            type: "contour",
            x: [1, 2, 3],
            y: [1, 2],
            z: [
              [0, 1, 2],
              [3, 4, null],
            ],
          },
        ]),
      ),
    );
    expect(
      field.filter((tag) => tag.includes('fill="rgb(')),
      "no cell where there is no value",
    ).toHaveLength(5);
  });

  it("says what it had to leave out", () => {
    const svg = svgOf(
      figure([
        { type: "surface", z: [[1]] },
        { x: [1, 2], y: [1, 2] },
      ]),
    );
    expect(svg).toContain("Left out of this still picture: 1 of 2 drawings.");
    expect(svgOf(figure([{ x: [1, 2], y: [1, 2] }]))).not.toContain("Left out");
  });

  it("lets no text become markup, in names, titles, categories or colours", () => {
    const bad = `"/><script>alert(1)</script>&'`;
    const svg = svgOf(
      figure(
        [{ type: "bar", x: [bad, "b"], y: [1, 2], name: bad, marker: { color: `red" onload="alert(1)` }, text: bad }],
        { title: { text: bad }, xaxis: { title: { text: bad } }, yaxis: { title: { text: bad } } },
        bad,
      ),
    );
    const tags = tagsOf(svg);
    expect(tags.some((tag) => /script|onload|href/.test(tag))).toBe(false);
    expect(svg).toContain("&#60;script&#62;");
  });

  it("is well formed and finite for whatever data come, and the same each time", () => {
    const value = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.constant(null),
      fc.constantFrom(0, 1e-9, Number.NaN),
    );
    const trace = fc.record({
      type: fc.constantFrom("scatter", "bar", "waterfall", "heatmap", "pie"),
      mode: fc.constantFrom("lines", "markers", "lines+markers", "text"),
      x: fc.array(fc.oneof(value, fc.constantFrom("a", "b")), { maxLength: 6 }),
      y: fc.array(value, { maxLength: 6 }),
      z: fc.array(fc.array(value, { maxLength: 3 }), { maxLength: 3 }),
      fill: fc.constantFrom("none", "toself", "tozeroy", "tonexty"),
      orientation: fc.constantFrom("h", "v"),
      name: fc.string(),
    });
    const layout = fc.record({
      barmode: fc.constantFrom("group", "stack", "overlay"),
      xaxis: fc.record({ type: fc.constantFrom("linear", "log"), title: fc.record({ text: fc.string() }) }),
    });
    fc.assert(
      fc.property(fc.array(trace, { maxLength: 4 }), layout, (data, layout) => {
        const svg = svgOf(figure(data, layout));
        tagsOf(svg);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        expect(svgOf(figure(data, layout))).toBe(svg);
      }),
      { numRuns: 400 },
    );
  });

  it("puts days where the calendar has them, and labels a few", () => {
    const days = ["2026-02-04", "2026-02-11", "2026-04-01"];
    const trace = { type: "scatter", mode: "markers", x: days, y: [1, 1, 1] };
    const svg = svgOf({ kind: "figure", data: [trace], layout: { xaxis: { type: "date" } }, summary: "" });
    const [first, second, last] = [...svg.matchAll(/<circle cx="([\d.]+)"/g)].map(([, cx]) => Number(cx));
    expect((second - first) / (last - first)).toBeCloseTo(7 / 56, 2);
    expect(svg.match(/2026-\d\d-\d\d/g)).toEqual([
      "2026-02-04",
      "2026-02-18",
      "2026-03-04",
      "2026-03-18",
      "2026-04-01",
    ]);
    const one = svgOf({
      kind: "figure",
      data: [{ ...trace, x: days.slice(0, 1), y: [1] }],
      layout: { xaxis: { type: "date" } },
      summary: "",
    });
    expect(one.match(/2026-\d\d-\d\d/g)).toEqual(["2026-02-04"]);
  });

  it("takes ticks that a figure names itself, and fewer of them where they would touch", () => {
    const hours = Array.from({ length: 10 }, (_, hour) => 8 + hour);
    const labelled = (name: (hour: number) => string): string[] => {
      const ticks = { range: [8, 17], tickvals: [...hours, 30], ticktext: [...hours, 30].map(name) };
      const svg = svgOf(figure([{ type: "scatter", x: [8, 17], y: [0, 1] }], { xaxis: ticks }));
      return [...hours, 30].map(name).filter((label) => svg.includes(`>${label}<`));
    };
    expect(labelled((hour) => `${hour}h`)).toEqual(hours.map((hour) => `${hour}h`));
    const long = labelled((hour) => `${hour}:00, day 2`);
    expect(long.length).toBeGreaterThan(1);
    expect(long.length).toBeLessThan(10);
  });
});
