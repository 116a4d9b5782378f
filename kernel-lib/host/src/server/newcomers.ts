import type { Socket } from "node:net";

/** The connections that have not shown the token or the cookie yet. */
export interface Newcomers {
  readonly arrive: (socket: Socket) => void;
  /** the connection has shown who it is and counts no more */
  readonly admit: (socket: Socket) => void;
}

/**
 * Bounds how many connections may wait without having shown who they are: beyond `most` the oldest are cut off, so that
 * whoever opens many and leaves them keeps nobody else out. Each has `graceMs` for its first request, unless more than
 * `crowd` wait.
 */
export function newcomers(most = 128, crowd = 512, graceMs = 200): Newcomers {
  const waiting = new Set<Socket>();
  const cutTo = (count: number): void => {
    for (const socket of waiting) {
      if (waiting.size <= count) return;
      waiting.delete(socket);
      socket.destroy();
    }
  };
  return {
    arrive: (socket) => {
      waiting.add(socket);
      socket.once("close", () => waiting.delete(socket));
      cutTo(crowd);
      if (waiting.size > most) setTimeout(cutTo, graceMs, most).unref();
    },
    admit: (socket) => {
      waiting.delete(socket);
    },
  };
}
