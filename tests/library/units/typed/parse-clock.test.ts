import { parseClock } from "slabwright/units";
import { describe, expect, test } from "vitest";

describe("parseClock", () => {
  test.each([
    ["8:00", 480],
    ["08.30", 510],
    ["24:00", 1440],
    ["12:15 AM", 15],
    ["12:15pm", 735],
    ["2 pm", 840],
    ["12 AM", 0],
    ["2:30 p.m.", 870],
  ])("%s", (text, min) => {
    expect(parseClock(text, "opens")).toBe(min);
  });

  test.each(["", "noon", "25:00", "24:01", "8:60", "13:00 pm", "0:30 am", "8", "14 pm", `8:00${" ".repeat(40)}x`])(
    "refuses %j",
    (text) => {
      expect(() => parseClock(text, "batchDay: opens")).toThrow(
        /^batchDay: opens must be a time of day, such as "8:00"/,
      );
    },
  );
});
