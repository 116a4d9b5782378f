import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cellNames } from "../../../../kernel-lib/host/page/stale/cell-names";

describe("cellNames", () => {
  it.each([
    ['import { loadKitchen as load, show } from "slabwright";', "load show", ""],
    ['import * as all from "slabwright";\nimport one from "zod";', "all one", ""],
    ["const { fit, comparison: said, deep: [first, ...rest] } = of(kitchen);", "fit said first rest", "of kitchen"],
    ["let low = 1, high: Minutes = 2;", "low high", "Minutes"],
    ["function f(p: Bar, { r = q }) { const inner = p; return inner + outer; }", "f", "Bar q outer"],
    ["class Panel extends Base { m(x) { return this.y + x + far; } }", "Panel", "Base far"],
    ["interface Row { a: Low }\ntype Or = Row | Other;\nenum Side { A }", "Row Or Side", "Low Other"],
    ["for (const pan of pans) { console.log(pan, thicknessMm); }", "", "pans console thicknessMm"],
    ["const g = async (e) => e + h;", "g", "h"],
    ["show({ kitchen: kitchen, short, [named]: 1, m(v) { return v; } });", "", "show kitchen short named"],
    ["q = w;\nslab.batch.g;", "", "q w slab"],
    ["try { mix(); } catch (error) { error; tell }", "", "mix tell"],
    [String.raw`\`\${time} min\``.replaceAll("\\", ""), "", "time"],
    ["const kitchen = 1;\nkitchen + 1;", "kitchen", ""],
    ["if (ready) { const only = 1; only; }\nonly;", "", "ready only"],
    ["", "", ""],
  ])("%s", (code, defines, uses) => {
    const names = (text: string): string[] => text.split(" ").filter(Boolean).sort();
    const found = cellNames(code);
    expect([...found.defines].sort(), "defines").toEqual(names(defines));
    expect([...found.uses].sort(), "uses").toEqual(names(uses));
  });

  it("reads any text, and never names what does not stand in it", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.array(fc.constantFrom("{", "}", "(", "const ", "a", "=>", "`", "${", "import "))),
        (given) => {
          const code = Array.isArray(given) ? given.join("") : given;
          const { defines, uses } = cellNames(code);
          for (const name of [...defines, ...uses]) expect(code).toContain(name);
          expect(uses.filter((name) => defines.includes(name))).toEqual([]);
        },
      ),
    );
  });
});
