import { randomBytes } from "node:crypto";
import { rmSync } from "node:fs";
import { mkdtemp, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { curveKeyPair } from "zeromq";

/** How messages travel: over sockets in a folder, or over ports of this machine. */
export type Transport = "ipc" | "tcp";

/** What a kernel and its host agree on: five sockets and the key that signs every message. */
export interface Connection {
  readonly transport: Transport;
  /** the loopback address; over "ipc", what the paths of the five sockets begin with */
  readonly ip: string;
  readonly key: string;
  readonly signature_scheme: string;
  /** the process of the host, without which the kernel does not go on */
  readonly host: number;
  readonly shell_port: number;
  readonly control_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly hb_port: number;
  /** the kernel's own keys for CurveZMQ: over TCP, only who knows the public one is let in and only he can read */
  readonly curve?: { readonly publicKey: string; readonly secretKey: string };
}

/** A connection with the file that tells the kernel of it. */
export interface OpenConnection {
  readonly connection: Connection;
  /** the folder that only its owner can enter; holds the file and, over "ipc", the sockets */
  readonly folder: string;
  readonly path: string;
  /** takes the folder away; at once, as the process may be about to end */
  readonly remove: () => void;
}

/** A folder in which sockets have room: the path of a socket holds 103 bytes at most on macOS, 107 on Linux. */
const LONGEST_SOCKET = 100;

/**
 * A new connection in a folder that only its owner can enter. Over "ipc" nobody else reaches the sockets. Over TCP
 * everybody on the machine does, so there the messages are encrypted with keys that stand in the file.
 */
export async function openConnection(transport: Transport): Promise<OpenConnection> {
  const folder = await mkdtemp(join(transport === "ipc" ? roomyFolder() : tmpdir(), "slabwright-kernel-"));
  const remove = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    const ports = transport === "ipc" ? [1, 2, 3, 4, 5] : await freePorts();
    const connection: Connection = {
      transport,
      ip: transport === "ipc" ? join(folder, "k") : "127.0.0.1",
      key: randomBytes(32).toString("hex"),
      signature_scheme: "hmac-sha256",
      host: process.pid,
      shell_port: ports[0],
      control_port: ports[1],
      iopub_port: ports[2],
      stdin_port: ports[3],
      hb_port: ports[4],
      ...(transport === "tcp" ? { curve: curveKeyPair() } : {}),
    };
    const path = join(folder, "connection.json");
    await writeFile(path, JSON.stringify(connection), { mode: 0o600 });
    return { connection, folder, path, remove };
  } catch (error) {
    remove();
    throw error;
  }
}

function roomyFolder(): string {
  const room = (folder: string): boolean =>
    Buffer.byteLength(join(folder, "slabwright-kernel-123456", "k-1")) <= LONGEST_SOCKET;
  return room(tmpdir()) ? tmpdir() : "/tmp";
}

/** Five loopback ports that were free a moment ago. */
async function freePorts(): Promise<number[]> {
  const servers = await Promise.all([1, 2, 3, 4, 5].map(listenAnywhere));
  const ports = servers.map((server) => (server.address() as { port: number }).port);
  await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
  return ports;
}

function listenAnywhere(): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => resolve(server));
  });
}
