import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type RawData, type WebSocket, WebSocketServer } from "ws";
import type { Message } from "../kernel/message";
import { decodeJson, decodeV1, encodeV1, V1_PROTOCOL } from "./frames";
import type { Kernels } from "./kernels";

const FRAME_LIMIT = 20_000_000; // bytes
const BEHIND_LIMIT = 100_000_000; // bytes that a page may be behind before it is cut off
const MOST_SOCKETS = 64;

/** Accepts WebSockets: a kernel's channels in either sub-protocol, and the events that nobody here sends. */
export function sockets(kernels: Kernels): {
  readonly upgrade: (request: IncomingMessage, socket: Duplex, head: Buffer, path: string) => void;
  readonly close: () => void;
} {
  const server = new WebSocketServer({
    noServer: true,
    maxPayload: FRAME_LIMIT,
    handleProtocols: (offered) => (offered.has(V1_PROTOCOL) ? V1_PROTOCOL : false),
  });
  return {
    upgrade: (request, socket, head, path) => {
      const id = /^\/api\/kernels\/([\w-]+)\/channels$/.exec(path)?.[1];
      if (server.clients.size >= MOST_SOCKETS) return refuse(socket, "503 Service Unavailable");
      const known =
        id === undefined ? path === "/api/events/subscribe" : kernels.list().some((model) => model.id === id);
      if (!known) return refuse(socket, "404 Not Found");
      server.handleUpgrade(request, socket, head, (page) => {
        page.on("error", () => page.terminate());
        if (id === undefined) page.on("message", () => page.close(1008, "nothing is expected here"));
        else attach(page, id, kernels);
      });
    },
    close: () => {
      for (const page of server.clients) page.terminate();
      server.close();
    },
  };
}

/** Answers a request to upgrade with a refusal. */
export function refuse(socket: Duplex, status: string): void {
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
}

function attach(page: WebSocket, id: string, kernels: Kernels): void {
  const isV1 = page.protocol === V1_PROTOCOL;
  const client = {
    send: (message: Message): void => {
      if (page.bufferedAmount > BEHIND_LIMIT) page.close(1013, "the page does not keep up");
      else if (page.readyState === page.OPEN)
        page.send(isV1 ? encodeV1(message) : JSON.stringify({ ...message, buffers: [] }));
    },
  };
  const leave = kernels.bridgeOf(id).join(client);
  page.on("close", leave);
  page.on("message", (data: RawData, isBinary: boolean) => {
    let message: Message;
    try {
      message = isBinary ? decodeV1(new Uint8Array(data as Buffer)) : decodeJson(String(data));
    } catch (error) {
      page.close(1007, (error as Error).message.slice(0, 120));
      return;
    }
    kernels.bridgeOf(id).receive(client, message);
  });
}
