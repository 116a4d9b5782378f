import { describe, expect, it } from "vitest";
import { borrowedPriors } from "../../../../kernel-lib/library/src/crisp/calibration/borrowed-priors";
import type { CrispCalibration } from "../../../../kernel-lib/library/src/crisp/calibration/calibrate-crisp";
import { calibrationAt, MIDDLE } from "../sample-food";

/** A calibration whose trials tell of the coefficient with the given estimate and posterior sd (in prior sds). */
function telling(estimate: number, sd: number): CrispCalibration {
  const base = calibrationAt([0, 0, 0, 0, 0, 0, 0, 0, 0], sd);
  const constants = base.constants.map((constant, at) =>
    at === 0 ? { ...constant, estimate, dataShare: 1 - sd * sd } : { ...constant, dataShare: 0 },
  );
  return { ...base, constants };
}

describe("borrowedPriors", () => {
  it("keeps one product's estimate, as wide as its doubt and the spread between products", () => {
    const [prior, ...none] = borrowedPriors([{ name: "a", calibration: telling(46, 0.1) }]);
    expect(none).toEqual([]);
    expect(prior.middle).toBeCloseTo(46, 9);
    const own = (0.1 * Math.log(1.6)) ** 2;
    expect(Math.log(prior.spread) ** 2).toBeCloseTo(own + 2 * Math.log(1.08) ** 2, 9);
    expect(prior.from).toBe("the trials of a in this kitchen");
  });

  it("weighs the sure product more, and leaves out one that tells nothing", () => {
    const [prior] = borrowedPriors([
      { name: "sure", calibration: telling(40, 0.05) },
      { name: "vague", calibration: telling(60, 0.6) },
    ]);
    expect(prior.middle).toBeGreaterThan(40);
    expect(prior.middle).toBeLessThan(44);
    expect(borrowedPriors([{ name: "silent", calibration: telling(60, 0.9) }])).toEqual([]);
  });

  it("borrows what belongs to appliance, load and turn, a share on its own scale, and nothing that is the product's", () => {
    const base = calibrationAt(MIDDLE, 0.2);
    const told = (...names: string[]) => ({
      ...base,
      constants: base.constants.map((constant) => ({
        ...constant,
        dataShare: names.includes(constant.name) ? 0.96 : 0,
      })),
    });
    const borrowed = borrowedPriors([
      { name: "a", calibration: told("turnGain", "loadLoss", "coefficient:basket", "crustWater", "drip", "airPower") },
    ]);
    expect(borrowed.map(({ name }) => name)).toEqual(["coefficient:basket", "loadLoss", "turnGain"]);
    const turn = borrowed[2];
    // posterior sd 0.2 of the prior's 0.05, and 0.05 between products, once for them and once for this one
    expect(turn.middle).toBeCloseTo(0.08, 12);
    expect(turn.spread ** 2).toBeCloseTo(0.01 ** 2 + 2 * 0.05 ** 2, 12);
    expect(turn.scale).toBe("plain");
    const two = borrowedPriors(["a", "b"].map((name) => ({ name, calibration: told("turnGain") })));
    const [weight, once] = [1 / (0.01 ** 2 + 0.05 ** 2), 1 / (0.05 ** 2 + 0.05 ** 2)];
    expect(two[0].spread ** 2).toBeCloseTo(1 / (2 * weight - once) + 0.05 ** 2, 12);
    expect(two[0].from).toBe("the trials of a, b in this kitchen");
  });

  it("asks that the trials tell at least half of a constant", () => {
    const base = calibrationAt(MIDDLE, 0.2);
    const at = (dataShare: number) => {
      const constants = base.constants.map((constant, place) => ({
        ...constant,
        dataShare: place === 0 ? dataShare : 0,
      }));
      return borrowedPriors([{ name: "a", calibration: { ...base, constants } }]);
    };
    expect(at(0.5)).toHaveLength(1);
    expect(at(0.499)).toHaveLength(0);
    expect(borrowedPriors([])).toEqual([]);
  });

  it("counts the generic prior once, however many products there are", () => {
    const generic = calibrationAt([0, 0, 0, 0, 0, 0, 0, 0, 0], 0.5).constants[0].prior;
    const unit = Math.log(generic.spread);
    const between = Math.log(1.08);
    // each product's trials alone say 50 with a sd of half the prior's: with the prior, 1/sd² = 4 + 1 in its own unit
    const own = 4 * (Math.log(50 / generic.middle) / unit);
    const product = {
      name: "one",
      calibration: telling(generic.middle * Math.exp((own / 5) * unit), Math.sqrt(1 / 5)),
    };
    const of = (count: number) => borrowedPriors(Array.from({ length: count }, () => product))[0];
    // many products outweigh the prior: their mean goes to what their trials say, not to each one's mixture with the prior
    expect(of(1).middle).toBeLessThan(48.5);
    expect(of(400).middle).toBeCloseTo(50, 0);
    expect(Math.log(of(400).spread)).toBeCloseTo(between, 2);
    // two products: posterior weights less one prior, by hand
    const weight = 1 / (unit ** 2 / 5 + between ** 2);
    const once = 1 / (unit ** 2 + between ** 2);
    const mean =
      (2 * weight * Math.log(product.calibration.constants[0].estimate) - once * Math.log(generic.middle)) /
      (2 * weight - once);
    expect(Math.log(of(2).middle)).toBeCloseTo(mean, 10);
    expect(Math.log(of(2).spread) ** 2).toBeCloseTo(1 / (2 * weight - once) + between ** 2, 10);
  });
});
