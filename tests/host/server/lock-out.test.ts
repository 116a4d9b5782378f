import { request as httpRequest } from "node:http";
import { connect, type Socket } from "node:net";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { pageOf } from "./page";
import { projectWith } from "./project";

const { notebooks } = projectWith("every-output");
let server: NotebookServer;
let opened: Socket[] = [];
beforeEach(async () => {
  server = await serveNotebooks({ folder: notebooks });
});
afterEach(async () => {
  for (const socket of opened) socket.destroy();
  opened = [];
  vi.useRealTimers();
  await server.close();
});

function ask(path: string, headers: Record<string, string> = {}): Promise<{ status: number; cookie: string }> {
  return new Promise((done, fail) => {
    const sent = httpRequest({ host: "127.0.0.1", port: server.port, path, headers, agent: false }, (answer) => {
      answer.resume();
      const cookie = (answer.headers["set-cookie"]?.[0] ?? "").split(";")[0];
      answer.on("end", () => done({ status: answer.statusCode ?? 0, cookie }));
    });
    sent.on("error", fail);
    sent.end();
  });
}
const statusOf = async (path: string, headers?: Record<string, string>): Promise<number> =>
  (await ask(path, headers)).status;
const token = (): Record<string, string> => ({ Authorization: `token ${server.token}` });

/** The owner in each of the three ways to show who one is, with a cookie of before the attack and one of after it. */
async function ownerIsServed(cookie: string): Promise<void> {
  expect(await statusOf("/api/kernels", token())).toBe(200);
  expect(await statusOf("/api/kernels", { Cookie: cookie })).toBe(200);
  const entered = await ask(`/?token=${server.token}`);
  expect(entered.status).toBe(200);
  expect(await statusOf("/", { Cookie: entered.cookie })).toBe(200);
}

function halfOpen(words: string): Promise<Socket> {
  return new Promise((done) => {
    const socket = connect(server.port, "127.0.0.1");
    opened.push(socket);
    socket.on("error", () => {});
    socket.once("connect", () => {
      socket.write(words);
      done(socket);
    });
  });
}
const closed = (socket: Socket): Promise<void> =>
  new Promise((done) => {
    socket.resume();
    if (socket.destroyed) done();
    else socket.once("close", () => done());
  });

describe("nobody without the token shuts the owner out", () => {
  it("by twenty wrong tokens, in the header, the address or the cookie", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    const statuses: number[] = [];
    expect(await statusOf("/api", { Cookie: `slabwright-${server.port}=${"é".repeat(48)}` })).toBe(403);
    for (let guess = 0; guess < 20; guess++) {
      statuses.push(await statusOf("/api", { Authorization: `token ${guess}` }));
      statuses.push(await statusOf(`/?token=${guess}`));
      statuses.push(await statusOf("/", { Cookie: `slabwright-${server.port}=${guess}` }));
    }
    expect(new Set(statuses)).toEqual(new Set([403, 429]));
    expect(await statusOf("/api", { Authorization: "token again" })).toBe(429);
    await ownerIsServed(cookie);
  });

  it("by 25 frames of a foreign page", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    const frame = { "Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "iframe" };
    for (let at = 0; at < 25; at++) expect(await statusOf(`/?token=${at}`, frame)).toBe(403);
    expect(await statusOf(`/?token=${server.token}`, frame), "no frame is let in, not even with the token").toBe(403);
    await ownerIsServed(cookie);
  });

  it("by 3,100 requests without a token", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    for (let round = 0; round < 31; round++) {
      const statuses = await Promise.all(Array.from({ length: 100 }, () => fetch(`${server.origin}/api/kernels`)));
      for (const { status } of statuses) expect([403, 429]).toContain(status);
    }
    await ownerIsServed(cookie);
  }, 60_000);

  it("by 300 connections that are opened and left, silent or in the middle of their headers", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    for (let at = 0; at < 300; at++) await halfOpen(at % 2 ? "" : "GET / HTTP/1.1\r\nHost: ");
    await ownerIsServed(cookie);
    await Promise.all(opened.map(closed));
  }, 60_000);

  it("by upgrades that are refused and never hang up", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    const words = `GET /api/events/subscribe HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
    const sockets = await Promise.all(Array.from({ length: 300 }, () => halfOpen(words)));
    await ownerIsServed(cookie);
    await Promise.all(sockets.map(closed));
  }, 60_000);

  it("by cookies that another server of this machine has set under the same name", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    const name = cookie.split("=")[0];
    expect(await statusOf("/api/kernels", { Cookie: `${name}=x; ${name}=; ${cookie}; ${name}=y` })).toBe(200);
  });

  it("by a clock that is set back", async () => {
    vi.useFakeTimers({ toFake: ["Date"] });
    const { cookie } = await ask(`/?token=${server.token}`);
    for (let guess = 0; guess < 25; guess++) await statusOf("/api", { Authorization: `token ${guess}` });
    vi.setSystemTime(Date.now() - 86_400_000);
    await ownerIsServed(cookie);
  });

  it("by an address that no parser takes: it is refused like any other, without a stack in the terminal", async () => {
    const said: string[] = [];
    const other = await serveNotebooks({ folder: notebooks, say: (line) => said.push(line) });
    for (const path of ["//", "//:0/", "http://[/", "/?token=%ff", "/api/contents/%"]) {
      const status = await new Promise<string>((done) => {
        const socket = connect(other.port, "127.0.0.1");
        socket.once("data", (data) => {
          socket.destroy();
          done(String(data).split(" ")[1]);
        });
        socket.write(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${other.port}\r\n\r\n`);
      });
      expect(["400", "403"], path).toContain(status);
    }
    expect(said).toEqual([]);
    await other.close();
  });
});

describe("what opens the pages", () => {
  it("the cookie is a secret of its own: neither stands for the other", async () => {
    const { cookie } = await ask(`/?token=${server.token}`);
    const secret = cookie.split("=")[1];
    expect(secret.length).toBeGreaterThanOrEqual(32);
    expect(secret).not.toContain(server.token);
    expect(await statusOf("/api/kernels", { Cookie: cookie })).toBe(200);
    expect(await statusOf("/api/kernels", { Authorization: `token ${secret}` })).toBe(403);
    expect(await statusOf(`/?token=${secret}`)).toBe(403);
    expect(await statusOf("/api/kernels", { Cookie: `${cookie.split("=")[0]}=${server.token}` })).toBe(403);
  });

  it("one page that is opened twice keeps both", async () => {
    const [one, other] = [await ask(`/?token=${server.token}`), await ask(`/?token=${server.token}`)];
    expect((await pageOf(server).ask("GET", "/api")).status).toBe(200);
    for (const { cookie } of [one, other]) expect(await statusOf("/api", { Cookie: cookie })).toBe(200);
  });
});
