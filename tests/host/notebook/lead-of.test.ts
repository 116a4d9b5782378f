import { leadOf, type Notebook } from "slabwright-host";
import { describe, expect, it } from "vitest";

function opening(source: string): Notebook {
  return {
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: [{ id: "a", cell_type: "markdown", metadata: {}, source }],
  };
}

describe("leadOf", () => {
  it("is the first question where the title asks none", () => {
    const notebook = opening("# Yield\n\nWater leaves. How much is *left*, and [why](x)? We see.\n\nMore.");
    expect(leadOf(notebook, "Yield")).toBe("How much is left, and why?");
  });

  it("is the first whole sentences under a title that asks", () => {
    const notebook = opening(`# How much?\n\nOne short sentence. Another one.\n${"A very long one ".repeat(10)}.\n`);
    expect(leadOf(notebook, "How much?")).toBe("One short sentence. Another one.");
  });

  it("is cut after 200 characters, and reads links as their words", () => {
    expect(leadOf(opening("a".repeat(500)), "x")).toHaveLength(198);
    expect(leadOf(opening(`[${"a".repeat(300)}?](x)`), "x")).toHaveLength(198);
    expect(leadOf(opening("See [one](a) and [two](b). More."), "x")).toBe("See one and two. More.");
  });

  it("is empty where there is no prose", () => {
    expect(leadOf({ ...opening(""), cells: [] }, "x")).toBe("");
    expect(leadOf(opening("# Only a title"), "Only a title")).toBe("");
  });
});
