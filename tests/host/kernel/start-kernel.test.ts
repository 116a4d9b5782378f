import { execFile, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describeEnd, execute, startKernel } from "slabwright-host";
import { describe, expect, it } from "vitest";
import { connectionFileOf } from "./wire";

const folder = join(__dirname, "..", "notebooks");
const alive = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
};

describe("startKernel", () => {
  it("starts a kernel that knows its environment and its folder, and stops it without a trace", async () => {
    const kernel = await startKernel({ folder, environment: { SLABWRIGHT_KITCHEN: "elsewhere" } });
    const printed: unknown[] = [];
    const code = "console.log(process.env.SLABWRIGHT_KITCHEN, process.cwd());";
    const { status } = await execute(kernel, {
      code,
      limitMs: 20_000,
      onNews: (news) => printed.push(news.content.text),
    });
    expect(status).toBe("ok");
    expect(printed.join("")).toBe(`elsewhere ${folder}\n`);
    expect(alive(kernel.pid)).toBe(true);
    await kernel.stop();
    expect(alive(kernel.pid)).toBe(false);
    expect((await kernel.ended).signal ?? "asked").toMatch(/asked|SIGTERM/);
  });

  it("starts six at once on ports of their own", async () => {
    const kernels = await Promise.all([1, 2, 3, 4, 5, 6].map(() => startKernel({ folder })));
    expect(new Set(kernels.map(({ pid }) => pid)).size).toBe(6);
    await Promise.all(kernels.map((kernel) => kernel.stop()));
  }, 60_000);

  it("names a folder that is not there", async () => {
    await expect(startKernel({ folder: join(folder, "absent") })).rejects.toThrow("folder must exist");
  });

  it("gives up on a kernel that does not answer in time, and leaves no process", async () => {
    await expect(startKernel({ folder, startLimitMs: 1 })).rejects.toThrow("must answer within 1 ms");
  });

  it("says how a kernel ended", async () => {
    const kernel = await startKernel({ folder });
    process.kill(kernel.pid, "SIGKILL");
    expect(describeEnd(await kernel.ended)).toContain("signal SIGKILL");
    await kernel.stop();
  });

  // A host that is killed cannot stop its kernels: they must see that it is gone, even out of an endless loop.
  it("ends with its host even when the host is killed and the cell never stops", async () => {
    const script = `
      const { startKernel, execute } = require(${JSON.stringify(require.resolve("../../../kernel-lib/host"))});
      startKernel({ folder: ${JSON.stringify(folder)} }).then((kernel) => {
        execute(kernel, { code: "while (true) {}", limitMs: 1e6, onNews: () => {} });
        setTimeout(() => console.log(kernel.pid), 500);
      });`;
    const host = spawn(process.execPath, ["-e", script], { stdio: ["ignore", "pipe", "inherit"] });
    const pid = await new Promise<number>((done) => host.stdout.once("data", (text) => done(Number(text))));
    expect(alive(pid)).toBe(true);
    host.kill("SIGKILL");
    for (let tries = 0; tries < 100 && alive(pid); tries++) await new Promise((done) => setTimeout(done, 100));
    expect(alive(pid)).toBe(false);
  });

  it.skipIf(process.platform !== "linux")("does not grow while it has nothing to do", async () => {
    const kernel = await startKernel({ folder });
    const threads = (): number =>
      Number(/Threads:\s*(\d+)/.exec(readFileSync(`/proc/${kernel.pid}/status`, "utf8"))?.[1]);
    await new Promise((done) => setTimeout(done, 1000));
    const before = threads();
    await new Promise((done) => setTimeout(done, 2000));
    expect(threads()).toBeLessThanOrEqual(before);
    await kernel.stop();
  });

  it("keeps the key from other users and takes the file away afterwards", async () => {
    const home = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const script = `
      const { statSync, readdirSync } = require("node:fs");
      const { startKernel } = require(${JSON.stringify(require.resolve("../../../kernel-lib/host"))});
      startKernel({ folder: ${JSON.stringify(folder)} }).then(async (kernel) => {
        const [name] = readdirSync(${JSON.stringify(home)}).filter((name) => name.startsWith("slabwright-kernel-"));
        const mode = (path) => (statSync(path).mode & 0o777).toString(8);
        console.log(mode(${JSON.stringify(home)} + "/" + name), mode(${JSON.stringify(home)} + "/" + name + "/connection.json"));
        await kernel.stop();
      });`;
    const printed = await new Promise<string>((done, fail) => {
      const env = { ...process.env, TMPDIR: home };
      execFile(process.execPath, ["-e", script], { env }, (error, out) => (error ? fail(error) : done(out)));
    });
    expect(printed.trim()).toBe("700 600");
    expect(readdirSync(home).filter((name) => name.startsWith("slabwright-kernel-"))).toEqual([]);
  });

  it("leaves nothing in the temporary folder, neither when its host ends nor when it is killed", async () => {
    for (const how of ["process.exit()", "process.kill(process.pid, 'SIGKILL')"]) {
      const home = mkdtempSync(join(tmpdir(), "slabwright-test-"));
      const script = `
        const { startKernel } = require(${JSON.stringify(require.resolve("../../../kernel-lib/host"))});
        startKernel({ folder: ${JSON.stringify(folder)} }).then((kernel) => {
          console.log(kernel.pid);
          setTimeout(() => ${how}, 200);
        });`;
      const env = { ...process.env, TMPDIR: home };
      const host = spawn(process.execPath, ["-e", script], { env, stdio: ["ignore", "pipe", "inherit"] });
      const pid = await new Promise<number>((done) => host.stdout.once("data", (text) => done(Number(text))));
      expect(readdirSync(home)).toHaveLength(1);
      await expect.poll(() => readdirSync(home), { timeout: 10_000 }).toEqual([]);
      await expect.poll(() => alive(pid), { timeout: 10_000 }).toBe(false);
    }
  });

  it("leaves no kernel behind when its host is killed before the kernel has looked for it", async () => {
    const home = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    const script = `
      const processes = require("node:child_process");
      const { spawn } = processes;
      processes.spawn = (...words) => {
        const child = spawn(...words);
        process.stdout.write(String(child.pid), () => process.kill(process.pid, "SIGKILL"));
        return child;
      };
      const { startKernel } = require(${JSON.stringify(require.resolve("../../../kernel-lib/host"))});
      startKernel({ folder: ${JSON.stringify(folder)} });`;
    const env = { ...process.env, TMPDIR: home };
    const host = spawn(process.execPath, ["-e", script], { env, stdio: ["ignore", "pipe", "inherit"] });
    const pid = await new Promise<number>((done) => host.stdout.once("data", (text) => done(Number(text))));
    await expect.poll(() => alive(pid), { timeout: 15_000 }).toBe(false);
    expect(readdirSync(home)).toEqual([]);
  });

  it("starts where the path of the temporary folder is too long for a socket", async () => {
    const home = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "x".repeat(100));
    mkdirSync(home);
    const before = process.env.TMPDIR;
    process.env.TMPDIR = home;
    try {
      const kernel = await startKernel({ folder });
      const news: unknown[] = [];
      await execute(kernel, { code: "1 + 1", limitMs: 20_000, onNews: ({ content }) => news.push(content.text) });
      expect(news).toEqual(["2\n"]);
      await kernel.stop();
    } finally {
      if (before === undefined) delete process.env.TMPDIR;
      else process.env.TMPDIR = before;
    }
  });

  it.skipIf(process.platform !== "linux")("falls back on TCP where no socket can be made", async () => {
    const mend = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "no-sockets.cjs");
    writeFileSync(
      mend,
      `const Module = require("node:module");
      const load = Module._load;
      Module._load = function (name, ...rest) {
        const loaded = load.call(this, name, ...rest);
        if (name !== "zeromq") return loaded;
        for (const kind of ["Router", "Publisher", "Reply"]) {
          const { bind } = loaded[kind].prototype;
          const value = function (address) {
            return address.startsWith("ipc:") ? Promise.reject(new Error("no sockets here")) : bind.call(this, address);
          };
          Object.defineProperty(loaded[kind].prototype, "bind", { value });
        }
        return loaded;
      };`,
    );
    const kernel = await startKernel({ folder, environment: { NODE_OPTIONS: `--require ${mend}` } });
    expect(connectionFileOf(kernel.pid).connection.transport).toBe("tcp");
    expect((await execute(kernel, { code: "1 + 1", limitMs: 20_000, onNews: () => {} })).status).toBe("ok");
    await kernel.stop();
  });

  it("is heard by all listeners even when one of them fails", async () => {
    const warned: string[] = [];
    const onWarning = (warning: Error): void => void warned.push(warning.message);
    process.on("warning", onWarning);
    const kernel = await startKernel({ folder });
    const quiet = kernel.listen(({ header }) => {
      if (header.msg_type === "stream") throw new Error("this listener fails");
    });
    const news: unknown[] = [];
    const run = (code: string): ReturnType<typeof execute> =>
      execute(kernel, { code, limitMs: 10_000, onNews: ({ content }) => news.push(content.text) });
    expect((await run("console.log('one');")).status).toBe("ok");
    expect((await run("console.log('two');")).status).toBe("ok");
    expect(news).toEqual(["one\n", "two\n"]);
    expect(warned).toContain("this listener fails");
    quiet();
    process.off("warning", onWarning);
    await kernel.stop();
  });
});
