import { mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { resolve } from "node:path";
import { afterAll, describe, expect, it } from "vitest";

// loaded by path: it transpiles cells by a compiler that is a package of that workspace alone
const { runTutorial } = (await import(resolve("kernel-lib/reference/src/run-tutorial.ts"))) as {
  runTutorial: (
    page: string,
    place: { project: string; folder: string; skips?: (command: string) => boolean },
  ) => Promise<string>;
};
mkdirSync("out", { recursive: true });
const folder = resolve(mkdtempSync("out/tutorial-test-"));
const place = { project: resolve("."), folder };
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("the tutorial", () => {
  it("does what it says, from an empty kitchen to a card", async () => {
    const skipped: string[] = [];
    const page = await runTutorial(readFileSync("kernel-lib/reference/pages/tutorial.md", "utf8"), {
      ...place,
      // all notebooks on their kernels: tests/notebooks and tests/host/command run these
      skips: (command) => {
        if (!/^npm (?:start|run share) /.test(command)) return false;
        skipped.push(command);
        return true;
      },
    });
    expect(skipped.length).toBe(2);
    const printed = [...page.matchAll(/^```text\n([\s\S]*?)^```/gm)].map(([, text]) => text);
    expect(printed.length).toBe(page.match(/^```(?:sh|ts)/gm)!.length - 2);
    expect(printed[1]).toContain('got "salt"');
    expect(printed[2]).toMatch(/^No problems in corner-kitchen: 1 pan/);
    expect(page).toContain("LT-03 in trials/first-log.csv is corrected");
    expect(page).toMatch(/^3 trials of white bean and leek tiles are logged/m);
    expect(page).toMatch(/^Core at least 165 °F/m);
    expect(page).toMatch(/^Not ready: run 3 more trials/m);
    // nothing of the machine that it ran on
    expect(page).not.toContain(place.project);
    expect(page).not.toContain(folder);
  }, 120_000);

  it("stops where a command fails", async () => {
    await expect(runTutorial("```sh\nnpm run log -- variant=x --kitchen corner-kitchen\n```\n", place)).rejects.toThrow(
      "failed",
    );
    await expect(runTutorial("```sh\nrm -r x\n```\n", place)).rejects.toThrow('must be "npm run NAME');
  });
});
