import { describe, expect, it } from "vitest";
import { contradictionsIn } from "../../../../kernel-lib/library/src/crisp/calibration/contradictions";
import { USUAL_NOISE } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import { unmeasured } from "../sample-food";

const clocks = { middle: 78, early: 70, late: 85 };
const common = {
  noise: USUAL_NOISE,
  mixWaterKgM3: 770,
  crustWaterKgM3: 400,
  clockReadingC: () => clocks,
};
const read = (coreC: number) =>
  contradictionsIn({ ...common, observations: [{ ...unmeasured, id: "T-7", timeMin: 12, coreC }] });

describe("contradictionsIn", () => {
  it("names a core far colder than the other trials say, and one far warmer", () => {
    expect(read(26.6)).toMatchObject([
      {
        trials: ["T-7"],
        sentence: expect.stringContaining("T-7 read a core of 26.6 °C after 12.0 min where the other trials say 78 °C"),
      },
    ]);
    expect(read(59)).toHaveLength(1);
    expect(read(61)).toEqual([]);
    expect(read(99)).toEqual([]);
    expect(read(101)).toHaveLength(1);
  });

  it("speaks when noise is no noise any more, and when the crust would hold more water than the mix", () => {
    const observations = [unmeasured];
    const swollen = contradictionsIn({ ...common, observations, noise: { ...USUAL_NOISE, coreK: 11.9 } });
    expect(swollen[0].sentence).toBe(
      "the log's core readings scatter about the clocks by 11.9 K, 4.8 times the usual: the clocks do not describe these trials",
    );
    const wet = contradictionsIn({ ...common, observations, crustWaterKgM3: 1660 });
    expect(wet[0].sentence).toContain("ask for 1660 kg of water from each m³ of crust, and the mix holds 770");
    expect(contradictionsIn({ ...common, observations })).toEqual([]);
  });
});
