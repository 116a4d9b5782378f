import { resolve } from "node:path";
import { errorOutput, execute, failureText, type Kernel, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { doorNames } from "../../../kernel-lib/host/src/kernel/door-names";
import type { OfferedExample } from "../../../kernel-lib/host/src/kitchen/kitchen-answer";
import { openKitchen } from "../../../kernel-lib/host/src/kitchen/open-kitchen";
import { youngKitchen } from "./young-kitchen";

/** Every example that the page offers, run on a real kernel as a person would run it. */
describe.each([
  ["the project's own kitchen", () => resolve("data"), 0],
  ["a kitchen to begin with and four trials", () => youngKitchen(4), 12],
])("on %s", (_, folderOf, mostTooLittle) => {
  let kernel: Kernel;
  let examples: readonly OfferedExample[];
  beforeAll(async () => {
    const folder = folderOf();
    kernel = await startKernel({ folder: resolve("notebooks"), environment: { SLABWRIGHT_KITCHEN: folder } });
    const place = { name: "k", folder, report: "none", project: resolve(".") };
    examples = (await openKitchen(place).answer("examples")) as readonly OfferedExample[];
  }, 120_000);
  afterAll(() => kernel?.stop());

  it("runs one for each function of the cook's door, or says in a sentence what must be logged", async () => {
    expect(examples.map(({ name }) => name).sort()).toEqual([...doorNames("notebooks")[0].values.keys()].sort());
    const wrong: string[] = [];
    const tooLittle: string[] = [];
    for (const { name, code } of examples) {
      let shown = "";
      const said: string[] = [];
      const { status } = await execute(kernel, {
        code,
        limitMs: 120_000,
        onNews: ({ header, content }) => {
          if (content.name === "stderr") said.push(String(content.text));
          else shown += header.msg_type === "stream" ? content.text : JSON.stringify(content.data);
        },
      });
      if (status === "ok") {
        if (shown.trim() === "" || /^undefined$/m.test(shown)) wrong.push(`${name} shows ${shown.trim() || "nothing"}`);
        continue;
      }
      await new Promise((rested) => setTimeout(rested, 300)); // the kernel refuses what comes within 200 ms
      const error = errorOutput(failureText(said), "", code);
      const words = error.output_type === "error" ? `${error.ename}: ${error.evalue}` : "";
      if (/^(TooLittle|RangeError|Error): [^\n]{20,}$/.test(words)) tooLittle.push(`${name}: ${words}`);
      else wrong.push(`${name}: ${words || status}`);
    }
    expect(wrong).toEqual([]);
    // a log to add to must be named by a person: nothing writes into one unasked
    const unready = tooLittle.filter((one) => !/^(logTrial|correctTrial|undoLog): /.test(one));
    expect(unready.length, unready.join("\n")).toBeLessThanOrEqual(mostTooLittle);
  }, 600_000);
});
