import { describe, expect, it } from "vitest";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { judgeWindow } from "../../../../kernel-lib/library/src/advice/window/judge-window";
import { windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const known = ["beet-lentil", "turkey-sage"].map((variantId) => ({
  variantId,
  calibration: windowCalibration({ kitchen, variantId }),
}));
const windows = known.flatMap((of) =>
  [6, 12, 20, 30].flatMap((thicknessMm) =>
    [8, 14, 60].flatMap((longestMin) =>
      [3, 8.9].map((tooBrownScore) =>
        crispWindow({ kitchen, ...of, thicknessMm, longestMin, tooBrownScore, tooDryPercent: 60, draws: 100 }),
      ),
    ),
  ),
);
/** A time that is called safe, of whatever it is said. */
const CALLED_SAFE = /safe (?:only )?(?:at|by|from) ([\d.]+) min/g;

describe("judgeWindow", () => {
  it("calls no other time safe than that of every core of 99 of 100 loads, in the window's own sentence neither", () => {
    let told = 0;
    for (const window of windows)
      for (const text of [judgeWindow(window).verdict, window.sentence])
        for (const [, minutes] of text.matchAll(CALLED_SAFE)) {
          told += 1;
          expect(minutes, text).toBe(window.chances.safeFromMin.toFixed(1));
          expect(text).toContain("every core of 99 of 100 loads is safe only from ");
        }
    expect(told).toBeGreaterThan(windows.length);
  });

  it("says of the typical core that it is one, and names what comes after the accepted time", () => {
    // a crust that is sooner than the core, and browning between the two
    const { core, ...rest } = windows[windows.length - 1];
    const sooner = { ...core, min: core.min / 2 };
    const closed = {
      ...rest,
      core,
      crisp: sooner,
      closes: sooner,
      opens: core,
      open: false,
      waitsFor: "core",
    } as const;
    expect(judgeWindow({ ...closed, closedBy: "browning" }).verdict).toBe(
      `too thick: a typical core is at its limit only at ${core.min.toFixed(1)} min, after it is too brown at ${sooner.min.toFixed(1)} min; every core of 99 of 100 loads is safe only from ${rest.chances.safeFromMin.toFixed(1)} min`,
    );
    expect(core.min).toBeLessThan(rest.chances.safeFromMin);
    const never = { ...closed, chances: { ...rest.chances, safeFromMin: 1e4 } };
    expect(judgeWindow(never).verdict).toBe("too thick: at no time is every core of 99 of 100 loads safe");
    const past = windows.filter(({ open, recommended, setting }) => open && recommended.cardMin > setting.longestMin);
    expect(past.length).toBeGreaterThan(0);
    for (const window of past) {
      const [, minutes] = judgeWindow(window).verdict.match(/(?:at|from) ([\d.]+) min, after the \d+ min accepted$/)!;
      expect(Number(minutes)).toBeGreaterThanOrEqual(window.setting.longestMin);
    }
  });
});
