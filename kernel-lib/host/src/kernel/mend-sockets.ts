/*
 * Loaded into the kernel's process before tslab: mends how tslab 1.0.22 treats its sockets.
 *
 * - To a message with a wrong signature it answers, on a socket that everybody may hear, with the right one. Here such
 *   a message is dropped without a word before tslab sees it, and so is what is no message at all.
 * - It does not wait for what it sends: after 512 messages in one turn zeromq refuses the next, which fails the cell,
 *   and after 1,000 that were not yet taken away it drops them. Here a send is never put off and nothing is dropped.
 * - Where a kernel and its host can only meet over TCP, they meet over CurveZMQ, with keys that only they have.
 * - It knows "ipc" sockets, but not the name that Jupyter programs give them.
 */
import type { Publisher, Reply, Router } from "zeromq";
import { addressOf } from "./address-of";
import { afterLoad } from "./after-load";
import type { Connection } from "./connection";
import { DELIMITER, decode, MESSAGE_FRAMES } from "./message";

interface Server {
  readonly connInfo: Connection;
  bindSocket(socket: Publisher | Router | Reply, port: number): Promise<void>;
  handleShellMessage(socket: Router, ...frames: Buffer[]): Promise<void>;
}

afterLoad<{ ZmqServer?: { prototype: Server } }>("jupyter", ({ ZmqServer }) => {
  const server = ZmqServer?.prototype;
  if (!server?.bindSocket || !server.handleShellMessage) return;
  server.bindSocket = async function (socket, port) {
    socket.sendHighWaterMark = 0;
    socket.sendTimeout = 0;
    if (this.connInfo.curve) {
      socket.curveServer = true;
      socket.curveSecretKey = this.connInfo.curve.secretKey;
    }
    await socket.bind(addressOf(this.connInfo, port));
  };
  const handle = server.handleShellMessage;
  server.handleShellMessage = async function (socket, ...frames) {
    let signed: Buffer[];
    try {
      const texts = frames.map(String);
      decode(texts, this.connInfo.key, "shell");
      signed = frames.slice(0, texts.indexOf(DELIMITER) + MESSAGE_FRAMES); // buffers behind it carry no signature
    } catch {
      return;
    }
    await handle.call(this, socket, ...signed);
  };
});
