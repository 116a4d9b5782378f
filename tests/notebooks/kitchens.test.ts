import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import fc from "fast-check";
import { type Cell, runNotebook, textOf, titleOf } from "slabwright-host";
import { afterAll, describe, expect, it, vi } from "vitest";
import { loadKitchen } from "../../kernel-lib/library/src/notebook/load-kitchen";
import { type KitchenOf, writeKitchenOf } from "./kitchen-of";

vi.setConfig({ testTimeout: 600_000 });

const root = resolve(__dirname, "../..");
const names = readdirSync(join(root, "notebooks")).filter((name) => name.endsWith(".ipynb"));
const folder = mkdtempSync(join(tmpdir(), "slabwright-kitchens-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Each kind of young kitchen, several in one where they do not hide each other. */
const KITCHENS: Readonly<Record<string, KitchenOf>> = {
  "no trial, one variant, one pan, one appliance": {
    trials: { "chickpea-carrot": 0 },
    pans: ["half-sheet"],
    appliances: ["small-basket"],
  },
  "one trial, only wells": { trials: { "corn-puff": 1 }, pans: ["mini-wells"], appliances: ["fan-oven"] },
  "three trials, US units, one pan": { trials: { "turkey-sage": 3 }, pans: ["half-sheet"], us: true },
  "six trials, and a variant without any": {
    trials: { "pollock-dill": 6, "beet-lentil": 0 },
    pans: ["half-sheet", "quarter-sheet"],
  },
  "twelve trials, a probe trace": { trials: { "turkey-sage": 12 }, traces: true, us: true },
};

interface Section {
  readonly heading: string;
  readonly cells: Cell[];
}

/** The parts of a notebook: from one heading of the second level to the next, those without code left out. */
function sectionsOf(cells: readonly Cell[]): Section[] {
  const sections: Section[] = [{ heading: "", cells: [] }];
  for (const cell of cells) {
    const heading = cell.cell_type === "markdown" ? /^## (.*)/m.exec(textOf(cell.source)) : null;
    if (heading !== null) sections.push({ heading: heading[1], cells: [] });
    else if (cell.cell_type === "code") sections.at(-1)?.cells.push(cell);
  }
  return sections.filter((section) => section.cells.length > 0);
}

/** What a part showed, in words. */
function shownBy(section: Section): string {
  const outputs = section.cells.flatMap((cell) => cell.outputs ?? []);
  return outputs
    .map((output) =>
      output.output_type === "stream"
        ? textOf(output.text)
        : "data" in output
          ? textOf((output.data["text/plain"] ?? "") as string)
          : "",
    )
    .join("\n");
}

const TOO_LITTLE = /Too little yet\. [A-Z\d].*\b(log|weigh|reheat|second one)\b/;

/** Runs a notebook over a kitchen; says what is wrong with what came of it. */
async function problemsOf(name: string, kitchen: string): Promise<string[]> {
  const run = await runNotebook({ path: join(root, "notebooks", name), environment: { SLABWRIGHT_KITCHEN: kitchen } });
  if (run.failure !== null) return [`${name}, cell ${run.failure.cell}: ${run.failure.message}`];
  const problems: string[] = [];
  let told = false;
  for (const section of sectionsOf(run.notebook.cells)) {
    const shown = shownBy(section);
    told ||= TOO_LITTLE.test(shown);
    if (shown.trim() === "" && !told) problems.push(`${name}: "${section.heading}" shows nothing`);
    if (/NaN|undefined|Infinity|\[object/.test(shown))
      problems.push(`${name}: "${section.heading}" shows ${/.*(NaN|undefined|Infinity|\[object).*/.exec(shown)?.[0]}`);
  }
  if (!/^\d+\. /.test(titleOf(run.notebook, ""))) problems.push(`${name} has no numbered title`);
  return problems;
}

/** Runs every notebook over a kitchen, two at a time. */
async function allProblems(kitchen: string): Promise<string[]> {
  const left = [...names];
  const problems: string[] = [];
  const work = async (): Promise<void> => {
    for (let name = left.shift(); name !== undefined; name = left.shift())
      problems.push(...(await problemsOf(name, kitchen)));
  };
  await Promise.all([work(), work()]);
  return problems;
}

describe("all notebooks", () => {
  it.each(Object.entries(KITCHENS))("run on a kitchen of %s, and every part says something", async (name, kitchen) => {
    const path = writeKitchenOf(join(folder, name.replace(/\W+/g, "-")), kitchen);
    expect(loadKitchen(path).trials).toHaveLength(Object.values(kitchen.trials).reduce((sum, count) => sum + count, 0));
    expect(await allProblems(path)).toEqual([]);
  });
});

/** How many drawn kitchens to run; none unless asked for. */
const DRAWN = Number(process.env.SLABWRIGHT_KITCHENS ?? 0);

/** Pans that each of the demo's variants can be made on, its own first. */
const PANS_OF = {
  "beet-lentil": ["half-sheet", "quarter-sheet", "three-quarter-sheet"],
  "turkey-sage": ["half-sheet", "quarter-sheet", "gn-1-2-40"],
  "corn-puff": ["mini-wells"],
} as const;

const drawnKitchens: fc.Arbitrary<KitchenOf> = fc
  .record({
    variantIds: fc.subarray(Object.keys(PANS_OF) as (keyof typeof PANS_OF)[], { minLength: 1 }),
    counts: fc.array(fc.nat({ max: 14 }), { minLength: 3, maxLength: 3 }),
    panCount: fc.integer({ min: 1, max: 3 }),
    us: fc.boolean(),
    traces: fc.boolean(),
  })
  .map(({ variantIds, counts, panCount, us, traces }) => ({
    trials: Object.fromEntries(variantIds.map((id, at) => [id, counts[at]])),
    pans: [...new Set(variantIds.flatMap((id) => PANS_OF[id].slice(0, panCount)))],
    us,
    traces,
  }));

describe.runIf(DRAWN > 0)("drawn kitchens", () => {
  it("run in every notebook", async () => {
    let drawn = 0;
    await fc.assert(
      fc.asyncProperty(drawnKitchens, async (kitchen) => {
        drawn++;
        expect(await allProblems(writeKitchenOf(join(folder, `drawn-${drawn}`), kitchen))).toEqual([]);
      }),
      { numRuns: DRAWN, endOnFailure: true },
    );
  }, 3_600_000);
});
