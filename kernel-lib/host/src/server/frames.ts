import type { Channel, Message } from "../kernel/message";

/** The newer of the two forms in which messages travel over a WebSocket; the other one, JSON text, has no name. */
export const V1_PROTOCOL = "v1.kernel.websocket.jupyter.org";

const PARTS = 5; // channel, header, parent header, metadata, content; buffers may follow

/** A message as one binary frame of the v1 protocol: a table of offsets, then the parts. */
export function encodeV1(message: Message): Uint8Array {
  const parts = [
    message.channel,
    ...[message.header, message.parent_header, message.metadata, message.content].map((part) => JSON.stringify(part)),
  ].map((text) => new TextEncoder().encode(text));
  const table = 8 * (1 + PARTS + 1);
  const frame = new Uint8Array(parts.reduce((size, part) => size + part.length, table));
  const view = new DataView(frame.buffer);
  view.setBigUint64(0, BigInt(PARTS + 1), true);
  let at = table;
  for (const [index, part] of parts.entries()) {
    view.setBigUint64(8 * (index + 1), BigInt(at), true);
    frame.set(part, at);
    at += part.length;
  }
  view.setBigUint64(8 * (PARTS + 1), BigInt(at), true);
  return frame;
}

/** The message of a binary frame of the v1 protocol; throws on anything that is not one. Buffers are passed over. */
export function decodeV1(frame: Uint8Array): Message {
  const view = new DataView(frame.buffer, frame.byteOffset, frame.byteLength);
  if (frame.byteLength < 8 * (PARTS + 2)) throw new Error("decodeV1: a frame must hold its table of offsets");
  const count = Number(view.getBigUint64(0, true));
  if (count < PARTS + 1 || count > 100 || frame.byteLength < 8 * (count + 1)) {
    throw new Error("decodeV1: a frame must have at least six offsets");
  }
  const offsets = Array.from({ length: count }, (_, index) => Number(view.getBigUint64(8 * (index + 1), true)));
  const inOrder = offsets.every((at, index) => at >= (index === 0 ? 8 * (count + 1) : offsets[index - 1]));
  if (!inOrder || offsets[count - 1] > frame.byteLength)
    throw new Error("decodeV1: offsets must rise within the frame");
  const text = (part: number): string =>
    new TextDecoder("utf-8", { fatal: true }).decode(frame.subarray(offsets[part], offsets[part + 1]));
  const [header, parent_header, metadata, content] = [1, 2, 3, 4].map((part) => JSON.parse(text(part)));
  return checked({ channel: text(0) as Channel, header, parent_header, metadata, content });
}

/** The message of a JSON text frame; throws on anything that is not one. */
export function decodeJson(text: string): Message {
  const { channel, header, parent_header, metadata, content } = JSON.parse(text) ?? {};
  return checked({ channel, header, parent_header: parent_header ?? {}, metadata: metadata ?? {}, content });
}

function checked(message: Message): Message {
  const { channel, header, parent_header, metadata, content } = message;
  const objects = [header, parent_header, metadata, content].every((part) => typeof part === "object" && part !== null);
  if (!["shell", "control", "stdin"].includes(channel) || !objects) {
    throw new Error("a message must have a channel, a header, metadata and content");
  }
  if (typeof header.msg_id !== "string" || typeof header.msg_type !== "string" || header.msg_id.length > 200) {
    throw new Error("a message's header must have an id and a type");
  }
  return message;
}
