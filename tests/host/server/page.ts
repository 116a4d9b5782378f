import { randomUUID } from "node:crypto";
import type { Channel, Header, Message, NotebookServer } from "slabwright-host";
import { WebSocket } from "ws";

/** A page as the server sees it: requests with the token, and a kernel's channels. */
export interface Page {
  // biome-ignore lint/suspicious/noExplicitAny: whatever the API answers
  readonly ask: (method: string, path: string, body?: unknown) => Promise<{ status: number; json: any }>;
  /** opens a notebook's channels in either sub-protocol */
  readonly open: (path: string, protocol?: string) => Promise<Channels>;
}

/** An open connection to a kernel. */
export interface Channels {
  readonly kernelId: string;
  readonly socket: WebSocket;
  readonly heard: Message[];
  readonly send: (type: string, content: Record<string, unknown>, channel?: Channel) => string;
  /** waits until a message fits */
  readonly until: (fits: (message: Message) => boolean, limitMs?: number) => Promise<Message>;
  /** runs a cell and waits for its reply and the idle after it; what was heard on iopub for it */
  readonly run: (code: string) => Promise<{ reply: Message; news: Message[] }>;
  readonly close: () => void;
}

/** A page of `server`. */
export function pageOf(server: NotebookServer): Page {
  const headers = { Authorization: `token ${server.token}` };
  const ask: Page["ask"] = async (method, path, body) => {
    const sent = body === undefined ? undefined : JSON.stringify(body);
    const answer = await fetch(server.origin + path, { method, headers, body: sent });
    const text = await answer.text();
    return { status: answer.status, json: text ? JSON.parse(text) : null };
  };
  return {
    ask,
    open: async (path, protocol) => {
      const { json: session } = await ask("POST", "/api/sessions", {
        path,
        type: "notebook",
        kernel: { name: "tslab" },
      });
      return channelsOf(server, session.kernel.id, protocol);
    },
  };
}

/** Connects to a kernel. */
export async function channelsOf(server: NotebookServer, kernelId: string, protocol?: string): Promise<Channels> {
  const address = `ws://127.0.0.1:${server.port}/api/kernels/${kernelId}/channels`;
  const socket = new WebSocket(address, protocol ? [protocol] : [], {
    headers: { Authorization: `token ${server.token}` },
  });
  const session = randomUUID();
  const heard: Message[] = [];
  const waiting = new Set<() => void>();
  socket.on("message", (data: Buffer, isBinary) => {
    heard.push(isBinary ? fromV1(data) : JSON.parse(String(data)));
    for (const look of waiting) look();
  });
  await new Promise((done, fail) => socket.once("open", done).once("error", fail));
  const send: Channels["send"] = (type, content, channel = "shell") => {
    const header: Header = { msg_id: randomUUID(), msg_type: type, session, username: "", date: "", version: "5.3" };
    const message = { channel, header, parent_header: {}, metadata: {}, content };
    socket.send(protocol ? toV1(message) : JSON.stringify(message));
    return header.msg_id;
  };
  const until: Channels["until"] = (fits, limitMs = 25_000) =>
    new Promise((done, fail) => {
      const look = (): void => {
        const found = heard.find(fits);
        if (!found) return;
        waiting.delete(look);
        clearTimeout(timer);
        done(found);
      };
      const timer = setTimeout(() => {
        waiting.delete(look);
        fail(new Error(`no such message; heard ${heard.map(({ header }) => header.msg_type).join(", ")}`));
      }, limitMs);
      waiting.add(look);
      look();
    });
  return {
    kernelId,
    socket,
    heard,
    send,
    until,
    run: async (code) => {
      const id = send("execute_request", {
        code,
        silent: false,
        store_history: true,
        allow_stdin: false,
        stop_on_error: true,
      });
      const mine = (message: Message): boolean => message.parent_header.msg_id === id;
      const reply = await until((message) => mine(message) && message.header.msg_type === "execute_reply");
      await until((message) => mine(message) && message.content.execution_state === "idle");
      return { reply, news: heard.filter((message) => mine(message) && message.channel === "iopub") };
    },
    close: () => socket.terminate(),
  };
}

// Written from the description of the protocol, apart from the host's own code, so that one checks the other:
// https://jupyter-server.readthedocs.io/en/latest/developers/websocket-protocols.html
function toV1(message: Message): Buffer {
  const parts = [
    Buffer.from(message.channel),
    ...[message.header, message.parent_header, message.metadata, message.content].map((part) =>
      Buffer.from(JSON.stringify(part)),
    ),
  ];
  const table = Buffer.alloc(8 * 7);
  table.writeBigUInt64LE(6n, 0);
  let at = table.length;
  for (let part = 0; part <= 5; part++) {
    table.writeBigUInt64LE(BigInt(at), 8 * (part + 1));
    at += parts[part]?.length ?? 0;
  }
  return Buffer.concat([table, ...parts] as unknown as Uint8Array[]);
}

function fromV1(frame: Buffer): Message {
  const offsets = Array.from({ length: Number(frame.readBigUInt64LE(0)) }, (_, at) =>
    Number(frame.readBigUInt64LE(8 * (at + 1))),
  );
  const text = (part: number): string => frame.subarray(offsets[part], offsets[part + 1]).toString("utf8");
  const [header, parent_header, metadata, content] = [1, 2, 3, 4].map((part) => JSON.parse(text(part)));
  return { channel: text(0) as Channel, header, parent_header, metadata, content };
}
