import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { rateLimit } from "../../../kernel-lib/host/src/server/rate";

describe("rateLimit", () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ["Date", "performance"] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("refuses what comes too fast, and nothing once the span is over", () => {
    const limit = rateLimit(3, 10_000);
    for (let round = 0; round < 3; round++) limit();
    expect(limit).toThrow("too many requests");
    vi.advanceTimersByTime(10_000);
    expect(limit).not.toThrow();
  });

  it("forgets in time also when the clock is set back", () => {
    const limit = rateLimit(3, 10_000);
    for (let round = 0; round < 3; round++) limit();
    expect(limit).toThrow("too many requests");
    vi.setSystemTime(Date.now() - 3_600_000);
    vi.advanceTimersByTime(10_000);
    for (let round = 0; round < 3; round++) limit();
    expect(limit).toThrow("too many requests");
  });
});
