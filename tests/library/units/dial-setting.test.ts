import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dialSetting } from "../../../kernel-lib/library/src/units/dial-setting";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import { ownSettingText } from "../../../kernel-lib/library/src/units/setting-text";

describe("dialSetting", () => {
  it("gives what stands on a dial, within half a step", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 290, noNaN: true }),
        fc.constantFrom("us" as const, "metric" as const),
        (settingC, units) => {
          const dialC = dialSetting(settingC, units);
          expect(Math.abs(dialC - settingC)).toBeLessThanOrEqual((units === "us" ? 2.5 / 1.8 : 2.5) + 1e-9);
          expect(ownSettingText(dialC, units)).toMatch(/^\d+[05] °[CF]$/);
          expect(dialSetting(dialC, units)).toBeCloseTo(dialC, 9);
        },
      ),
    );
  });

  it("keeps a setting of a dial", () => {
    expect(dialSetting(celsius("390 °F"), "us")).toBeCloseTo(celsius("390 °F"), 9);
    expect(dialSetting(195, "metric")).toBe(195);
    expect(() => dialSetting(Number.NaN, "us")).toThrow("dialSetting: settingC must be a finite number in °C");
  });
});
