import { describe, expect, it } from "vitest";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { windowCalibration } from "../../../../kernel-lib/library/src/advice/window/window-calibration";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const calibration = windowCalibration({ kitchen, variantId: "turkey-sage" });
const common = { kitchen, variantId: "turkey-sage", calibration, draws: 600 };

describe("crispWindow", () => {
  it("takes pan, batch, appliance and setpoint of the variant unless told otherwise", () => {
    const window = crispWindow(common);
    expect(window).toMatchObject({ variantId: "turkey-sage", panId: "half-sheet", batchG: 1500 });
    expect(window.setting).toMatchObject({ applianceId: "small-basket", setpointC: 195, startC: -18, longestMin: 18 });
    const thinner = crispWindow({ ...common, batchG: 1200 });
    expect(thinner.setting.thicknessMm).toBeLessThan(window.setting.thicknessMm);
    expect(thinner.opens.min).toBeLessThan(window.opens.min);
    expect(crispWindow({ ...common, thicknessMm: 12 })).toMatchObject({ panId: null, batchG: null });
  });

  it("carries the poultry limit with its source and the caution of a raw filling", () => {
    const { limit, recommended } = crispWindow(common);
    expect(limit).toMatchObject({ foodClass: "poultry", limitC: 74, limitF: 165 });
    expect(limit.caution).toContain("labelled as raw");
    expect(recommended.coreC).toBeGreaterThan(limit.limitC);
  });

  it("takes the limit that the variant has by what is in it, not the class that its formula declares", () => {
    const variants = kitchen.variants.map((variant) => ({ ...variant, limit: { ...variant.limit, limitC: 80 } }));
    const stricter = crispWindow({ ...common, kitchen: { ...kitchen, variants } });
    expect(stricter.limit.limitC).toBe(80);
    expect(stricter.core.min).toBeGreaterThan(crispWindow(common).core.min);
  });

  it("opens inside what the variant's own trials saw", () => {
    for (const variantId of ["beet-lentil", "turkey-sage", "chickpea-carrot"]) {
      const variant = kitchen.variants.find((each) => each.variantId === variantId)!;
      const { opens } = crispWindow({ kitchen, variantId, draws: 300 });
      const near = kitchen.trials.filter(
        (trial) =>
          trial.variantId === variantId &&
          trial.applianceId === variant.applianceId &&
          trial.setpointC === variant.setpointC &&
          trial.crispMin !== null &&
          trial.notCrispMin !== null,
      );
      expect(Math.min(...near.map((trial) => trial.notCrispMin as number))).toBeLessThan(opens.min);
      expect(Math.max(...near.map((trial) => trial.crispMin as number))).toBeGreaterThan(opens.min);
    }
  });

  it("says what lies beyond the trials", () => {
    expect(crispWindow(common).extrapolation).toEqual([]);
    const far = crispWindow({ ...common, thicknessMm: 24, setpointC: 220 });
    expect(far.extrapolation.join("; ")).toMatch(/24\.0 mm is outside the trials, .*; 220 °C is outside the trials/);
  });

  it("has a smaller piece sooner in core, crust and drying, and a larger one later", () => {
    const own = crispWindow(common);
    const small = crispWindow({ ...common, piece: { lengthMm: 20, widthMm: 20 } });
    const large = crispWindow({ ...common, piece: { lengthMm: 140, widthMm: 90 } });
    for (const moment of ["core", "crisp", "dry"] as const) {
      expect(small[moment].min).toBeLessThan(own[moment].min);
      expect(large[moment].min).toBeGreaterThan(own[moment].min);
    }
    expect(small.core.min).toBeLessThan(0.9 * own.core.min);
  });

  it("takes the piece from the pan's cut: sticks of a turkey slab are cut as the variant says", () => {
    const { setting } = crispWindow(common);
    expect(setting.sidesMm![0]).toBeCloseTo(68.87, 2);
    expect(setting.sidesMm![1]).toBeLessThan(32);
    expect(setting.piecesPerLoad).toBe(Math.floor((0.6 * 42_000) / (setting.sidesMm![0] * setting.sidesMm![1])));
  });
});
