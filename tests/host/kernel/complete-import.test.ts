import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completeImport } from "../../../kernel-lib/host/src/kernel/complete-import";
import type { Door } from "../../../kernel-lib/host/src/kernel/door-names";

const door = (name: string, values: string[], types: string[] = []): Door => ({
  door: name,
  file: "",
  values: new Map(values.map((value) => [value, ""])),
  types: new Set(types),
});
const DOORS = [
  door("kitchen", ["loadLog", "show", "oven"], ["Log"]),
  door("kitchen/heat", ["oven", "ovenAir", "coreTime", "blow"], ["Oven"]),
  door("kitchen/log", ["loadLog", "loadFoods"]),
];

/** Completes at the `|`; the first match put in its place, and all matches. */
function completed(marked: string): { line: string; matches: readonly string[] } | null {
  const at = marked.indexOf("|");
  const code = marked.replace("|", "");
  const found = completeImport(code, at, DOORS);
  if (found === null) return null;
  const line = code.slice(0, found.start) + found.matches[0] + code.slice(found.end);
  return { line, matches: found.matches };
}

describe("completeImport", () => {
  it("offers names before the door is written, the first door's first, those that begin so before those that hold it", () => {
    expect(completed("import { lo|")?.matches).toEqual(["loadLog", "loadFoods", "Log", "blow"]);
    expect(completed("import { |")?.matches, "not the names of every door").toEqual(["loadLog", "oven", "show", "Log"]);
    expect(completed("const a = 1;\n  import {\n  show,\n  LO|\n}")?.matches).toEqual(["loadLog", "Log"]);
  });

  it("offers only what a door shows that shows the other names too", () => {
    expect(completed("import { coreTime, o|")?.matches).toEqual(["oven", "ovenAir", "Oven", "blow"]);
    expect(completed("import { o|, coreTime }")?.matches).toEqual(["oven", "ovenAir", "Oven", "blow"]);
    expect(completed('import { lo| } from "kitchen/log"')?.matches).toEqual(["loadFoods", "loadLog"]);
    expect(completed("import { show, s|")?.matches, "what is imported already").toEqual([]);
  });

  it("writes the door behind a name that is whole, and leaves longer names to choose", () => {
    expect(completed("import { loadLog|")?.line).toBe('import { loadLog } from "kitchen";');
    expect(completed("import { coreTime, oven| }")?.line).toBe('import { coreTime, oven } from "kitchen/heat";');
    expect(completed("import { oven|")?.matches).toEqual(['oven } from "kitchen";', "ovenAir"]);
    expect(completed("import { oven|}")?.matches[1], "a chosen longer name keeps the bracket").toBe("ovenAir}");
    expect(completed('import { oven| } from "kitchen/heat"')?.matches).toEqual(["oven", "ovenAir", "Oven"]);
  });

  it("writes the door behind the brackets", () => {
    expect(completed("import { coreTime } |")?.line).toBe('import { coreTime } from "kitchen/heat"');
    expect(completed("import { coreTime }|")?.line).toBe('import { coreTime } from "kitchen/heat"');
    expect(completed("import { coreTime } fr|")?.line).toBe('import { coreTime } from "kitchen/heat"');
    expect(completed('import { loadLog } from "|"')?.matches).toEqual(["kitchen", "kitchen/log"]);
    expect(completed('import { loadLog } from "kitchen/|')?.line).toBe('import { loadLog } from "kitchen/log');
  });

  it("takes back nothing below a line that is not finished", () => {
    expect(completed("import { lo|\nconst later = { a: 1 };")?.line).toBe("import { loadLog\nconst later = { a: 1 };");
  });

  it("leaves alone what is no import of the library", () => {
    for (const marked of [
      "lo|",
      "show({ lo| })",
      'import { readF| } from "node:fs"',
      'import { unknown } from "no|"',
      "import lo|",
      "import { show as lo|",
      'import { show } from "kitchen";\nshow({ lo|',
    ])
      expect(completed(marked), marked).toBeNull();
  });

  it("keeps what stands before and behind the place that it names, whatever is written", () => {
    const bit = fc.constantFrom("import ", "{ ", "show", "ov", ", ", " }", " from ", '"', "kitchen", "\n", "😀", ";");
    fc.assert(
      fc.property(fc.array(bit, { maxLength: 14 }), fc.nat(40), (bits, cut) => {
        const code = bits.join("");
        const at = Math.min(cut, code.length);
        const found = completeImport(code, at, DOORS);
        if (found === null) return;
        expect(found.start).toBeLessThanOrEqual(at);
        expect(found.end).toBeGreaterThanOrEqual(at);
        expect(found.end).toBeLessThanOrEqual(code.length);
        // what is taken away is names, brackets and door of the import alone
        expect(code.slice(found.start, found.end)).toMatch(/^[\w/$]*[\s,]*\}?$|^f?r?o?m?$/);
      }),
    );
  });
});
