import { describe, expect, it } from "vitest";
import {
  chanceOf,
  chanceText,
  minutesText,
  sizeText,
} from "../../../../kernel-lib/library/src/crisp/window/window-words";

describe("the words of a window", () => {
  it("never promise all or nothing", () => {
    expect(chanceText(1)).toBe("over 99 %");
    expect(chanceText(0)).toBe("under 1 %");
    expect(chanceText(0.934)).toBe("93 %");
    expect([chanceText(0.994), chanceText(0.995)]).toEqual(["99 %", "over 99 %"]);
    expect([chanceText(0.0049), chanceText(0.005)]).toEqual(["under 1 %", "1 %"]);
    expect(minutesText(Number.POSITIVE_INFINITY)).toBe("never");
    expect(minutesText(9.25)).toBe("9.3");
  });

  it("tell a piece in the kitchen's units", () => {
    const piece = { thicknessMm: 8.9, sidesMm: [58, 39] as const };
    expect(sizeText({ ...piece, units: "metric" })).toBe("8.9 mm (58 × 39 mm)");
    expect(sizeText({ ...piece, units: "us" })).toBe("2 5/16 × 1 9/16 × 11/32 in (8.9 mm thick)");
    expect(sizeText({ ...piece, sidesMm: null, units: "us" })).toBe("11/32 in (8.9 mm)");
  });

  it("give no chance outside what was tried, however good it looks", () => {
    const recommended = { success: 0.99 };
    expect(chanceOf({ standing: "on the edge of what was tried", recommended })).toBe(
      "chance of success 99 %, on the edge of what was tried",
    );
    expect(chanceOf({ standing: "outside what was tried", recommended })).not.toMatch(/\d/);
  });
});
