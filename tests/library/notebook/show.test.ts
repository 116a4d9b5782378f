import { afterEach, describe, expect, it, vi } from "vitest";
import { kernelDisplay } from "../../../kernel-lib/library/src/notebook/kernel-display";
import { show } from "../../../kernel-lib/library/src/notebook/show";
import type { Figure } from "../../../kernel-lib/library/src/views/figure/figure";
import type { Table } from "../../../kernel-lib/library/src/views/table/table";

vi.mock("../../../kernel-lib/library/src/notebook/kernel-display", () => ({ kernelDisplay: vi.fn(() => null) }));

const figure: Figure = { kind: "figure", data: [{ type: "bar", x: ["a"], y: [2] }], layout: {}, summary: "a is 2 mm" };
const table: Table = { kind: "table", title: "Pans", columns: [{ heading: "pan" }], rows: [["half"]], notes: [] };

afterEach(() => vi.restoreAllMocks());

function shown(result: Parameters<typeof show>[0]): Record<string, unknown> {
  let bundle: Record<string, unknown> = {};
  vi.mocked(kernelDisplay).mockReturnValueOnce((sent) => {
    bundle = { ...sent };
  });
  show(result);
  return bundle;
}

describe("show", () => {
  it("sends a figure as plotly data, as a still picture and in words, in one display", () => {
    const bundle = shown(figure);
    expect(Object.keys(bundle).toSorted()).toEqual(["application/vnd.plotly.v1+json", "image/svg+xml", "text/plain"]);
    expect(bundle["application/vnd.plotly.v1+json"]).toEqual({ data: figure.data, layout: {} });
    expect(bundle["text/plain"]).toBe("a is 2 mm");
  });

  it("sends a table as HTML and as text", () => {
    const bundle = shown(table);
    expect(bundle["text/html"]).toContain("<caption>Pans</caption>");
    expect(bundle["text/plain"]).toBe("Pans\n\npan\n----\nhalf");
  });

  it("sends prose that wraps, line by line, and the sentence of a result", () => {
    expect(shown("a < b\nc")).toEqual({ "text/plain": "a < b\nc", "text/html": "<p>a &lt; b<br>c</p>" });
    expect(shown({ sentence: "opens 8.8 min" })["text/plain"]).toBe("opens 8.8 min");
  });

  it("keeps columns of a text report in a fixed-width face", () => {
    expect(shown("name   value\nc0     2.1")).toEqual({ "text/plain": "name   value\nc0     2.1" });
  });

  it("prints the text outside a kernel", () => {
    const log = vi.spyOn(console, "log").mockImplementation(() => {});
    show(figure);
    expect(log).toHaveBeenCalledExactlyOnceWith("a is 2 mm");
  });
});
