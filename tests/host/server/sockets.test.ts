import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Channels, channelsOf, type Page, pageOf } from "./page";
import { projectWith } from "./project";

const V1 = "v1.kernel.websocket.jupyter.org";
const { notebooks } = projectWith("every-output", "fails");
let server: NotebookServer;
let page: Page;
let bystander: Channels;
beforeAll(async () => {
  server = await serveNotebooks({ folder: notebooks });
  page = pageOf(server);
  bystander = await page.open("fails.ipynb");
  await bystander.run("const mine = 'still here';");
}, 60_000);
afterAll(() => server.close());

/** That the server answers, and that another notebook's kernel has forgotten nothing. */
async function expectTheOthersLiveOn(): Promise<void> {
  expect((await page.ask("GET", "/api/status")).status).toBe(200);
  expect((await bystander.run("mine")).news.map(({ content }) => content.text)).toContain("still here\n");
}

const REQUESTS: readonly [string, Record<string, unknown>][] = [
  ["inspect_request", { code: "Math.sqrt", cursor_pos: 8, detail_level: 0 }],
  ["complete_request", { code: "Math.", cursor_pos: 5 }],
  ["kernel_info_request", {}],
  ["comm_info_request", {}],
  ["history_request", {}],
  ["interrupt_request", {}],
  ["shutdown_request", {}],
  ["execute_request", { code: "1 + 1", stop_on_error: true }],
];

describe("a page's socket", () => {
  it.each([
    ["its session is ended", undefined],
    ["its session is ended", V1],
    ["its kernel is ended", V1],
  ])("may send anything after %s (%s); the others live on", async (how, protocol) => {
    const channels = await page.open("every-output.ipynb", protocol);
    await channels.run("1");
    const { json: open } = await page.ask("GET", "/api/sessions");
    const { id } = open.find(({ kernel }: { kernel: { id: string } }) => kernel.id === channels.kernelId);
    const address = how.includes("kernel") ? `/api/kernels/${channels.kernelId}` : `/api/sessions/${id}`;
    expect((await page.ask("DELETE", address)).status).toBe(204);
    for (const [type, content] of REQUESTS)
      for (const channel of ["shell", "control", "stdin"] as const) channels.send(type, content, channel);
    const late = channels.send("execute_request", { code: "2", stop_on_error: true });
    const reply = await channels.until(({ header, parent_header }) => {
      return header.msg_type === "execute_reply" && parent_header.msg_id === late;
    });
    expect(reply.content.status).toBe("aborted");
    expect(channels.heard.at(-1)?.content).toEqual({ execution_state: "dead" });
    await expectTheOthersLiveOn();
    channels.close();
  });

  // as when a completion is asked for again and again while the start page stops the kernel
  it("may send while its kernel is being ended, started and ended again", async () => {
    for (let round = 0; round < 2; round++) {
      const channels = await page.open("every-output.ipynb");
      const asking = setInterval(() => {
        channels.send("inspect_request", { code: "Math.sqrt", cursor_pos: 8, detail_level: 0 });
        channels.send("execute_request", { code: "1" });
      }, 10);
      if (round === 0) await channels.run("1");
      const sessions = page.ask("GET", "/api/sessions");
      const [ended, listed] = await Promise.all([
        page.ask("DELETE", `/api/kernels/${channels.kernelId}`),
        sessions,
        page.ask("GET", "/api/sessions"),
      ]);
      await new Promise((done) => setTimeout(done, 200));
      clearInterval(asking);
      expect([ended.status, listed.status]).toEqual([204, 200]);
      channels.close();
    }
    await expectTheOthersLiveOn();
  });

  it("lists sessions while one of their kernels is on its way out", async () => {
    const channels = await page.open("every-output.ipynb");
    await channels.run("setInterval(() => {}, 1000);");
    const ending = page.ask("DELETE", `/api/kernels/${channels.kernelId}`);
    const seen = new Set<number>();
    for (let look = 0; look < 20; look++) seen.add((await page.ask("GET", "/api/sessions")).status);
    await ending;
    expect([...seen]).toEqual([200]);
    channels.close();
  });

  it("is closed when it sends what is no message, in whatever script that is written", async () => {
    for (const frame of [
      `${"é".repeat(200)}`,
      `{"${"日本".repeat(100)}`,
      "\u0000",
      `{"channel":"${"é".repeat(200)}"}`,
    ]) {
      const channels = await channelsOf(server, bystander.kernelId);
      const closed = new Promise((done) => channels.socket.once("close", done));
      channels.socket.send(frame);
      expect(await closed, frame.slice(0, 20)).toBe(1007);
    }
    await expectTheOthersLiveOn();
  });

  it("is told when a request cannot be passed on, and the kernel serves the next", async () => {
    const channels = await channelsOf(server, bystander.kernelId);
    const deep = `${"[".repeat(50_000)}${"]".repeat(50_000)}`;
    const header = {
      msg_id: "deep",
      msg_type: "execute_request",
      session: "s",
      username: "",
      date: "",
      version: "5.3",
    };
    const message = { channel: "shell", header, parent_header: {}, metadata: {} };
    channels.socket.send(`${JSON.stringify(message).slice(0, -1)},"content":{"code":"1","deep":${deep}}}`);
    const answer = await channels.until(
      ({ header, parent_header }) => header.msg_type === "execute_reply" && parent_header.msg_id === "deep",
    );
    expect(answer.content).toMatchObject({ status: "error", evalue: expect.stringContaining("could not be asked") });
    await expectTheOthersLiveOn();
    channels.close();
  });
});
