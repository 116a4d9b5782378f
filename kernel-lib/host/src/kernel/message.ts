import { createHmac, randomUUID, timingSafeEqual } from "node:crypto";

/** The header of a Jupyter message; https://jupyter-client.readthedocs.io/en/stable/messaging.html */
export interface Header {
  msg_id: string;
  msg_type: string;
  session: string;
  username: string;
  date: string;
  version: string;
}

/** Where a message travels: requests on shell and control, news on iopub. */
export type Channel = "shell" | "control" | "iopub" | "stdin";

/** One Jupyter message, as it is on the wire less its signature. */
export interface Message {
  channel: Channel;
  header: Header;
  parent_header: Header | Record<string, never>;
  metadata: Record<string, unknown>;
  content: Record<string, unknown>;
}

/** What stands between the routing prefix of a message on the wire and the message. */
export const DELIMITER = "<IDS|MSG>";

/** The delimiter, the signature and the four signed parts. */
export const MESSAGE_FRAMES = 6;

/** A new request with its own id. */
export function request(channel: Channel, type: string, content: Record<string, unknown>, session: string): Message {
  const header: Header = {
    msg_id: randomUUID(),
    msg_type: type,
    session,
    username: "host",
    date: new Date().toISOString(),
    version: "5.3",
  };
  return { channel, header, parent_header: {}, metadata: {}, content };
}

/** The frames that carry `message` over zeromq, signed with `key`. */
export function encode(message: Message, key: string): string[] {
  const parts = [message.header, message.parent_header, message.metadata, message.content].map((part) =>
    JSON.stringify(part),
  );
  return [DELIMITER, signature(parts, key), ...parts];
}

/** The message that zeromq frames carry; throws when it is none, or when the signature does not fit `key`. */
export function decode(frames: readonly string[], key: string, channel: Channel): Message {
  const at = frames.indexOf(DELIMITER);
  if (at < 0 || frames.length < at + MESSAGE_FRAMES)
    throw new Error("decode: a kernel message must have a delimiter and four parts");
  const parts = frames.slice(at + 2, at + MESSAGE_FRAMES);
  if (!same(frames[at + 1], signature(parts, key))) {
    throw new Error("decode: the signature of a kernel message must fit its connection key");
  }
  const [header, parent_header, metadata, content] = parts.map((part) => JSON.parse(part));
  if (![header, parent_header, metadata, content].every((part) => typeof part === "object" && part !== null)) {
    throw new Error("decode: the four parts of a kernel message must be objects");
  }
  return { channel, header, parent_header, metadata, content };
}

function signature(parts: readonly string[], key: string): string {
  const hash = createHmac("sha256", key);
  for (const part of parts) hash.update(part);
  return hash.digest("hex");
}

function same(given: string, due: string): boolean {
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  return given.length === due.length && timingSafeEqual(bytes(given), bytes(due));
}
