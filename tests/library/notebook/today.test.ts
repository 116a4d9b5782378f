import { afterEach, describe, expect, it, vi } from "vitest";
import { today } from "../../../kernel-lib/library/src/notebook/today";

afterEach(() => {
  vi.useRealTimers();
});

describe("today", () => {
  it("is the day of the clock, in UTC", () => {
    vi.useFakeTimers({ now: new Date("2026-03-14T23:59:00Z") });
    expect(today()).toBe("2026-03-14");
  });
});
