import { describe, expect, it } from "vitest";
import {
  crispPriors,
  PRODUCT_CONSTANTS,
  type ProductConstant,
} from "../../../../kernel-lib/library/src/crisp/calibration/crisp-priors";
import { type PiecePlace, pieceAt } from "../../../../kernel-lib/library/src/crisp/calibration/piece-at";
import { UNCUT } from "../../../../kernel-lib/library/src/crisp/clocks/edge-speed";

const applianceIds = ["basket", "oven"];
const middles = crispPriors({ applianceIds, crustWaterKgM3: 400, coated: true }).map((prior) => prior.middle);
const usual: PiecePlace = { applianceId: "oven", setpointC: 195, loadFraction: 0.6, turned: false, sidesMm: [40, 25] };

function pieceOf(change: Partial<Record<ProductConstant, number>> = {}, place: Partial<PiecePlace> = {}) {
  const values = [...middles];
  values[1] = 50;
  for (const [name, value] of Object.entries(change))
    values[applianceIds.length + PRODUCT_CONSTANTS.indexOf(name as ProductConstant)] = value;
  return pieceAt({ values, applianceIds, place: { ...usual, ...place }, coatingMm: 0.5, innerWaterKgM3: 770 });
}

describe("pieceAt", () => {
  it("takes each constant from its own place", () => {
    const plain = {
      conductivity: "conductivityFactor",
      coreFactor: "coreFactor",
      coreByThickness: "coreByThickness",
      restGain: "restGain",
      probeWarm: "probeWarmK",
      warmShare: "warmShare",
      edgeCrust: "edgeCrust",
      crustWater: "crustWaterKgM3",
      crustDepth: "crustMm",
      panelWidth: "panelWidthMm",
      crustByThickness: "crustByThickness",
      browning: "browningPerS",
      browningEnergy: "browningKJmol",
      brownByThickness: "brownByThickness",
      brownSteepness: "brownSteepness",
      drip: "dripFraction",
    } as const;
    for (const [name, field] of Object.entries(plain))
      expect(pieceOf({ [name]: 0.4321 }), name).toEqual({ ...pieceOf(), [field]: 0.4321 });
    expect(pieceOf()).toMatchObject({ coefficientWm2K: 50, coatingMm: 0.5, innerWaterKgM3: 770, crustFactor: 1 });
    expect(pieceOf({}, { applianceId: "basket" }).coefficientWm2K).toBe(40);
  });

  it("knows the sides of a piece, and a slab by their absence", () => {
    expect(pieceOf().sides).toEqual({ lengthMm: 40, widthMm: 25 });
    expect(pieceOf({}, { sidesMm: null }).sides).toBe(UNCUT);
  });

  it("raises the coefficient with a power of the air's absolute temperature, lowers it by load and raises it by turn", () => {
    expect(pieceOf({ airPower: 2 }, { setpointC: 230 }).coefficientWm2K).toBeCloseTo(50 * (503.15 / 468.15) ** 2, 9);
    expect(pieceOf({ loadLoss: 0.3 }, { loadFraction: 1 }).coefficientWm2K).toBeCloseTo(35, 9);
    expect(pieceOf({ loadLoss: 0.3 }, { loadFraction: null }).coefficientWm2K).toBe(50);
    expect(pieceOf({ turnGain: 0.1 }, { turned: true }).coefficientWm2K).toBeCloseTo(55, 9);
  });

  it("speeds core and crust by their shares for each 15 K above 195 °C", () => {
    const hot = pieceOf({ coreFactor: 1.2, coreBySetpoint: 0.02, crustBySetpoint: 0.05 }, { setpointC: 225 });
    expect(hot.coreFactor).toBeCloseTo(1.2 * Math.exp(-0.04), 12);
    expect(hot.crustFactor).toBeCloseTo(Math.exp(-0.1), 12);
  });

  it("bends a plateau smoothly below 100 and above 77 °C, and leaves it alone from 81 to 96", () => {
    const plateau = (value: number): number => pieceOf({ plateau: value }).plateauC;
    for (const same of [81, 88, 96]) expect(plateau(same)).toBe(same);
    for (const end of [81, 96]) {
      expect(plateau(end + 1e-6) - plateau(end - 1e-6)).toBeCloseTo(2e-6, 9);
    }
    expect(plateau(120)).toBeLessThan(100);
    expect(plateau(120)).toBeGreaterThan(99);
    expect(plateau(98)).toBeGreaterThan(plateau(97));
    expect(plateau(50)).toBeGreaterThan(77);
    expect(plateau(50)).toBeLessThan(78);
    expect(plateau(79)).toBeLessThan(plateau(80));
  });

  it("keeps the sides' share between 0.1 and 1.5 and a rest's gain from being a loss", () => {
    const side = (value: number): number => pieceOf({ sideShare: value }).sideShare;
    expect([side(-1), side(0.3), side(4)]).toEqual([0.1, 0.3, 1.5]);
    expect(pieceOf({ restGain: -0.2 }).restGain).toBe(0);
  });

  it("refuses an appliance that was not calibrated", () => {
    expect(() => pieceOf({}, { applianceId: "grill" })).toThrow('applianceId must be one of basket, oven, got "grill"');
  });
});
