import { errorOutput, failureText, notebookText, parsedData, parseNotebook } from "slabwright-host";
import { describe, expect, it } from "vitest";

describe("failureText", () => {
  it("is the last message when a cell threw", () => {
    expect(failureText(["a notice\n", "Error: no\n"])).toBe("Error: no\n");
  });

  it("is all of the compiler's lines when a cell did not compile", () => {
    const lines = ["1:7 - Type 'string' is not assignable.\n", "./helper.ts 2:1 - Cannot find name 'x'.\n"];
    expect(failureText(["a notice\n", ...lines])).toBe(lines.join(""));
  });

  it("is empty when the kernel printed nothing", () => expect(failureText([])).toBe(""));
});

describe("errorOutput", () => {
  it("finds the name and the message, and leaves out the kernel's own frames and colours", () => {
    const text = [
      "evalmachine.<anonymous>:3",
      "\u001b[31mRangeError: thicknessMm must be > 0 mm, got -1\u001b[39m",
      "    at slabThickness (/kitchen/kernel-lib/library/dist/pan/slab-thickness.js:10:3)",
      "    at sigintHandlersWrap (node:vm:280:12)",
      "    at Object.execute (/kitchen/node_modules/tslab/dist/executor.js:160:38)",
    ].join("\n");
    expect(errorOutput(text, "")).toEqual({
      output_type: "error",
      ename: "RangeError",
      evalue: "thicknessMm must be > 0 mm, got -1",
      traceback: [
        "evalmachine.<anonymous>:3",
        "RangeError: thicknessMm must be > 0 mm, got -1",
        "    at slabThickness (/kitchen/kernel-lib/library/dist/pan/slab-thickness.js:10:3)",
      ],
    });
  });

  it.each([
    ["Error: plain", "Error", "plain"],
    ["TypeError [ERR_INVALID_ARG_TYPE]: wrong", "TypeError", "wrong"],
    [
      "1:7 - Type 'string' is not assignable to type 'number'.",
      "CompileError",
      "Type 'string' is not assignable to type 'number'.",
    ],
    ["just words", "Error", "just words"],
    ["", "Error", "the kernel gave no message"],
  ])("reads %j", (text, ename, evalue) => expect(errorOutput(text, "")).toMatchObject({ ename, evalue }));
});

describe("parsedData", () => {
  const figure = "application/vnd.plotly.v1+json";

  it("makes values of JSON that came as text", () => {
    expect(parsedData({ [figure]: '{"data":[]}', "text/plain": '{"data":[]}' })).toEqual({
      [figure]: { data: [] },
      "text/plain": '{"data":[]}',
    });
  });

  it.each([
    "{",
    "",
    "NaN",
    '{"a":1}}',
    `${"[".repeat(50_000)}${"]".repeat(50_000)}`,
    `${"[".repeat(152)}${"]".repeat(152)}`,
    "\u0000",
  ])("keeps text that is no JSON, or too deep to be written again: %#", (broken) => {
    expect(parsedData({ [figure]: broken })).toEqual({ [figure]: broken, "text/plain": broken });
    expect(parsedData({ "application/json": broken, "text/plain": "a figure" })).toEqual({
      "application/json": broken,
      "text/plain": "a figure",
    });
  });

  it("keeps as values what a notebook can be written and read again with", () => {
    const data = parsedData({ [figure]: `${"[".repeat(151)}${"]".repeat(151)}` });
    expect(Array.isArray(data[figure])).toBe(true);
    const outputs = [{ output_type: "display_data" as const, metadata: {}, data }];
    const cells = [{ id: "a", cell_type: "code" as const, metadata: {}, source: "", outputs }];
    const text = notebookText({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells });
    expect(parseNotebook(text, "x").cells[0].outputs).toEqual(outputs);
  });

  it.each([null, undefined, 7, "text", []])("is empty for %j, which is no bundle with a JSON kind", (data) => {
    expect(Object.keys(parsedData(data)).filter((mime) => mime.includes("json"))).toEqual([]);
  });
});
