import { join } from "node:path";
import { type Execution, execute, type Kernel, type Message, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: join(__dirname, "..", "notebooks") });
}, 30_000);
afterAll(() => kernel.stop());

async function run(code: string, limitMs = 20_000): Promise<Execution & { news: Message[]; text: string }> {
  const news: Message[] = [];
  const execution = await execute(kernel, { code, limitMs, onNews: (message) => news.push(message) });
  return { ...execution, news, text: news.map(({ content }) => content.text ?? "").join("") };
}

describe("execute", () => {
  it("returns everything a cell printed, in order, and keeps what it defined", async () => {
    const first = await run("const thicknessMm = 9.5;\nfor (let i = 0; i < 200; i++) console.log(i);");
    expect(first.status).toBe("ok");
    expect(first.text).toBe(Array.from({ length: 200 }, (_, i) => `${i}\n`).join(""));
    expect((await run("thicknessMm * 2")).text).toBe("19\n");
  });

  it("waits for a cell that awaits", async () => {
    const { status, text } = await run("await new Promise((done) => setTimeout(done, 300));\nconsole.log('late');");
    expect([status, text]).toEqual(["ok", "late\n"]);
  });

  it("judges a failing cell by the reply and hands on what the kernel printed", async () => {
    const { status, text } = await run("throw new RangeError('too thick');");
    expect(status).toBe("error");
    expect(text).toContain("RangeError: too thick");
    await new Promise((done) => setTimeout(done, 250));
  });

  it("interrupts a cell over its limit, and the kernel lives on", async () => {
    const { status, reason } = await run("while (true) {}", 400);
    expect(status).toBe("timeout");
    expect(reason).toContain("longer than its limit of 0.4 s");
    await new Promise((done) => setTimeout(done, 250));
    expect((await run("thicknessMm")).text).toBe("9.5\n");
  });

  it("tells when a cell ends the kernel", async () => {
    const { status, reason } = await run("process.exit(3);");
    expect(status).toBe("died");
    expect(reason).toContain("exit code 3");
    expect((await run("1 + 1")).status).toBe("died");
  });
});
