import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { type Execution, execute, type Kernel, type Message, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const LINES = 50_000;
let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: resolve("notebooks") });
}, 60_000);
afterAll(() => kernel.stop());

interface Heard extends Execution {
  readonly news: readonly Message[];
  readonly text: (name: "stdout" | "stderr") => string;
}

async function run(code: string, onNews: (message: Message) => void = () => {}, on = kernel): Promise<Heard> {
  const news: Message[] = [];
  const execution = await execute(on, {
    code,
    limitMs: 25_000,
    onNews: (message) => {
      news.push(message);
      onNews(message);
    },
  });
  if (execution.status === "error") await new Promise((done) => setTimeout(done, 250));
  const text: Heard["text"] = (name) =>
    news
      .filter(({ content }) => content.name === name)
      .map(({ content }) => content.text)
      .join("");
  return { ...execution, news, text };
}
const lines = (from: number, to: number): string =>
  Array.from({ length: to - from }, (_, at) => `${from + at}\n`).join("");

describe("a flood of output", () => {
  it.each(["log", "error"])("of 50,000 lines by console.%s arrives whole and in order", async (how) => {
    const { status, text } = await run(`for (let i = 0; i < ${LINES}; i++) console.${how}(i);`);
    expect(status).toBe("ok");
    expect(text(how === "log" ? "stdout" : "stderr") === lines(0, LINES)).toBe(true);
  });

  it("of lines that go to stdout and stderr in turns keeps their order", async () => {
    const { status, news } = await run("for (let i = 0; i < 5000; i += 2) { console.log(i); console.error(i + 1); }");
    expect(status).toBe("ok");
    expect(news.map(({ content }) => content.text).join("") === lines(0, 5000)).toBe(true);
  });

  it("of 2,000 small displays arrives whole, in order and between the lines that stand between them", async () => {
    const { status, news } = await run(
      'import { display } from "tslab";\nfor (let i = 0; i < 4000; i += 2) { display.text(String(i)); console.log(i + 1); }',
    );
    expect(status).toBe("ok");
    const told = news.map(({ content }) =>
      content.data ? `${(content.data as Record<string, string>)["text/plain"]}\n` : String(content.text),
    );
    expect(told.join("") === lines(0, 4000)).toBe(true);
  });

  it("is heard while a loop still runs, not only behind it", async () => {
    const answer = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "answer");
    const { text } = await run(
      `const { existsSync } = require("node:fs");
      console.log("does anybody hear?");
      for (const end = Date.now() + 10_000; !existsSync("${answer}") && Date.now() < end; );
      console.log(existsSync("${answer}") ? "yes" : "no");`,
      ({ content }) => {
        if (content.name === "stdout") writeFileSync(answer, "");
      },
    );
    expect(text("stdout").trim().split("\n").at(-1)).toBe("yes");
  });

  it("is cut in a cell that prints without end, which says so, and the failure behind it is kept", async () => {
    const { status, text } = await run(
      "for (let i = 0; i < 30; i++) console.log('x'.repeat(1_000_000));\nthrow new RangeError('too ' + 'thick');",
    );
    expect(status).toBe("error");
    expect(text("stdout").length).toBeGreaterThan(9_900_000);
    expect(text("stdout").length).toBeLessThanOrEqual(10_000_000);
    expect(text("stderr")).toContain("The rest of this cell's output is cut");
    expect(text("stderr")).toContain("RangeError: too thick");
  });

  it("is cut alike when it goes to stderr, and the failure behind it is kept", async () => {
    const { text } = await run(
      "for (let i = 0; i < 30; i++) console.error('x'.repeat(1_000_000));\nthrow new RangeError('too ' + 'thick');",
    );
    expect(text("stderr").length).toBeLessThan(10_100_000);
    expect(text("stderr").match(/The rest of this cell's output is cut/g)).toHaveLength(1);
    expect(text("stderr")).toContain("RangeError: too thick");
  });

  it("without end can be interrupted, and the kernel is there for the next cell", async () => {
    const endless = 'while (true) { console.log("a"); console.error("b"); }';
    setTimeout(() => kernel.interrupt(), 3000);
    expect((await run(endless)).status).toBe("error");
    expect((await run("console.log(process.memoryUsage().rss);")).text("stdout")).toMatch(/^\d+\n$/);
  });

  it("leaves out displays of more than 20 MB together and says so; what follows is shown", async () => {
    const { status, news, text } = await run(
      [
        'import { display } from "tslab";',
        'for (let i = 0; i < 3; i++) display.raw("text/plain", "x".repeat(9_000_000));',
        'display.raw("application/json", { wide: "x".repeat(120_000_000) } as any);',
        'display.text("small");',
        'console.log("after");',
      ].join("\n"),
    );
    expect(status).toBe("ok");
    const sizes = news.filter(({ content }) => content.data).map(({ content }) => JSON.stringify(content.data).length);
    expect(sizes.filter((size) => size > 8_000_000)).toHaveLength(2);
    expect(sizes.filter((size) => size < 100)).toHaveLength(1);
    expect(text("stderr").match(/A display of 9\.0 MB is left out: a cell may show 20 MB/g)).toHaveLength(1);
    expect(text("stderr")).toContain("2 displays of this cell, 129.0 MB, are left out.");
    expect(text("stdout")).toBe("after\n");
  });

  it("counts updates of a display too", async () => {
    const { news, text } = await run(
      [
        'import { newDisplay } from "tslab";',
        "const shown = newDisplay();",
        'for (let i = 0; i < 40; i++) shown.raw("text/plain", "y".repeat(1_000_000));',
      ].join("\n"),
    );
    const kinds = news.filter(({ content }) => content.data).map(({ header }) => header.msg_type);
    expect(new Set(kinds)).toEqual(new Set(["display_data", "update_display_data"]));
    expect(kinds).toHaveLength(19);
    expect(text("stderr")).toContain("21 displays of this cell, 21.0 MB, are left out.");
  });

  it("keeps the last words before a cell ends the kernel", async () => {
    const brief = await startKernel({ folder: resolve("notebooks") });
    const { status, text } = await run("console.log('one');\nconsole.log('two');\nprocess.exit(0);", () => {}, brief);
    expect(status).toBe("died");
    expect(text("stdout")).toBe("one\ntwo\n");
  });
});
