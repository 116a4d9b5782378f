import { execFileSync } from "node:child_process";
import { createHmac } from "node:crypto";
import { mkdtempSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { encode, execute, type Kernel, type Message, request, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  appears,
  type Bystander,
  bystander,
  connectionFileOf,
  PORTS,
  type RegisteredKernel,
  startRegistered,
  until,
} from "./wire";

const folder = resolve("notebooks");
const ask = (code: string): Message => request("shell", "execute_request", { code, silent: false }, "a-session");

// A kernel of whoever's Jupyter program listens on TCP ports, which everybody on the machine can reach.
describe("a registered kernel, over TCP", () => {
  let kernel: RegisteredKernel;
  let stranger: Bystander;
  beforeAll(async () => {
    kernel = await startRegistered(folder);
    stranger = bystander(kernel.connection);
    await until(() => {
      void stranger.shell
        .send(encode(request("shell", "kernel_info_request", {}, "s"), kernel.connection.key))
        .catch(() => {});
      return (
        stranger.heard.some((frame) => frame.includes("kernel_info_reply")) &&
        stranger.heard.some((frame) => frame.includes('"idle"'))
      );
    }, "an answer");
    // from its first cell on, what the kernel prints is sent to everybody who listens
    await stranger.shell.send(encode(ask("console.error('the first cell');"), kernel.connection.key));
    await until(() => stranger.heard.some((frame) => frame.includes("the first cell")), "the first cell");
  }, 60_000);
  afterAll(() => {
    stranger?.close();
    kernel?.child.kill("SIGKILL");
  });

  it("never tells the right signature of a message that came with a wrong one, and does not run it", async () => {
    const mark = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "was-here");
    const [delimiter, , ...parts] = encode(ask(`require("node:fs").writeFileSync(${JSON.stringify(mark)}, "");`), "");
    const right = parts
      .reduce((hash, part) => hash.update(part), createHmac("sha256", kernel.connection.key))
      .digest("hex");
    await stranger.shell.send([delimiter, "0".repeat(64), ...parts]);
    const ran = await appears(mark, 1500);
    const told = [...stranger.heard, kernel.printed()].join("\n");
    expect(told).not.toContain(right);
    expect(told, "nor says a word that a stranger has put there").not.toContain("0".repeat(64));
    expect(ran).toBe(false);
    // the very same message with its right signature runs: it was refused for its signature alone
    await stranger.shell.send([delimiter, right, ...parts]);
    expect(await appears(mark, 10_000)).toBe(true);
  });

  it("drops what is no message without a word, and answers the next that is one", async () => {
    const [delimiter, ...rest] = encode(ask("1"), kernel.connection.key);
    const before = stranger.heard.length;
    const bad = [
      ["not a message, whatever-it-says"],
      [delimiter],
      [delimiter, rest[0]],
      [delimiter, ...rest.slice(0, 3)],
      [delimiter, rest[0], "{", "{", "{", "{ whatever-it-says"],
      [delimiter, "whatever-it-says", ...rest.slice(1)],
      ["", ""],
    ];
    for (const frames of bad) await stranger.shell.send(frames);
    await new Promise((done) => setTimeout(done, 500));
    expect(stranger.heard.slice(before)).toEqual([]);
    expect(kernel.printed()).not.toContain("whatever-it-says");
    await stranger.shell.send(encode(ask("console.log('still ' + 'here');"), kernel.connection.key));
    await until(() => stranger.heard.some((frame) => frame.includes("still here")), "the next cell");
  });

  // jupyter-client documentation, "The wire protocol": the signature covers the four JSON parts; buffers may follow.
  it("accepts buffers behind a signed message, which the signature does not cover", async () => {
    await stranger.shell.send([...encode(ask("console.log('with ' + 'buffers');"), kernel.connection.key), "a buffer"]);
    await until(() => stranger.heard.some((frame) => frame.includes("with buffers")), "the cell with buffers");
  });
});

const linux = process.platform === "linux";
describe.skipIf(!linux)("a kernel of the host's own", () => {
  const kernels: Kernel[] = [];
  const started = async (transport?: "tcp"): Promise<Kernel> => {
    const kernel = await startKernel({ folder, transport });
    kernels.push(kernel);
    return kernel;
  };
  afterAll(() => Promise.all(kernels.map((kernel) => kernel.stop())));
  const say = (kernel: Kernel, word: string): Promise<unknown> =>
    execute(kernel, { code: `console.log("${word}");`, limitMs: 20_000, onNews: () => {} });

  it("listens on no port, only on sockets in a folder that is closed to others", async () => {
    const kernel = await started();
    const { path, connection } = connectionFileOf(kernel.pid);
    expect(connection.transport).toBe("ipc");
    expect((statSync(dirname(path)).mode & 0o777).toString(8)).toBe("700");
    for (const port of PORTS) {
      const socket = `${connection.ip}-${connection[port]}`;
      expect(dirname(socket)).toBe(dirname(path));
      expect(statSync(socket).isSocket(), socket).toBe(true);
    }
  });

  const root = process.getuid?.() === 0;
  if (!root) console.warn("skipped: another user of this machine: only root can try as somebody else");
  it.skipIf(!root)("gives another user of this machine nothing", async () => {
    const kernel = await started();
    const { path, connection } = connectionFileOf(kernel.pid);
    const sockets = PORTS.map((port) => `${connection.ip}-${connection[port]}`);
    const script = `
      const { connect } = require("node:net");
      const { readFileSync, readdirSync } = require("node:fs");
      const attempt = (work) => { try { work(); return "done"; } catch (error) { return error.code; } };
      const told = [attempt(() => readFileSync(${JSON.stringify(path)})), attempt(() => readdirSync(${JSON.stringify(dirname(path))}))];
      const tries = ${JSON.stringify(sockets)}.map((path) => new Promise((done) => {
        connect(path).on("connect", () => done("connected")).on("error", (error) => done(error.code));
      }));
      Promise.all(tries).then((codes) => { console.log(process.getuid(), ...told, ...codes); process.exit(); });`;
    const as = (uid?: number): string =>
      execFileSync(process.execPath, ["-e", script], { uid, gid: uid, cwd: "/", encoding: "utf8" }).trim();
    expect(as(65_534)).toBe(["65534", ...Array(7).fill("EACCES")].join(" "));
    expect(as(), "the owner's own tries do connect").toBe(
      ["0", "done", "done", ...Array(5).fill("connected")].join(" "),
    );
  });

  it("where only TCP is to be had, gives whoever lacks its keys nothing, neither outputs nor answers", async () => {
    const kernel = await started("tcp");
    const { connection } = connectionFileOf(kernel.pid);
    expect(connection.transport).toBe("tcp");
    const stranger = bystander(connection);
    // even one who has learned the key that signs
    void stranger.shell.send(encode(request("shell", "kernel_info_request", {}, "s"), connection.key)).catch(() => {});
    for (let round = 0; round < 5; round++) {
      await new Promise((done) => setTimeout(done, 200));
      await say(kernel, "a secret recipe");
    }
    expect(stranger.heard).toEqual([]);
    stranger.close();
  });
});
