import { resolve } from "node:path";
import { errorOutput, execute, failureText, type Kernel, startKernel } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";

/** What a cook reads of a cell that does not compile, from the kernel's own compiler. */
let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: resolve("notebooks") });
  const names = "coreLimit, crispWindow, loadKitchen, panPreset, slabThickness";
  await run(
    `import { ${names} } from "slabwright";\nimport { appendTrial } from "slabwright/notebook";\nconst kitchen = loadKitchen();`,
  );
}, 60_000);
afterAll(() => kernel?.stop());

async function run(code: string): Promise<{ sentence: string; traceback: string } | null> {
  const said: string[] = [];
  const { status } = await execute(kernel, {
    code,
    limitMs: 30_000,
    onNews: ({ content }) => content.name === "stderr" && said.push(String(content.text)),
  });
  if (status === "ok") return null;
  await new Promise((rested) => setTimeout(rested, 300)); // it refuses what comes within 200 ms
  const output = errorOutput(failureText(said), "", code);
  return output.output_type === "error" ? { sentence: output.evalue, traceback: output.traceback.join("\n") } : null;
}

it.each([
  ["crispWindow({ kitchen });", "crispWindow must also be given variantId"],
  ["const options = { kitchen: kitchen };\ncrispWindow(options);", "crispWindow must also be given variantId (line 2)"],
  [
    'slabThickness({ pan: panPreset("half sheet"), batchG: "12", densityKgM3: 1050 });',
    "batchG must be a number, got text",
  ],
  [
    'slabThickness({ pan: panPreset("half sheet"), batch: 12, densityKgM3: 1050 });',
    "slabThickness has no batch; did you mean batchG?",
  ],
  ['coreLimit("poultri");', 'coreLimit must be given a FoodClass, got "poultri"'],
  ["kitchen.trails.length", "kitchen has no trails; did you mean trials?"],
  ["const thicknessMm: number = kitchen.name;", "thicknessMm must be a number, got text"],
  ["const a: number = 'x';\nconst b: number = 'y';", "a must be a number, got text (line 1, and 1 more)"],
  ["kept + 1", "Cannot find name 'kept'."],
  ["const pan = (;", "Expression expected."],
])("%s", async (code, sentence) => {
  expect((await run(code))?.sentence).toBe(sentence);
});

it("names every field that a trial lacks, and keeps the compiler's words and the line behind it", async () => {
  const failed = await run('// one trial\nappendTrial("log.csv", { trialId: "A-1", panId: "half-sheet" });');
  expect(failed?.sentence).toMatch(/^appendTrial must also be given date, variantId, .* and \w+ \(line 2\)$/);
  for (const field of ["applianceId", "setpointC", "timeMin", "crispScores"]) expect(failed?.sentence).toContain(field);
  expect(failed?.sentence).not.toMatch(/\d+ more|panId|[{}]/);
  expect(failed?.traceback).toContain('2 | appendTrial("log.csv"');
  expect(failed?.traceback).toContain("is not assignable to parameter of type 'Trial'");
});
