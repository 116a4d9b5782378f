import { expect, it } from "vitest";
import type { CellStore, FileState } from "../../../kernel-lib/host/src/compile/cell-store";
import { type Converted, storedConverter } from "../../../kernel-lib/host/src/compile/stored-converter";

const PACKAGES: FileState = ["/kitchen/notebooks/node_modules/p/index.d.ts", 1, 1];

/** A converter over a store in memory, with what it compiled and how often its compiler was loaded. */
function converterWith(convert: (source: string) => Converted, files: readonly FileState[] = [PACKAGES]) {
  const kept = new Map<string, unknown>();
  const store: CellStore = {
    find: (cell) => kept.get(JSON.stringify(cell)) ?? null,
    keep: (cell, compiled) => void kept.set(JSON.stringify(cell), compiled),
  };
  const compiled: string[] = [];
  let loads = 0;
  const open = () =>
    storedConverter({
      store,
      folder: "/kitchen/notebooks",
      load: () => {
        loads++;
        return {
          files: () => files,
          converter: {
            convert: (_, source) => {
              compiled.push(source);
              return convert(source);
            },
            inspect: () => "inspected",
            complete: () => "completed",
            addModule: () => [],
            close: () => {},
          },
        };
      },
    });
  return { open, compiled, loads: () => loads };
}

const plain = (source: string): Converted => ({ diagnostics: [], output: `js of ${source}`, declOutput: "d" });

it("compiles a cell once, and then never loads its compiler", () => {
  const { open, compiled, loads } = converterWith(plain);
  expect(open().convert("", "a")).toEqual(plain("a"));
  const second = open();
  expect(second.convert("", "a")).toEqual(plain("a"));
  second.close();
  expect(compiled).toEqual(["a"]);
  expect(loads()).toBe(1);
});

it("takes the same source behind other cells for another cell", () => {
  const { open, compiled } = converterWith(plain);
  open().convert("", "a");
  open().convert("let x: number", "a");
  expect(compiled).toEqual(["a", "a"]);
});

it.each([
  ["does not compile", { diagnostics: ["wrong"] }],
  ["gives nothing to run", { diagnostics: [] }],
  ["brings other files along", { diagnostics: [], output: "js", sideOutputs: [{}] }],
])("compiles a cell each time when it %s", (_, converted) => {
  const { open, compiled } = converterWith(() => converted);
  open().convert("", "a");
  expect(open().convert("", "a")).toEqual(converted);
  expect(compiled).toEqual(["a", "a"]);
});

it("compiles each time what rests on a file of the notebook's own folder", () => {
  const { open, compiled } = converterWith(plain, [PACKAGES, ["/kitchen/notebooks/mine.ts", 1, 1]]);
  open().convert("", "a");
  open().convert("", "a");
  expect(compiled).toEqual(["a", "a"]);
});

it("keeps and finds nothing once a cell was a module, as others may import it", () => {
  const { open, compiled } = converterWith(plain);
  open().convert("", "a");
  const converter = open();
  converter.addModule("m", "export const b = 1");
  converter.convert("", "a");
  converter.convert("", "b");
  open().convert("", "b");
  expect(compiled).toEqual(["a", "a", "b", "b"]);
});

it("answers questions, and loads its compiler for them", () => {
  const { open, loads } = converterWith(plain);
  expect([open().inspect("", "a", 0), open().complete("", "a", 0)]).toEqual(["inspected", "completed"]);
  expect(loads()).toBe(2);
});
