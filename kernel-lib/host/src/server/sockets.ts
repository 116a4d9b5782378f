import type { IncomingMessage } from "node:http";
import type { Duplex } from "node:stream";
import { type RawData, type WebSocket, WebSocketServer } from "ws";
import type { Message } from "../kernel/message";
import type { Bridge, Client } from "./bridge";
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
      const channels = id === undefined ? null : kernels.bridgeOf(id);
      server.handleUpgrade(request, socket, head, (page) => {
        page.on("error", () => page.terminate());
        if (channels) attach(page, channels);
        else page.on("message", () => page.close(1008, "nothing is expected here"));
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

/** Connects a page to a kernel. Whatever a page sends, and whenever: what fails here closes that page's socket alone. */
function attach(page: WebSocket, channels: Bridge): void {
  const isV1 = page.protocol === V1_PROTOCOL;
  const client: Client = {
    send: (message) => {
      if (page.bufferedAmount > BEHIND_LIMIT) return page.close(1013, "the page does not keep up");
      if (page.readyState !== page.OPEN) return;
      try {
        page.send(isV1 ? encodeV1(message) : JSON.stringify({ ...message, buffers: [] }));
      } catch (error) {
        process.emitWarning(error as Error); // a message that cannot be written is lost for this page
      }
    },
  };
  const leave = channels.join(client);
  page.on("close", leave);
  page.on("message", (data: RawData, isBinary: boolean) => {
    let message: Message;
    try {
      message = isBinary ? decodeV1(new Uint8Array(data as Buffer)) : decodeJson(String(data));
    } catch {
      return page.close(1007, "what came is no message"); // no word of it is repeated: a reason holds 123 bytes
    }
    try {
      channels.receive(client, message);
    } catch (error) {
      process.emitWarning(error as Error);
      page.close(1011, "the server could not take this message");
    }
  });
}
