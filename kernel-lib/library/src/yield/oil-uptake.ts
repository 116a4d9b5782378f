import { fail, positive, within } from "../check/check";

/** What `oilUptake` works from. */
export interface OilUptakeOptions {
  /** mass before frying (g) */
  readonly massBeforeG: number;
  /** mass of the same pieces after draining (g) */
  readonly massAfterG: number;
  /** fat before (% of mass) */
  readonly fatBeforePercent: number;
  /** fat after (% of mass) */
  readonly fatAfterPercent: number;
}

/** Oil taken up in a fryer, and what left. */
export interface OilUptake {
  readonly oilG: number;
  /** oil on the mass before (%): the pickup of a `fryer oil` layer on the substrate */
  readonly pickupPercent: number;
  /** mass after on the mass with the oil (%): the cook yield that goes with that layer */
  readonly yieldPercent: number;
  /** water and the little else that left (g) */
  readonly lostG: number;
}

/**
 * Oil uptake from two weighings and two fat analyses: oil = m_after f_after − m_before f_before. Fat that dripped out
 * while oil went in does not show: it is the net uptake.
 *
 * @param options masses and fat
 * @returns oil (g), the pickup to write as a layer, and the yield that goes with it
 * @example
 * const uptake = oilUptake({ massBeforeG: 100, massAfterG: 90, fatBeforePercent: 4, fatAfterPercent: 9 });
 * uptake.oilG; // → 4.1
 * uptake.yieldPercent; // → 86.455
 */
export function oilUptake(options: OilUptakeOptions): OilUptake {
  const massBeforeG = positive(options.massBeforeG, "oilUptake: massBeforeG", "g");
  const massAfterG = positive(options.massAfterG, "oilUptake: massAfterG", "g");
  const before = within(options.fatBeforePercent, 0, 100, "oilUptake: fatBeforePercent", "%") / 100;
  const after = within(options.fatAfterPercent, 0, 100, "oilUptake: fatAfterPercent", "%") / 100;
  const oilG = massAfterG * after - massBeforeG * before;
  if (oilG < 0) {
    const held = `${(massBeforeG * before).toFixed(1)} g before`;
    fail("oilUptake: fat after", `must be at least the ${held}: fat was lost, use cookChange`, massAfterG * after);
  }
  const withOilG = massBeforeG + oilG;
  if (massAfterG > withOilG * 1.02) {
    fail("oilUptake: massAfterG", `must be at most the ${withOilG.toFixed(1)} g of piece and oil`, massAfterG);
  }
  return Object.freeze({
    oilG,
    pickupPercent: (100 * oilG) / massBeforeG,
    yieldPercent: (100 * massAfterG) / withOilG,
    lostG: withOilG - massAfterG,
  });
}
