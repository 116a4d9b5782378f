/// <reference lib="dom" />
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Draft } from "../../../../kernel-lib/host/page/log/draft";
import { clockText, type Press, pressed, quarterMinutes } from "../../../../kernel-lib/host/page/log/timer";
import { trialForm } from "../../../../kernel-lib/library/src/notebook/form/trial-form";

const form = trialForm("data");
const empty: Draft = {
  key: "k",
  madeAt: 0,
  cells: {},
  tasters: [],
  timer: { startedAt: null, takenOutAt: null },
  before: null,
  state: "draft",
  wasSent: false,
  logged: null,
};
const after = (...presses: readonly (readonly [Press, number])[]): Draft =>
  presses.reduce((draft, [press, min]) => pressed(draft, press, { form, now: 1e12 + min * 60_000 }), empty);

describe("quarterMinutes", () => {
  it("is within an eighth of a minute of the time, a whole number of quarters, and at least one", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 180 * 60_000 }), (ms) => {
        const minutes = quarterMinutes(ms);
        expect(Number.isInteger(4 * minutes)).toBe(true);
        expect(minutes).toBeGreaterThanOrEqual(0.25);
        if (ms >= 7500) expect(Math.abs(minutes - ms / 60_000)).toBeLessThanOrEqual(0.125);
      }),
    );
  });
});

describe("pressed", () => {
  it("keeps the last not yet and the first crisp, every look, and the time of taking out", () => {
    const draft = after(
      ["start", 0],
      ["not yet", 6],
      ["turned", 6.1],
      ["not yet", 8],
      ["crisp", 9.5],
      ["crisp", 11],
      ["taken out", 11.2],
    );
    expect(draft.cells).toEqual({
      looks_min: ["6", "8", "9.5", "11"],
      not_crisp_min: ["8"],
      crisp_min: ["9.5"],
      flip_min: ["6"],
      time_min: ["11.25"],
    });
    expect(draft.timer.takenOutAt).toBe(1e12 + 11.2 * 60_000);
  });

  it("writes nothing before the start", () => {
    expect(after(["crisp", 3], ["taken out", 4])).toEqual(empty);
  });

  it("keeps what was there before the last press, so that it can be taken back", () => {
    const looked = after(["start", 0], ["not yet", 6]);
    const crisp = pressed(looked, "crisp", { form, now: 1e12 + 7 * 60_000 });
    expect(crisp.before).toEqual({ cells: looked.cells, timer: looked.timer });
  });
});

it("clockText is minutes and seconds, never below zero", () => {
  expect([0, 59_999, 65_000, 754_000, -5].map(clockText)).toEqual(["0:00", "0:59", "1:05", "12:34", "0:00"]);
});
