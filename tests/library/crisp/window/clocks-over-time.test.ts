import { describe, expect, it } from "vitest";
import { clocksOverTime } from "../../../../kernel-lib/library/src/crisp/window/clocks-over-time";
import { windowAt } from "../../../../kernel-lib/library/src/crisp/window/window-at";
import { calibrationAt, MIDDLE } from "../sample-food";

describe("clocksOverTime", () => {
  it("passes each mark when the window says so", () => {
    const setting = {
      calibration: calibrationAt(MIDDLE, 0.1),
      thicknessMm: 9,
      applianceId: "basket",
      setpointC: 200,
    };
    const window = windowAt(setting);
    const clocks = clocksOverTime({
      ...setting,
      timesMin: [window.core.min, window.crisp.min, window.brown.min, window.dry.min],
    });
    expect(clocks.coreC[0]).toBeCloseTo(74, 6);
    expect(clocks.crustMm[1]).toBeCloseTo(clocks.crispFromMm, 9);
    expect(clocks.crispScore[1]).toBeCloseTo(6, 6);
    expect(clocks.brownScore[2]).toBeCloseTo(7, 3);
    expect(clocks.lossPercent[3]).toBeCloseTo(25, 6);
  });
});
