import { fail, positive, within } from "../check/check";

/** Water and fat of a food (% of its mass). */
export interface WaterAndFat {
  readonly waterPercent: number;
  readonly fatPercent: number;
}

/** What `cookChange` works from. */
export interface CookChangeOptions {
  /** mass before (g) */
  readonly massBeforeG: number;
  /** mass of the same pieces after (g) */
  readonly massAfterG: number;
  readonly before: WaterAndFat;
  readonly after: WaterAndFat;
}

/** What cooking did to water and fat. */
export interface CookChange {
  /** water gained or, negative, lost (% of the mass before) */
  readonly moistureChangePercent: number;
  /** fat gained or, negative, lost (% of the mass before) */
  readonly fatChangePercent: number;
  /** water left (% of the water before) */
  readonly moistureRetentionPercent: number;
  /** fat left (% of the fat before); above 100 when oil was taken up; `null` when there was no fat */
  readonly fatRetentionPercent: number | null;
}

/**
 * Moisture and fat change on the raw weight, and retention, from two weighings and two analyses (definitions of the
 * USDA Table of Cooking Yields for Meat and Poultry, 2014; from memory).
 *
 * change % = 100 (m_a x_a − m_b x_b) / m_b;  retention % = 100 m_a x_a / (m_b x_b)
 *
 * @param options masses (g), water and fat (%)
 * @returns changes and retentions (%)
 * @example
 * const change = cookChange({ massBeforeG: 100, massAfterG: 78.5, before: { waterPercent: 70.2, fatPercent: 9 }, after: { waterPercent: 62.1, fatPercent: 10.8 } });
 * change.moistureChangePercent; // → -21.4515
 * change.fatRetentionPercent; // → 94.2
 */
export function cookChange(options: CookChangeOptions): CookChange {
  const massBeforeG = positive(options.massBeforeG, "cookChange: massBeforeG", "g");
  const massAfterG = positive(options.massAfterG, "cookChange: massAfterG", "g");
  for (const side of ["before", "after"] as const) {
    const water = within(options[side].waterPercent, 0, 100, `cookChange: ${side}.waterPercent`, "%");
    const fat = within(options[side].fatPercent, 0, 100, `cookChange: ${side}.fatPercent`, "%");
    if (water + fat > 100)
      fail(`cookChange: ${side}`, "must hold at most 100 % of water and fat together", options[side]);
  }
  const waterBefore = positive((massBeforeG * options.before.waterPercent) / 100, "cookChange: water before", "g");
  const waterAfter = (massAfterG * options.after.waterPercent) / 100;
  const fatBefore = (massBeforeG * options.before.fatPercent) / 100;
  const fatAfter = (massAfterG * options.after.fatPercent) / 100;
  return Object.freeze({
    moistureChangePercent: (100 * (waterAfter - waterBefore)) / massBeforeG,
    fatChangePercent: (100 * (fatAfter - fatBefore)) / massBeforeG,
    moistureRetentionPercent: (100 * waterAfter) / waterBefore,
    fatRetentionPercent: fatBefore === 0 ? null : (100 * fatAfter) / fatBefore,
  });
}
