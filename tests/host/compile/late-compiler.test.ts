import { randomUUID } from "node:crypto";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it, vi } from "vitest";
import { compileAhead } from "../../../kernel-lib/host/src/compile/compile-ahead";
import { execute } from "../../../kernel-lib/host/src/kernel/execute";
import { startKernel } from "../../../kernel-lib/host/src/kernel/start-kernel";

vi.setConfig({ testTimeout: 60_000 });

const folder = mkdtempSync(join(tmpdir(), "slabwright-late-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const tiny = join(folder, "node_modules", "tiny");
mkdirSync(tiny, { recursive: true });
const types = (text: string): void => writeFileSync(join(tiny, "index.d.ts"), text);
writeFileSync(join(tiny, "package.json"), '{ "name": "tiny", "version": "1.0.0", "types": "index.d.ts" }');
writeFileSync(join(tiny, "index.js"), "exports.pieces = 48;");
types("export declare const pieces: number;");

/** Runs cells on a new kernel in the folder; gives what they printed. */
async function printed(cells: readonly string[]): Promise<string> {
  const kernel = await startKernel({ folder, fromStore: true });
  try {
    let out = "";
    for (const code of cells)
      await execute(kernel, {
        code,
        limitMs: 30_000,
        onNews: ({ content }) => {
          out += typeof content.text === "string" ? content.text : "";
        },
      });
    return out;
  } finally {
    await kernel.stop();
  }
}

describe("late-compiler", () => {
  const cells = [
    `import { pieces } from "tiny"; const run = "${randomUUID()}"; const half = pieces / 2;`,
    `const words: string = \`\${half} of \${pieces}\`; const kept = { half }; console.log(words, kept.half);`,
    `console.log(Object.keys(require.cache).some((path) => path.includes("typescript-for-tslab")) ? "compiled" : "from the store");`,
  ];

  it("compiles ahead, and a kernel then runs without a compiler and prints the same", async () => {
    const ahead = compileAhead(folder, [cells, ["const broken: string = 1;"], []]);
    await Promise.all([0, 1, 2].map(ahead.compiled));
    expect(await printed(cells)).toBe("24 of 48 24\nfrom the store\n");
  });

  it("compiles again when the types have changed, and says what no longer holds", async () => {
    types("export declare const pieces: string;");
    expect(await printed(cells)).toContain("The left-hand side of an arithmetic operation must be");
  });

  it("is done with every notebook when its process ends", async () => {
    const ahead = compileAhead(folder, [cells, cells]);
    ahead.stop();
    await Promise.all([0, 1].map(ahead.compiled));
  });
});
