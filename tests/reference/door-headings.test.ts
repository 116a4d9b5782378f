import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { doorHeadings } from "../../kernel-lib/reference/src/door-headings";
import { DOORS } from "../../kernel-lib/reference/src/doors";

const library = "kernel-lib/library/src";

it("gives each heading the names below it, types among them", () => {
  const door = `// the first: a few\n\nexport { type A, a } from "./a";\nexport type {\n  B,\n  C,\n} from "./b";\n\n// the second\n\nexport { d } from "./d";\n`;
  expect(doorHeadings(door)).toEqual([
    { heading: "the first: a few", names: ["A", "a", "B", "C"] },
    { heading: "the second", names: ["d"] },
  ]);
});

it("knows every door of the library", () => {
  const rooms = readdirSync(library, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith("index.ts"))
    .map((path) => path.replace(/[\\/]?index\.ts$/, ""));
  expect(DOORS.map(({ room }) => room).sort()).toEqual(rooms.sort());
  for (const room of rooms)
    expect(doorHeadings(readFileSync(join(library, room, "index.ts"), "utf8")).length, room).toBeGreaterThan(0);
});
