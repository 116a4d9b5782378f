import { type Kitchen, reheatCard } from "slabwright";
import { windowCalibration } from "slabwright/advice";
import type { CrispCalibration } from "slabwright/crisp";
import type { Forecast } from "./score";
import type { WorldSetting } from "./world";

/** The library's own knowledge of a world's product, worked out once for all settings of a log. */
export function learn(kitchen: Kitchen): CrispCalibration {
  return windowCalibration({ kitchen, variantId: kitchen.variants[0].variantId });
}

/** What the library says of a setting: the one place where the worlds meet it. */
export function forecastOf(options: {
  readonly kitchen: Kitchen;
  readonly calibration: CrispCalibration;
  readonly setting: WorldSetting;
  readonly tooDryPercent: number;
}): Forecast {
  const { kitchen, calibration, setting, tooDryPercent } = options;
  const { ready, window } = reheatCard({
    kitchen,
    calibration,
    variantId: kitchen.variants[0].variantId,
    thicknessMm: setting.thicknessMm,
    piece: { lengthMm: setting.lengthMm, widthMm: setting.widthMm },
    applianceId: setting.applianceId,
    setpointC: setting.setpointC,
    loadFraction: setting.loadFraction,
    turned: setting.flipMin !== null,
    tooDryPercent,
  });
  return {
    core95: window.core.interval95,
    crisp95: window.crisp.interval95,
    closes95: window.closes.interval95,
    safeFromMin: window.chances.safeFromMin,
    cardMin: window.recommended.cardMin,
    success: window.recommended.success,
    ready,
  };
}
