import { Socket } from "node:net";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { newcomers } from "../../../kernel-lib/host/src/server/newcomers";

describe("newcomers", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  const arrivals = (count: number, arrive: (socket: Socket) => void): Socket[] =>
    Array.from({ length: count }, () => {
      const socket = new Socket();
      arrive(socket);
      return socket;
    });
  const left = (sockets: readonly Socket[]): boolean[] => sockets.map((socket) => !socket.destroyed);

  it("leaves each its moment to show who it is, then cuts the oldest that did not", () => {
    const waiting = newcomers(2, 10, 200);
    const sockets = arrivals(4, waiting.arrive);
    expect(left(sockets)).toEqual([true, true, true, true]);
    waiting.admit(sockets[0]);
    vi.advanceTimersByTime(200);
    expect(left(sockets)).toEqual([true, false, true, true]);
  });

  it("cuts the oldest at once where a crowd waits", () => {
    const waiting = newcomers(2, 3, 200);
    const sockets = arrivals(5, waiting.arrive);
    expect(left(sockets)).toEqual([false, false, true, true, true]);
  });

  it("does not count who has left", async () => {
    const waiting = newcomers(2, 3, 200);
    const gone = arrivals(2, waiting.arrive);
    for (const socket of gone) socket.destroy();
    await vi.waitFor(() => expect(gone.every((socket) => socket.closed)).toBe(true));
    const sockets = arrivals(3, waiting.arrive);
    expect(left(sockets)).toEqual([true, true, true]);
  });
});
