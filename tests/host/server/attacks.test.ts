import { existsSync, symlinkSync, writeFileSync } from "node:fs";
import { request as httpRequest } from "node:http";
import { connect } from "node:net";
import { join } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { WebSocket } from "ws";
import { channelsOf, type Page, pageOf } from "./page";
import { projectWith } from "./project";

const { folder, notebooks } = projectWith("every-output");
writeFileSync(join(folder, "secret.ipynb"), '{"nbformat":4,"cells":[]}');
symlinkSync(join(folder, "secret.ipynb"), join(notebooks, "linked.ipynb"));
symlinkSync(folder, join(notebooks, "up"));

let server: NotebookServer;
let page: Page;
beforeAll(async () => {
  server = await serveNotebooks({ folder: notebooks });
  page = pageOf(server);
});
afterAll(() => server.close());

/** A request as it is, with none of fetch's own mending of paths and headers. */
function raw(
  path: string,
  headers: Record<string, string> = {},
  method = "GET",
  body: unknown = undefined,
): Promise<{ status: number; text: string; headers: NodeJS.Dict<string | string[]> }> {
  return new Promise((done, fail) => {
    const sent = httpRequest({ host: "127.0.0.1", port: server.port, path, method, headers }, (answer) => {
      let text = "";
      answer.on("data", (part) => {
        text += part;
      });
      answer.on("end", () => done({ status: answer.statusCode ?? 0, text, headers: answer.headers }));
    });
    sent.on("error", fail);
    sent.end(body === undefined ? undefined : JSON.stringify(body));
  });
}

const token = (): Record<string, string> => ({ Authorization: `token ${server.token}` });

function tryUpgrade(path: string, headers: Record<string, string>): Promise<string> {
  return new Promise((done) => {
    const socket = new WebSocket(`ws://127.0.0.1:${server.port}${path}`, { headers });
    socket.on("open", () => {
      socket.terminate();
      done("open");
    });
    socket.on("error", (error) => done(error.message));
  });
}

describe("attacks", () => {
  it.each([
    "/",
    "/open/every-output.ipynb",
    "/log",
    "/log/check",
    "/api/contents/",
    "/api/kernels",
    "/assets/notebook.js",
    "/api",
  ])("%s without a token is refused", async (path) => expect((await raw(path)).status).toBe(403));

  it.each([
    ["a wrong token", { Authorization: "token 0000" }],
    ["a wrong cookie", { Cookie: "slabwright=0000" }],
    ["an empty token", { Authorization: "token " }],
  ])("%s is refused", async (_, headers) => expect((await raw("/api/kernels", headers)).status).toBe(403));

  it("the token opens the page by cookie, which scripts cannot read and other sites cannot send", async () => {
    const { status, headers, text } = await raw(`/?token=${server.token}`);
    expect(status).toBe(200);
    expect(text).not.toContain(server.token);
    const [cookie] = headers["set-cookie"] as string[];
    expect(cookie).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/);
    expect((await raw("/api/kernels", { Cookie: cookie.split(";")[0] })).status).toBe(200);
  });

  it("a name that was pointed at this machine is refused, as host and as origin", async () => {
    for (const host of [
      "evil.example",
      `evil.example:${server.port}`,
      "127.0.0.1",
      `127.0.0.1.evil.example:${server.port}`,
    ]) {
      expect((await raw("/api/kernels", { ...token(), Host: host })).status, host).toBe(403);
    }
    for (const origin of ["http://evil.example", "null", `https://127.0.0.1:${server.port}`, "http://127.0.0.1:1"]) {
      expect((await raw("/api/kernels", { ...token(), Origin: origin })).status, origin).toBe(403);
    }
    expect((await raw("/api/kernels", { ...token(), Origin: server.origin })).status).toBe(200);
    expect((await raw("/api/kernels", { ...token(), "Sec-Fetch-Site": "cross-site" })).status).toBe(403);
    expect((await raw(`/?token=${server.token}`, { Host: "evil.example" })).status).toBe(403);
  });

  it("a WebSocket without a token, or from another origin, is refused", async () => {
    const { json } = await page.ask("POST", "/api/sessions", { path: "every-output.ipynb" });
    const path = `/api/kernels/${json.kernel.id}/channels`;
    expect(await tryUpgrade(path, {})).toContain("403");
    expect(await tryUpgrade(path, { ...token(), Origin: "http://evil.example" })).toContain("403");
    expect(await tryUpgrade(path, { ...token(), Host: "evil.example" })).toContain("403");
    expect(await tryUpgrade("/api/kernels/none/channels", token())).toContain("404");
    expect(await tryUpgrade(path, { ...token(), Origin: server.origin })).toBe("open");
  });

  it.each([
    "/api/contents/../secret.ipynb",
    "/api/contents/%2e%2e/secret.ipynb",
    "/api/contents/%2e%2e%2fsecret.ipynb",
    "/api/contents/%252e%252e/secret.ipynb",
    "/api/contents/..%5csecret.ipynb",
    "/api/contents/up/secret.ipynb",
    "/api/contents/linked.ipynb",
    "/api/contents/every-output.ipynb%00.txt",
    "/open/../secret.ipynb",
    "/open/up/secret.ipynb",
    "/assets/../package.json",
    "/assets/%2e%2e/stamp",
    "/assets/..%2findex.js",
    "/api/contents/%ff",
  ])("%s does not lead out", async (path) => {
    const { status, text } = await raw(path, token());
    expect([400, 404]).toContain(status);
    expect(text).not.toContain("nbformat");
  });

  it("nothing is written, moved or removed outside either", async () => {
    const content = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] };
    for (const path of ["%2e%2e/new.ipynb", "up/new.ipynb"]) {
      const there = decodeURIComponent(path);
      const asked: [string, string, unknown][] = [
        ["PUT", `/api/contents/${path}`, { type: "notebook", content }],
        ["PATCH", "/api/contents/every-output.ipynb", { path: there }],
        ["POST", `/api/contents/${path.split("/")[0]}`, { type: "notebook" }],
        ["POST", "/api/sessions", { path: there }],
      ];
      for (const [method, address, body] of asked) {
        expect((await raw(address, token(), method, body)).status, `${method} ${address}`).toBe(404);
      }
    }
    expect((await page.ask("DELETE", "/api/contents/up/secret.ipynb")).status).toBe(404);
    expect(existsSync(join(folder, "new.ipynb"))).toBe(false);
    expect(existsSync(join(folder, "secret.ipynb"))).toBe(true);
  });

  it("a link cannot be made into a way to overwrite what it points at", async () => {
    const content = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] };
    expect((await page.ask("PUT", "/api/contents/linked.ipynb", { type: "notebook", content })).status).toBe(404);
  });

  it("an upload of 200 MB is refused without being read, said beforehand or not", async () => {
    const before = process.memoryUsage().rss;
    for (const headers of [{ "Content-Length": "200000000" }, { "Transfer-Encoding": "chunked" }]) {
      const status = await new Promise<number>((done) => {
        const sent = httpRequest(
          {
            host: "127.0.0.1",
            port: server.port,
            path: "/api/contents/every-output.ipynb",
            method: "PUT",
            headers: { ...token(), ...headers },
          },
          (answer) => {
            answer.resume();
            done(answer.statusCode ?? 0);
            sent.destroy();
          },
        );
        sent.on("error", () => done(0)); // too late to matter once an answer came
        const part = Buffer.alloc(1_000_000, " ");
        let left = 200;
        const more = (): void => {
          while (left-- > 0 && !sent.destroyed) if (!sent.write(part)) return void sent.once("drain", more);
          sent.end();
        };
        more();
      });
      expect(status).toBe(413);
    }
    expect(process.memoryUsage().rss - before).toBeLessThan(200_000_000);
    expect((await page.ask("GET", "/api/contents/every-output.ipynb?content=0")).status).toBe(200);
  });

  it.each(["{", "[]", "null", '"x"', "\u0000"])("the body %j is refused", async (body) => {
    const answer = await fetch(`${server.origin}/api/sessions`, { method: "POST", headers: token(), body });
    expect(answer.status).toBe(400);
  });

  it("malformed frames close their connection, and the kernel answers the next page", async () => {
    const { json } = await page.ask("POST", "/api/sessions", { path: "every-output.ipynb" });
    const bad: (string | Buffer)[] = [
      "",
      "{",
      "null",
      '{"channel":"shell"}',
      Buffer.alloc(0),
      Buffer.alloc(7),
      Buffer.alloc(64, 255),
      Buffer.alloc(1000),
    ];
    for (const frame of bad) {
      const channels = await channelsOf(server, json.kernel.id);
      channels.socket.send(frame);
      const code = await new Promise((done) => channels.socket.once("close", done));
      expect(code).toBe(1007);
    }
    const huge = await channelsOf(server, json.kernel.id);
    huge.socket.on("error", () => {});
    huge.socket.send(Buffer.alloc(21_000_000));
    expect(await new Promise((done) => huge.socket.once("close", done))).toBe(1009);
    const unknown = await channelsOf(server, json.kernel.id);
    for (const type of ["shutdown_request", "debug_request", "comm_open", "input_reply", "execute_reply"])
      unknown.send(type, {});
    expect((await unknown.run("1 + 1")).reply.content.status).toBe("ok");
    unknown.close();
  }, 60_000);

  it("1,000 connections at once do not keep the owner out", async () => {
    const idle = Array.from({ length: 1000 }, () => connect(server.port, "127.0.0.1").on("error", () => {}));
    await new Promise((done) => setTimeout(done, 1000));
    const open = idle.filter((socket) => !socket.destroyed && socket.readyState === "open").length;
    expect(open).toBeLessThanOrEqual(256);
    for (const socket of idle) socket.destroy();
    await expect.poll(async () => (await page.ask("GET", "/api/status")).status, { timeout: 10_000 }).toBe(200);
    const sockets = await Promise.all(Array.from({ length: 100 }, () => tryUpgradeKept("/api/events/subscribe")));
    expect(sockets.filter(Boolean).length).toBeLessThanOrEqual(64);
    for (const socket of sockets) socket?.terminate();
  }, 30_000);

  it("guessing tokens is stopped after twenty tries, and the right one is served all the same", async () => {
    const tried = await serveNotebooks({ folder: notebooks });
    const ask = async (guess: string): Promise<number> =>
      (await fetch(`${tried.origin}/api`, { headers: { Authorization: `token ${guess}` } })).status;
    for (let guess = 0; guess < 20; guess++) expect(await ask(String(guess))).toBe(403);
    expect(await ask("again")).toBe(429);
    expect(await ask(tried.token)).toBe(200);
    await tried.close();
  });

  it("more than 3,000 requests in ten seconds are refused", async () => {
    const flooded = await serveNotebooks({ folder: notebooks });
    const statuses = new Set<number>();
    for (let round = 0; round < 32; round++) {
      const answers = await Promise.all(
        Array.from({ length: 100 }, () =>
          fetch(`${flooded.origin}/api`, { headers: { Authorization: `token ${flooded.token}` } }),
        ),
      );
      for (const answer of answers) statuses.add(answer.status);
    }
    expect([...statuses].sort()).toEqual([200, 429]);
    await flooded.close();
  }, 60_000);

  it("every page forbids scripts that are not the server's own, frames and other origins", async () => {
    const { headers } = await raw("/", token());
    const policy = String(headers["content-security-policy"]);
    for (const rule of [
      "default-src 'none'",
      "script-src 'self'",
      "frame-ancestors 'none'",
      "base-uri 'none'",
      "connect-src 'self'",
    ])
      expect(policy).toContain(rule);
    expect(policy).not.toMatch(/script-src[^;]*unsafe/);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["access-control-allow-origin"]).toBeUndefined();
  });

  it("a name with markup is shown as text", async () => {
    const evil = "a'onclick='x&b.ipynb";
    writeFileSync(
      join(notebooks, evil),
      JSON.stringify({
        nbformat: 4,
        nbformat_minor: 5,
        metadata: {},
        cells: [
          {
            id: "a",
            cell_type: "markdown",
            metadata: {},
            source: "# <script>alert(1)</script>\n\n<img src=x onerror=alert(1)>",
          },
        ],
      }),
    );
    const { text } = await raw("/", token());
    expect(text).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
    expect(text).not.toMatch(/<script>alert|<img|'onclick='/);
  });

  it("listens on the loopback interface only, and says so plainly when its port is taken", async () => {
    await expect(serveNotebooks({ folder: notebooks, port: server.port })).rejects.toThrow(
      `port ${server.port} is taken by another program; choose another with --port`,
    );
    expect(server.origin).toBe(`http://127.0.0.1:${server.port}`);
  });
});

function tryUpgradeKept(path: string): Promise<WebSocket | null> {
  return new Promise((done) => {
    const socket = new WebSocket(`ws://127.0.0.1:${server.port}${path}`, { headers: token() });
    socket.on("open", () => done(socket));
    socket.on("error", () => done(null));
  });
}
