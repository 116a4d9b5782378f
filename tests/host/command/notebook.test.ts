import { type ChildProcess, spawn } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { projectWith } from "../server/project";

const bin = resolve(__dirname, "../../../kernel-lib/host/bin/slabwright.js");
let running: ChildProcess | undefined;
afterEach(() => void running?.kill("SIGKILL"));

/** A project whose browser opener keeps what it was told and then stays, as a browser does. */
function projectWithOpener(): { folder: string; opened: string; environment: NodeJS.ProcessEnv } {
  const { folder } = projectWith("every-output");
  const programs = join(folder, "programs");
  const opened = join(folder, "opened.txt");
  mkdirSync(programs);
  writeFileSync(join(programs, "xdg-open"), `#!/bin/sh\nprintf '%s' "$1" > '${opened}'\nsleep 5\n`);
  chmodSync(join(programs, "xdg-open"), 0o755);
  return { folder, opened, environment: { ...process.env, PATH: `${programs}:${process.env.PATH}` } };
}

/** The programs that have a word in their command line. */
function programsTold(word: string): string[] {
  const found: string[] = [];
  for (const name of readdirSync("/proc")) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const words = readFileSync(join("/proc", name, "cmdline"), "utf8").split("\0");
      if (words.some((one) => one.includes(word))) found.push(words[0]);
    } catch {
      // it has ended meanwhile
    }
  }
  return found;
}

describe.skipIf(process.platform !== "linux")("slabwright notebook", () => {
  it("gives the browser a file of the owner's own, so that the token stands in no process list", async () => {
    const { folder, opened, environment } = projectWithOpener();
    const server = spawn(process.execPath, [bin, "notebook"], { cwd: folder, env: environment });
    running = server;
    let said = "";
    server.stdout.on("data", (part) => {
      said += part;
    });
    await expect.poll(() => existsSync(opened) && readFileSync(opened, "utf8"), { timeout: 25_000 }).toBeTruthy();
    const [address, token] = /http:\/\/127\.0\.0\.1:\d+\/\?token=([0-9a-f]{48})/.exec(said) ?? [];
    expect(address).toBeDefined();

    const file = readFileSync(opened, "utf8");
    expect(programsTold(file), "the opener is seen running").not.toEqual([]);
    expect(programsTold(token)).toEqual([]);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, "utf8")).toContain(`content="0;url=${address}"`);
    expect((await fetch(String(address))).status).toBe(200);

    server.kill("SIGINT");
    expect(await new Promise((done) => server.once("exit", done))).toBe(0);
    expect(existsSync(file), "the file goes with the server").toBe(false);
  }, 60_000);

  it("opens nothing when it is told not to", async () => {
    const { folder, opened, environment } = projectWithOpener();
    const server = spawn(process.execPath, [bin, "notebook", "--no-open"], { cwd: folder, env: environment });
    running = server;
    await new Promise((done) => server.stdout.once("data", done));
    server.kill("SIGINT");
    expect(await new Promise((done) => server.once("exit", done))).toBe(0);
    expect(existsSync(opened)).toBe(false);
  }, 60_000);
});
