import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Channels, channelsOf, type Page, pageOf } from "./page";
import { projectWith } from "./project";

const V1 = "v1.kernel.websocket.jupyter.org";
const { notebooks } = projectWith("every-output", "fails");
const said: string[] = [];
let server: NotebookServer;
let page: Page;
let one: Channels;
let other: Channels;
beforeAll(async () => {
  server = await serveNotebooks({ folder: notebooks, say: (line) => said.push(line) });
  page = pageOf(server);
  one = await page.open("every-output.ipynb", V1);
  other = await channelsOf(server, one.kernelId);
  await one.run("const ready = true;");
}, 60_000);
afterAll(() => server.close());

const types = (news: readonly { header: { msg_type: string } }[]): string[] =>
  news.map(({ header }) => header.msg_type);

// What the Jupyter protocol asks for, which the kernel alone does not do:
// https://jupyter-client.readthedocs.io/en/stable/messaging.html
describe("the bridge to the kernel", () => {
  it("speaks both sub-protocols", () => expect([one.socket.protocol, other.socket.protocol]).toEqual([V1, ""]));

  it("brackets a cell with busy and idle, repeats its code with a numeric count, and tells every page", async () => {
    const { reply, news } = await one.run("console.log('a');");
    expect(types(news)).toEqual(["status", "execute_input", "stream", "status"]);
    expect(news[1].content).toEqual({ code: "console.log('a');", execution_count: reply.content.execution_count });
    expect(reply.content).toMatchObject({ status: "ok", execution_count: expect.any(Number) });
    const id = news[0].parent_header.msg_id;
    await other.until(
      ({ content, parent_header }) => parent_header.msg_id === id && content.execution_state === "idle",
    );
    expect(types(other.heard.filter(({ parent_header }) => parent_header.msg_id === id))).toEqual([
      "status",
      "execute_input",
      "stream",
      "status",
    ]);
  });

  it("makes an error message of what a failing cell printed, and shows it once", async () => {
    const { reply, news } = await one.run("console.error('a notice'); throw new RangeError('too thick');");
    expect(reply.content).toMatchObject({ status: "error", ename: "RangeError", evalue: "too thick" });
    expect(reply.content.traceback).toContain("RangeError: too thick");
    const streams = news.filter(({ header }) => header.msg_type === "stream");
    expect(streams.map(({ content }) => content.text)).toEqual(["a notice\n"]);
    const errors = news.filter(({ header }) => header.msg_type === "error");
    expect(errors.map(({ content }) => content.evalue)).toEqual(["too thick"]);
    const compile = await one.run('const massG: number = "heavy";');
    expect(compile.reply.content).toMatchObject({
      ename: "CompileError",
      evalue: "massG must be a number, got text",
    });
  });

  it("passes on what a cell prints to stderr while it still runs", async () => {
    const id = one.send("execute_request", {
      code: "console.error('early'); await new Promise((done) => setTimeout(done, 1500));",
    });
    const early = await one.until(
      (message) => message.content.text === "early\n" && message.parent_header.msg_id === id,
    );
    expect(
      one.heard.some(({ header, parent_header }) => header.msg_type === "execute_reply" && parent_header.msg_id === id),
    ).toBe(false);
    expect(early.content.name).toBe("stderr");
    await one.until(({ header, parent_header }) => header.msg_type === "execute_reply" && parent_header.msg_id === id);
  });

  it("aborts what waits behind a failure, and runs what comes after it at once", async () => {
    const ids = ["throw new Error('first');", "console.log('second');", "console.log('third');"].map((code) =>
      one.send("execute_request", { code, stop_on_error: true }),
    );
    const replies = await Promise.all(
      ids.map((id) =>
        one.until(({ header, parent_header }) => header.msg_type === "execute_reply" && parent_header.msg_id === id),
      ),
    );
    expect(replies.map(({ content }) => content.status)).toEqual(["error", "aborted", "aborted"]);
    expect((await one.run("console.log('after');")).reply.content.status).toBe("ok");
  });

  it("runs cells of two pages one after another", async () => {
    const [slow, quick] = await Promise.all([
      one.run("await new Promise((done) => setTimeout(done, 400)); console.log('slow');"),
      other.run("console.log('quick');"),
    ]);
    expect(quick.reply.content.execution_count).toBe((slow.reply.content.execution_count as number) + 1);
  });

  it("turns JSON that came as text into values", async () => {
    const { news } = await one.run(
      'import { display } from "tslab"; display.raw("application/vnd.plotly.v1+json", \'{"data":[]}\');',
    );
    const shown = news.find(({ header }) => header.msg_type === "display_data");
    expect(shown?.content.data).toEqual({ "application/vnd.plotly.v1+json": { data: [] } });
  });

  it.each([
    [
      "kernel_info_request",
      {},
      "kernel_info_reply",
      { status: "ok", implementation: "tslab", language_info: { name: "typescript" } },
    ],
    ["comm_info_request", {}, "comm_info_reply", { status: "ok", comms: {} }],
    [
      "history_request",
      { output: false, raw: true, hist_access_type: "tail" },
      "history_reply",
      { status: "ok", history: [] },
    ],
    ["is_complete_request", { code: "if (true) {" }, "is_complete_reply", { status: "incomplete" }],
    ["complete_request", { code: "Math.hypo", cursor_pos: 9 }, "complete_reply", { status: "ok", matches: ["hypot"] }],
    [
      "inspect_request",
      { code: "Math.sqrt", cursor_pos: 8, detail_level: 0 },
      "inspect_reply",
      { status: "ok", found: true },
    ],
  ])("answers %s", async (type, content, replyType, expected) => {
    const id = one.send(type, content);
    const reply = await one.until(({ channel, parent_header }) => channel === "shell" && parent_header.msg_id === id);
    expect(reply.header.msg_type).toBe(replyType);
    expect(reply.content).toMatchObject(expected);
  });

  it("interrupts an endless loop, by message and by request", async () => {
    for (const how of ["message", "request"]) {
      const running = one.run("while (true) {}");
      await one.until(
        ({ header, content }) => header.msg_type === "execute_input" && content.code === "while (true) {}",
      );
      await new Promise((done) => setTimeout(done, 300));
      if (how === "message") one.send("interrupt_request", {}, "control");
      else await page.ask("POST", `/api/kernels/${one.kernelId}/interrupt`);
      expect((await running).reply.content.status).toBe("error");
      one.heard.length = 0;
    }
    expect((await one.run("ready")).news.some(({ content }) => content.text === "true\n")).toBe(true);
  });

  it("cuts the output of a cell that prints without end", async () => {
    const { news } = await one.run("for (let i = 0; i < 30; i++) console.log('x'.repeat(1_000_000));");
    const printed = news.reduce((sum, { content }) => sum + String(content.text ?? "").length, 0);
    expect(printed).toBeLessThan(11_000_000);
    expect(news.some(({ content }) => String(content.text).includes("rest of this cell's output is cut"))).toBe(true);
  });

  it.each(["log", "error"])("brings 50,000 lines of console.%s to every page, whole and in order", async (how) => {
    const { reply, news } = await one.run(`for (let i = 0; i < 50_000; i++) console.${how}(i);`);
    expect(reply.content.status).toBe("ok");
    const lines = Array.from({ length: 50_000 }, (_, line) => `${line}\n`).join("");
    const heard = (told: typeof news): string => told.map(({ content }) => content.text ?? "").join("");
    expect(heard(news) === lines).toBe(true);
    const id = reply.parent_header.msg_id;
    const elsewhere = (message: (typeof news)[number]): boolean =>
      message.parent_header.msg_id === id && message.channel === "iopub";
    await other.until((message) => elsewhere(message) && message.content.execution_state === "idle");
    expect(heard(other.heard.filter(elsewhere)) === lines).toBe(true);
  });

  it("leaves out displays of more than 20 MB together, and says so", async () => {
    const { reply, news } = await one.run(
      'import { display } from "tslab"; for (let i = 0; i < 60; i++) display.raw("text/plain", "x".repeat(2_000_000));',
    );
    expect(reply.content.status).toBe("ok");
    expect(JSON.stringify(news).length).toBeLessThan(20_100_000);
    const said = news.map(({ content }) => content.text ?? "").join("");
    expect(said).toContain("A display of 2.0 MB is left out: a cell may show 20 MB.");
    expect(said).toContain("51 displays of this cell, 102.0 MB, are left out.");
  });

  it("keeps the text of a display with broken JSON, and runs the next cell", async () => {
    const { reply, news } = await one.run(
      'import { display } from "tslab"; display.raw("application/vnd.plotly.v1+json", "{ broken");',
    );
    expect(reply.content.status).toBe("ok");
    const shown = news.find(({ header }) => header.msg_type === "display_data");
    expect(shown?.content.data).toEqual({ "application/vnd.plotly.v1+json": "{ broken", "text/plain": "{ broken" });
    expect((await one.run("1 + 1")).reply.content.status).toBe("ok");
  });

  it("restarts when asked: what was defined is gone, the count begins anew, the pages stay connected", async () => {
    const running = one.run("await new Promise((done) => setTimeout(done, 60_000));");
    await new Promise((done) => setTimeout(done, 300));
    expect((await page.ask("POST", `/api/kernels/${one.kernelId}/restart`)).status).toBe(200);
    expect((await running).reply.content).toMatchObject({
      status: "error",
      evalue: "the kernel was restarted while this cell ran",
    });
    const { reply } = await one.run("typeof ready");
    expect(reply.content.status, "the compiler no longer knows it").toBe("error");
    expect(reply.content.execution_count).toBe(1);
  });

  it("starts a crashed kernel again, with a notice to the pages and the terminal", async () => {
    one.heard.length = 0;
    const crashing = one.run("process.exit(1);");
    expect((await crashing).reply.content).toMatchObject({
      status: "error",
      evalue: expect.stringContaining("the kernel ended while this cell ran"),
    });
    await one.until(({ content }) => content.execution_state === "restarting");
    expect(said.join("\n")).toContain("A kernel ended by itself and is started again");
    expect((await one.run("1 + 1")).reply.content.status).toBe("ok");
  });
});

describe("kernels and sessions", () => {
  it("give each notebook a kernel, the same to two pages, and end it when asked", async () => {
    const again = await page.ask("POST", "/api/sessions", { path: "every-output.ipynb" });
    expect(again.json.kernel.id).toBe(one.kernelId);
    const second = await page.open("fails.ipynb");
    expect(second.kernelId).not.toBe(one.kernelId);
    await second.run("1");
    expect((await page.ask("GET", "/api/kernels")).json).toHaveLength(2);
    expect((await page.ask("GET", "/api/status")).json).toEqual({ kernels: 2, connections: 3 });
    const { json: sessions } = await page.ask("GET", "/api/sessions");
    const mine = sessions.find(({ path }: { path: string }) => path === "fails.ipynb");
    expect((await page.ask("DELETE", `/api/sessions/${mine.id}`)).status).toBe(204);
    expect((await page.ask("GET", "/api/kernels")).json).toHaveLength(1);
    expect((await page.ask("GET", `/api/kernels/${second.kernelId}`)).status).toBe(404);
  });

  it("end kernels that nobody uses, and all of them with the server", async () => {
    const { notebooks: folder } = projectWith("fails");
    const brief = await serveNotebooks({ folder, idleLimitMin: 1.5 / 60 });
    const channels = await pageOf(brief).open("fails.ipynb");
    await channels.run("1");
    channels.close();
    await expect
      .poll(async () => (await pageOf(brief).ask("GET", "/api/kernels")).json, { timeout: 15_000 })
      .toEqual([]);
    await brief.close();
  });
});
