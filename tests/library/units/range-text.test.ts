import { describe, expect, it } from "vitest";
import { celsius } from "../../../kernel-lib/library/src/units/kitchen-units";
import { ownLengthText } from "../../../kernel-lib/library/src/units/length-text";
import { ownMassText } from "../../../kernel-lib/library/src/units/mass-text";
import { rangeText } from "../../../kernel-lib/library/src/units/range-text";
import { ownSettingText } from "../../../kernel-lib/library/src/units/setting-text";

describe("rangeText", () => {
  it("says the unit once where both ends have it alone", () => {
    expect(rangeText([25.4, 40], (mm) => ownLengthText(mm, "us"))).toBe("1 to 1 9/16 in");
    expect(rangeText([185, 200], (setting) => ownSettingText(setting, "metric"))).toBe("185 to 200 °C");
    expect(rangeText([celsius("375 °F"), celsius("390 °F")], (setting) => ownSettingText(setting, "us"))).toBe(
      "375 to 390 °F",
    );
  });

  it("keeps both units where they differ, and says one value once", () => {
    expect(rangeText([80, 1190], (massG) => ownMassText(massG, "us"))).toBe("2.82 oz to 2 lb 10 oz");
    expect(rangeText([700, 1190], (massG) => ownMassText(massG, "us"))).toBe("1 lb 8.7 oz to 2 lb 10 oz");
    expect(rangeText([1190.1, 1190.2], (massG) => ownMassText(massG, "us"))).toBe("2 lb 10 oz");
  });
});
