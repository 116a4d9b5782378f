import { describe, expect, test } from "vitest";
import { thermalProperties } from "../../kernel-lib/library/src/food/thermal/thermal-properties";
import { simulatePiece } from "../../kernel-lib/library/src/heat/solver/simulate-piece";
import { comparison } from "./comparison";
import reference from "./reheat-losses/reference.json";

const potatoes = comparison({
  page: "crisp-window",
  what: "water lost by frozen potato cuts in an oven, with usual sizes and times",
  against: "losses derived from the database's pairs of frozen and heated food",
  source: "USDA National Nutrient Database for Standard Reference, Release 28 (2015)",
});

describe("oven reheating of frozen potato cuts (USDA SR28, derived)", () => {
  const food = thermalProperties(reference.composition);
  const losses = reference.cuts.map(({ timeMin, thicknessMm, widthMm, lengthMm }) => {
    // a still oven at 225 °C with the pieces side by side on a tray, 20 W/(m²·K): the middle of 10 to 30, from memory
    const oven = { food, startC: -18, airC: 225, coefficientWm2K: 20, endMin: timeMin, cells: 6 };
    const run = simulatePiece({ ...oven, thicknessMm, widthMm, lengthMm });
    return run.waterLostPercent[run.waterLostPercent.length - 1];
  });

  test("the thin cut loses more than the thick ones, in the model as in the database", () => {
    const found = reference.cuts.map(({ lossPercent }) => (lossPercent[0] + lossPercent[1]) / 2);
    expect(found[0]).toBeGreaterThan(found[1]);
    expect(losses[0]).toBeGreaterThan(1.3 * losses[1]);
    expect(losses[0]).toBeGreaterThan(1.3 * losses[2]);
  });

  reference.cuts.forEach(({ name, lossPercent }, at) => {
    test(`${name}: rough size, within 40 %`, () => {
      const mean = (lossPercent[0] + lossPercent[1]) / 2;
      potatoes.relative(losses[at], mean, 0.4);
    });
  });
});
