import { randomBytes } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** What a kernel and its host agree on: five loopback ports and the key that signs every message. */
export interface Connection {
  readonly ip: string;
  readonly transport: string;
  readonly key: string;
  readonly signature_scheme: string;
  readonly shell_port: number;
  readonly control_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly hb_port: number;
}

/** Five loopback ports that were free a moment ago, and a fresh key. */
export async function newConnection(): Promise<Connection> {
  const servers = await Promise.all([1, 2, 3, 4, 5].map(listenAnywhere));
  const ports = servers.map((server) => (server.address() as { port: number }).port);
  await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
  return {
    ip: "127.0.0.1",
    transport: "tcp",
    key: randomBytes(32).toString("hex"),
    signature_scheme: "hmac-sha256",
    shell_port: ports[0],
    control_port: ports[1],
    iopub_port: ports[2],
    stdin_port: ports[3],
    hb_port: ports[4],
  };
}

/** Writes the connection file into a folder that only its owner can read; `remove` takes both away. */
export async function writeConnectionFile(
  connection: Connection,
): Promise<{ readonly path: string; readonly remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), "slabwright-kernel-"));
  const path = join(folder, "connection.json");
  await writeFile(path, JSON.stringify(connection), { mode: 0o600 });
  return { path, remove: () => rm(folder, { recursive: true, force: true }) };
}

function listenAnywhere(): Promise<Server> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => resolve(server));
  });
}
