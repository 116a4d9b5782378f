import { mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { cellStore, fileState } from "../../../kernel-lib/host/src/compile/cell-store";

const folder = mkdtempSync(join(tmpdir(), "slabwright-cells-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function storeOf(name: string) {
  const types = join(folder, `${name}.d.ts`);
  writeFileSync(types, "export declare const n: number;");
  const place = join(folder, name);
  const store = cellStore(place);
  store.keep(["const a = 1"], { output: "a" }, [fileState(types), fileState(join(folder, `${name}-absent`))]);
  return { types, place, again: () => cellStore(place) };
}

it("finds what was kept, in another process too, and nothing for another cell", () => {
  const { again } = storeOf("plain");
  expect(again().find(["const a = 1"])).toEqual({ output: "a" });
  expect(again().find(["const a = 2"])).toBeNull();
  expect(again().find(["const a", " = 1"])).toBeNull();
});

it("finds nothing when a file has changed since, however little, or is there that was not", () => {
  const changed = storeOf("changed");
  writeFileSync(changed.types, "export declare const n: string;");
  expect(changed.again().find(["const a = 1"])).toBeNull();
  const later = storeOf("later");
  writeFileSync(join(folder, "later-absent"), "");
  expect(later.again().find(["const a = 1"])).toBeNull();
  const gone = storeOf("gone");
  rmSync(gone.types);
  expect(gone.again().find(["const a = 1"])).toBeNull();
});

it("notices a change while it is in use", () => {
  const { again, types } = storeOf("used");
  const store = again();
  expect(store.find(["const a = 1"])).not.toBeNull();
  writeFileSync(types, "");
  expect(store.find(["const a = 1"])).toBeNull();
});

it("finds nothing where a file of the store is damaged, or the folder cannot be one", () => {
  const { again, place } = storeOf("damaged");
  for (const name of readdirSync(place)) writeFileSync(join(place, name), "{");
  expect(again().find(["const a = 1"])).toBeNull();
  const file = join(folder, "file");
  writeFileSync(file, "");
  const none = cellStore(file);
  none.keep(["const a = 1"], { output: "a" }, []);
  expect(none.find(["const a = 1"])).toBeNull();
});

it("removes what has not been kept again for 30 days, and nothing younger", () => {
  const { again, place } = storeOf("old");
  const [old, young] = readdirSync(place).map((name) => join(place, name));
  const daysAgo = (days: number): number => Date.now() / 1000 - days * 24 * 3600;
  utimesSync(old, daysAgo(31), daysAgo(31));
  utimesSync(young, daysAgo(29), daysAgo(29));
  again().keep(["const b = 1"], { output: "b" }, [fileState(folder)]);
  const left = readdirSync(place).map((name) => join(place, name));
  expect(left).not.toContain(old);
  expect(left).toContain(young);
});
