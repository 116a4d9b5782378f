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

  it("reads a rested core too, and takes 10 K below early and 15 K above late as still explained", () => {
    expect([read(60), read(59.9), read(100), read(100.1)].map((found) => found.length)).toEqual([0, 1, 0, 1]);
    const asked: boolean[] = [];
    const found = contradictionsIn({
      ...common,
      clockReadingC: (_, rested) => {
        asked.push(rested);
        return rested ? { middle: 90, early: 88, late: 92 } : clocks;
      },
      observations: [{ ...unmeasured, coreC: 78, restedCoreC: 70 }],
    });
    expect(asked).toEqual([false, true]);
    expect(found).toHaveLength(1);
    expect(found[0].sentence).toMatch(/core of 70.* say 90 °C \(88 to 92 °C/);
    expect(contradictionsIn({ ...common, observations: [unmeasured] })).toEqual([]);
  });

  it("calls each kind of noise unusual from 2.4 times on, in its own unit", () => {
    const observations = [unmeasured];
    const said = (change: Partial<typeof USUAL_NOISE>) =>
      contradictionsIn({ ...common, observations, noise: { ...USUAL_NOISE, ...change } }).map(({ sentence }) =>
        sentence.replace(/ times the usual.*/, ""),
      );
    expect(said({ coreK: 6 })).toEqual([]);
    expect(said({ coreK: 6.1 })).toEqual(["the log's core readings scatter about the clocks by 6.1 K, 2.4"]);
    expect(said({ run: 0.18 })).toEqual(["the log's runs scatter about the clocks by 18 %, 3.0"]);
    expect(said({ crispTime: 0.12 })).toEqual(["the log's crisp times scatter about the clocks by 12 %, 3.0"]);
    expect(said({ misfit: 3 })).toEqual(["the log's settings scatter about the clocks by 300 %, 3.0"]);
    expect(said({ lossPercent: 80, session: 3 })).toEqual([]);
    const water = (crustWaterKgM3: number) => contradictionsIn({ ...common, observations, crustWaterKgM3 }).length;
    expect([water(847), water(848)]).toEqual([0, 1]);
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
