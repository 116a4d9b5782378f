import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { register } from "slabwright-host";
import { Dealer, Subscriber } from "zeromq";

/** What stands in a kernel's connection file. */
export interface ConnectionFile {
  readonly ip: string;
  readonly transport: string;
  readonly key: string;
  readonly shell_port: number;
  readonly control_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly hb_port: number;
}

export const PORTS = ["shell_port", "control_port", "iopub_port", "stdin_port", "hb_port"] as const;

/** The connection file of a running kernel, which its command line names; on Linux. */
export function connectionFileOf(pid: number): { readonly path: string; readonly connection: ConnectionFile } {
  const words = readFileSync(`/proc/${pid}/cmdline`, "utf8").split("\0");
  const path = words.find((word) => word.startsWith("--config-path="))?.slice("--config-path=".length) ?? "";
  return { path, connection: JSON.parse(readFileSync(path, "utf8")) };
}

/** A kernel started as Jupyter programs start a registered one: over TCP, with a connection file that they make. */
export interface RegisteredKernel {
  readonly child: ChildProcess;
  readonly connection: ConnectionFile;
  /** what the process itself has printed */
  readonly printed: () => string;
}

/** Starts the registered kernel in `folder`. */
export async function startRegistered(folder: string): Promise<RegisteredKernel> {
  const data = mkdtempSync(join(tmpdir(), "slabwright-test-"));
  await register(data);
  const { argv } = JSON.parse(readFileSync(join(data, "kernels", "tslab", "kernel.json"), "utf8"));
  const ports = await Promise.all(PORTS.map(freePort));
  const connection: ConnectionFile & { signature_scheme: string } = {
    ip: "127.0.0.1",
    transport: "tcp",
    signature_scheme: "hmac-sha256",
    key: randomBytes(16).toString("hex"),
    shell_port: ports[0],
    control_port: ports[1],
    iopub_port: ports[2],
    stdin_port: ports[3],
    hb_port: ports[4],
  };
  const file = join(data, "connection.json");
  writeFileSync(file, JSON.stringify(connection), { mode: 0o600 });
  const words = argv.map((word: string) => word.replace("{connection_file}", file));
  const child = spawn(words[0], words.slice(1), { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
  let printed = "";
  for (const stream of [child.stdout, child.stderr])
    stream?.on("data", (text) => {
      printed += text;
    });
  return { child, connection, printed: () => printed };
}

/** Sockets to a kernel that know nothing but where it listens, and everything they hear, as text. */
export interface Bystander {
  readonly shell: Dealer;
  /** every frame that came, on whatever socket */
  readonly heard: string[];
  readonly close: () => void;
}

/** Connects to the shell and the iopub sockets of a kernel. */
export function bystander({ transport, ip, shell_port, iopub_port }: ConnectionFile): Bystander {
  const shell = new Dealer({ linger: 0 });
  const iopub = new Subscriber({ linger: 0 });
  const between = transport === "ipc" ? "-" : ":";
  shell.connect(`${transport}://${ip}${between}${shell_port}`);
  iopub.connect(`${transport}://${ip}${between}${iopub_port}`);
  iopub.subscribe();
  const heard: string[] = [];
  for (const socket of [shell, iopub]) {
    void (async () => {
      for await (const frames of socket) heard.push(...frames.map(String));
    })().catch(() => {});
  }
  return {
    shell,
    heard,
    close: () => {
      shell.close();
      iopub.close();
    },
  };
}

/** Waits until `ready` is true. */
export async function until(ready: () => boolean, what: string, limitMs = 20_000): Promise<void> {
  const deadline = Date.now() + limitMs;
  while (!ready()) {
    if (Date.now() > deadline) throw new Error(`${what} must happen within ${limitMs} ms`);
    await new Promise((done) => setTimeout(done, 20));
  }
}

/** Whether a file has come into being within `ms`. */
export async function appears(path: string, ms: number): Promise<boolean> {
  for (let waited = 0; waited < ms && !existsSync(path); waited += 50)
    await new Promise((done) => setTimeout(done, 50));
  return existsSync(path);
}

function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const server = createServer();
    server.once("error", fail);
    server.listen(0, "127.0.0.1", () => {
      const { port } = server.address() as { port: number };
      server.close(() => done(port));
    });
  });
}
