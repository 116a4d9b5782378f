import { type ChildProcess, spawn } from "node:child_process";
import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { curveKeyPair, Dealer, Subscriber } from "zeromq";
import { addressOf } from "./address-of";
import { type Connection, type OpenConnection, openConnection, type Transport } from "./connection";
import { type Channel, decode, encode, type Message, request } from "./message";
import { FROM_STORE, MENDS, preloads } from "./preloads";

/** What `startKernel` needs to know. */
export interface KernelOptions {
  /** the kernel's working folder: cells find packages in the `node_modules` of this folder or of one above it */
  readonly folder: string;
  /** added to the environment of the kernel's process */
  readonly environment?: Readonly<Record<string, string>>;
  /** how long the kernel may take to answer for the first time, ms; 30,000 */
  readonly startLimitMs?: number;
  /** how to talk to the kernel; left out, over sockets in a closed folder where the system has them, else over TCP */
  readonly transport?: Transport;
  /** true for a kernel that only runs: what has been compiled before is not compiled again (`compile/`); false */
  readonly fromStore?: boolean;
}

/** How a kernel's process ended. */
export interface KernelEnd {
  /** exit code, or null when a signal ended it */
  readonly code: number | null;
  /** the signal that ended it, or null */
  readonly signal: string | null;
  /** the last part of what the process itself printed outside any cell */
  readonly log: string;
}

/** A running tslab kernel. */
export interface Kernel {
  readonly pid: number;
  readonly folder: string;
  readonly session: string;
  /** resolves when the process has ended, for whatever reason */
  readonly ended: Promise<KernelEnd>;
  /** sends one message on its channel (shell or control) */
  readonly send: (message: Message) => Promise<void>;
  /** calls `listener` with every message of the kernel until the returned function is called */
  readonly listen: (listener: (message: Message) => void) => () => void;
  /** asks the running cell to stop; on Windows, where there is no SIGINT, this ends the kernel */
  readonly interrupt: () => void;
  /** ends the kernel: by request, then SIGTERM, then SIGKILL; done when the process is gone */
  readonly stop: () => Promise<void>;
}

const LAST_WORDS_MS = 50; // what a kernel said before it ended by itself may still be on its way

const running = new Map<ChildProcess, OpenConnection>();
process.on("exit", () => {
  for (const [child, open] of running) {
    child.kill("SIGKILL");
    attempt(open.remove);
  }
});

/** Starts a tslab kernel over zeromq and waits until it answers on every channel. */
export async function startKernel(options: KernelOptions): Promise<Kernel> {
  if (!existsSync(options.folder)) throw new Error(`startKernel: folder must exist, got ${options.folder}`);
  // a folder may lie where no socket can be made, and another process may have taken a port in between
  const tries: readonly Transport[] = process.platform === "win32" ? ["tcp", "tcp", "tcp"] : ["ipc", "tcp", "tcp"];
  let last: unknown;
  for (const transport of tries) {
    try {
      return await startOnce(options, await openConnection(options.transport ?? transport));
    } catch (error) {
      last = error;
    }
  }
  throw last;
}

async function startOnce(options: KernelOptions, open: OpenConnection): Promise<Kernel> {
  const { connection } = open;
  const mends = options.fromStore ? [...MENDS, FROM_STORE] : MENDS;
  const watchers = options.environment?.SLABWRIGHT_READS === undefined ? [] : ["note-reads"];
  const child = spawn(
    process.execPath,
    [
      ...preloads("follow-host", ...watchers, ...mends),
      require.resolve("tslab/bin/tslab"),
      "kernel",
      `--config-path=${open.path}`,
    ],
    { cwd: options.folder, env: { ...process.env, ...options.environment }, stdio: ["ignore", "pipe", "pipe"] },
  );
  running.set(child, open);
  let log = "";
  const note = (text: Buffer): void => {
    log = (log + text.toString("utf8")).slice(-4000);
  };
  child.stdout?.on("data", note);
  child.stderr?.on("data", note);

  const common = { linger: 0, reconnectInterval: 20, ...curveOf(connection) };
  const shell = new Dealer(common);
  const control = new Dealer(common);
  const iopub = new Subscriber({ ...common, receiveHighWaterMark: 0 }); // the kernel drops nothing, nor does its host
  const listeners = new Set<(message: Message) => void>();
  const sockets = [
    ["shell", shell, connection.shell_port],
    ["control", control, connection.control_port],
    ["iopub", iopub, connection.iopub_port],
  ] as const;
  for (const [, socket, port] of sockets) socket.connect(addressOf(connection, port));
  iopub.subscribe();
  const hear = (channel: Channel, frames: readonly Buffer[]): void => {
    const message = decode(frames.map(String), connection.key, channel);
    for (const listener of [...listeners]) attempt(() => listener(message));
  };
  for (const [channel, socket] of sockets) {
    void (async () => {
      for await (const frames of socket) attempt(() => hear(channel, frames));
    })().catch((error) => note(Buffer.from(String(error))));
  }

  let stopping = false;
  const ended = new Promise<KernelEnd>((resolve) => {
    const finish = (code: number | null, signal: string | null): void => {
      if (!running.delete(child)) return;
      attempt(open.remove);
      const close = (): void => {
        for (const [, socket] of sockets) socket.close();
        resolve({ code, signal, log });
      };
      if (stopping) close();
      else setTimeout(close, LAST_WORDS_MS);
    };
    child.once("exit", finish);
    child.once("error", (error) => {
      note(Buffer.from(String(error)));
      finish(null, null);
    });
  });

  const session = randomUUID();
  const queues = { shell: Promise.resolve(), control: Promise.resolve() };
  const kernel: Kernel = {
    pid: child.pid ?? -1,
    folder: options.folder,
    session,
    ended,
    send: (message) => {
      const channel = message.channel === "control" ? "control" : "shell";
      const socket = channel === "control" ? control : shell;
      const sent = queues[channel].then(() => socket.send(encode(message, connection.key)));
      queues[channel] = sent.catch(() => {});
      return sent;
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    interrupt: () => child.kill("SIGINT"),
    stop: async () => {
      stopping = true;
      if (!running.has(child)) return void (await ended);
      kernel.send(request("control", "shutdown_request", { restart: false }, session)).catch(() => {});
      const gone = ended.then(() => true);
      if (await Promise.race([gone, wait(60)])) return;
      child.kill("SIGTERM");
      if (await Promise.race([gone, wait(1000)])) return;
      child.kill("SIGKILL");
      await ended;
    },
  };
  await untilReady(kernel, options.startLimitMs ?? 30_000, () => log);
  return kernel;
}

/** Asks for kernel_info until both the answer and the news of our own request have come. */
async function untilReady(kernel: Kernel, limitMs: number, log: () => string): Promise<void> {
  let answered = false;
  let heard = false;
  let end: KernelEnd | undefined;
  void kernel.ended.then((how) => {
    end = how;
  });
  const quiet = kernel.listen((message) => {
    answered ||= message.header.msg_type === "kernel_info_reply";
    heard ||= message.channel === "iopub" && "session" in message.parent_header;
  });
  const deadline = Date.now() + limitMs;
  try {
    while (!(answered && heard)) {
      await kernel.send(request("shell", "kernel_info_request", {}, kernel.session)).catch(() => {});
      for (let check = 0; check < 10 && !(answered && heard); check++) await wait(20);
      if (end) throw new Error(`startKernel: the kernel must keep running, it ended (${describeEnd(end)})`);
      if (/UnhandledPromiseRejection/.test(log())) {
        throw new Error(`startKernel: the kernel must open its sockets, it could not. ${log()}`.trim());
      }
      if (Date.now() > deadline) {
        throw new Error(`startKernel: the kernel must answer within ${limitMs} ms, it did not. ${log()}`.trim());
      }
    }
  } catch (error) {
    await kernel.stop();
    throw error;
  } finally {
    quiet();
  }
}

/** How a kernel ended, in words. */
export function describeEnd(end: KernelEnd): string {
  const how = end.signal ? `signal ${end.signal}` : `exit code ${end.code}`;
  return end.log.trim() ? `${how}; it printed: ${end.log.trim()}` : how;
}

/** One message that cannot be read, or one listener that fails, must not silence the kernel for all others. */
function attempt(work: () => void): void {
  try {
    work();
  } catch (error) {
    process.emitWarning(error as Error);
  }
}

/** What lets a socket of the host in where only TCP is to be had. */
function curveOf({ curve }: Connection): Record<string, string> {
  if (!curve) return {};
  const own = curveKeyPair();
  return { curveServerKey: curve.publicKey, curvePublicKey: own.publicKey, curveSecretKey: own.secretKey };
}

function wait(ms: number): Promise<false> {
  return new Promise((done) => setTimeout(done, ms, false));
}
