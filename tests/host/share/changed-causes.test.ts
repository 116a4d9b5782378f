import type { Notebook } from "slabwright-host";
import { describe, expect, it } from "vitest";
import { changedCauses } from "../../../kernel-lib/host/src/share/changed-causes";
import { type Provenance, provenanceOf } from "../../../kernel-lib/host/src/share/provenance";

const notebook: Notebook = {
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {},
  cells: [
    { id: "t", cell_type: "markdown", metadata: {}, source: "# 1. When?" },
    {
      id: "p",
      cell_type: "code",
      metadata: { tags: ["parameters"] },
      source: "const seed = 7;\nconst airC = 180;",
      outputs: [],
    },
    {
      id: "c",
      cell_type: "code",
      metadata: {},
      source: "console.log(12.5)",
      outputs: [{ output_type: "stream", name: "stdout", text: "12.5\n" }],
    },
  ],
};
const basis = { node: "20.19.0", packages: { zod: "4.6.7", tslab: "1.0.22" }, lock: "l", code: "c" };
const then: Provenance = {
  ...provenanceOf({ basis, notebook, name: "1.ipynb", told: {}, reads: [], places: {} }),
  files: { "kitchen/trials/week.csv": "0123456789" },
};
const withOutput = (text: string): Notebook => ({
  ...notebook,
  cells: notebook.cells.map((cell) =>
    cell.id === "c" ? { ...cell, outputs: [{ output_type: "stream", name: "stdout", text }] } : cell,
  ),
});

describe("changedCauses", () => {
  it("finds none where nothing has changed, however the text is stored", () => {
    expect(changedCauses(then, then, notebook)).toEqual([]);
    const split = structuredClone(notebook);
    split.cells[2].source = ["console.log", "(12.5)"];
    split.cells[2].outputs = [{ output_type: "stream", name: "stdout", text: ["12", ".5\n"] }];
    expect(changedCauses(then, then, split)).toEqual([]);
  });

  const now = (change: Partial<Provenance>): Provenance => ({ ...then, ...change });
  it.each<[string, Provenance, Notebook, string]>([
    [
      "a byte of data",
      now({ files: { "kitchen/trials/week.csv": "9876543210" } }),
      notebook,
      "kitchen/trials/week.csv has changed (SHA-256 01234567… then, 98765432… now)",
    ],
    [
      "a file more",
      now({ files: { ...then.files, "kitchen/trials/new.csv": "1" } }),
      notebook,
      "kitchen/trials/new.csv is read now and was not",
    ],
    ["a file less", now({ files: {} }), notebook, "kitchen/trials/week.csv was read and is not any more"],
    ["a parameter", now({ parameters: { seed: 7, airC: 190 } }), notebook, "the parameter airC was 180, is 190"],
    ["a seed", now({ parameters: { seed: 8, airC: 180 } }), notebook, "the seed was 7, is 8"],
    ["Node", now({ node: "22.13.0" }), notebook, "Node was 20.19.0, is 22.13.0"],
    ["a dependency", now({ packages: { zod: "4.6.8", tslab: "1.0.22" } }), notebook, "zod was 4.6.7, is 4.6.8"],
    [
      "the lock file",
      now({ lock: "m" }),
      notebook,
      "package-lock.json has changed: versions of other packages may have",
    ],
    ["the library", now({ code: "d" }), notebook, "the library's code has changed"],
    ["a stored number", then, withOutput("12.6\n"), "the stored output of cell 3 was changed after the run"],
    [
      "a cell",
      then,
      { ...notebook, cells: notebook.cells.map((cell) => (cell.id === "c" ? { ...cell, source: "1" } : cell)) },
      "cell 3 was edited after it ran",
    ],
  ])("names %s, and nothing else", (_, after, stored, cause) => {
    expect(changedCauses(then, after, stored)).toEqual([cause]);
  });
});
