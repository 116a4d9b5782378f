import { resolve } from "node:path";
import { execute, type Kernel, type Message, request, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/** A real kernel, the library imported by its name, and what it offers inside an options object. */
let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: resolve("notebooks") });
}, 60_000);
afterAll(() => kernel.stop());

async function completions(code: string): Promise<string[]> {
  const asked = request("shell", "complete_request", { code, cursor_pos: code.length }, kernel.session);
  const answered = new Promise<Message>((answer) => {
    const stop = kernel.listen((message) => {
      if ((message.parent_header as { msg_id?: string }).msg_id !== asked.header.msg_id || message.channel !== "shell")
        return;
      stop();
      answer(message);
    });
  });
  await kernel.send(asked);
  return (await answered).content.matches as string[];
}

describe("a tslab kernel in the notebooks folder", () => {
  it("imports slabwright by name and runs it", async () => {
    const news: string[] = [];
    const run = await execute(kernel, {
      code: 'import { slabThickness, panPreset } from "slabwright";\nslabThickness({ pan: panPreset("half sheet"), batchG: 1200, densityKgM3: 1050 }).thicknessMm.toFixed(2)',
      limitMs: 30_000,
      onNews: (message) => news.push(JSON.stringify(message.content)),
    });
    expect(run.status).toBe("ok");
    expect(news.join()).toContain("9.30");
  }, 60_000);

  it("offers the fields of an options object", async () => {
    const offered = await completions('import { slabThickness } from "slabwright";\nslabThickness({ ');
    expect(offered).toEqual(expect.arrayContaining(["pan", "batchG", "densityKgM3"]));
  }, 60_000);

  it("offers the fields of a result", async () => {
    const offered = await completions(
      'import { loadKitchen } from "slabwright";\nconst kitchen = loadKitchen();\nkitchen.trials[0].',
    );
    expect(offered).toEqual(expect.arrayContaining(["thicknessMm", "crispMin", "coreC"]));
  }, 60_000);
});
