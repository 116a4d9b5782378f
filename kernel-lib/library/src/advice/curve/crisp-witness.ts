import { isTooLittle } from "../../check/too-little";
import { predictSlabTime } from "../../fit/curve/predict-slab-time";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenWindow } from "../window/crisp-window";
import { type VariantCrispTime, type VariantCrispTimeOptions, variantCrispTime } from "./variant-crisp-time";

/** What the plain curve through a log says beside the window: an independent witness that decides nothing. */
export interface CrispWitness {
  /** null when the log carries no curve at this setting, with why in the sentence */
  readonly timeMin: number | null;
  readonly prediction95: readonly [number, number] | null;
  /** the window's crisp time lies within what curve and clocks leave open; null without a curve */
  readonly agrees: boolean | null;
  readonly sentence: string;
}

/** The empirical curve of a variant, or why there is none. */
export function crispCurve(options: VariantCrispTimeOptions): VariantCrispTime | string {
  try {
    return variantCrispTime(options);
  } catch (error) {
    if (isTooLittle(error)) return "too few crisp times at its own setting for a curve";
    throw error;
  }
}

/** What `crispWitness` works from. */
export interface CrispWitnessOptions {
  readonly kitchen: Kitchen;
  readonly window: KitchenWindow;
  /** from `crispCurve`, to save fitting it again */
  readonly curve?: VariantCrispTime | string;
}

/** Holds the window of a variant's own appliance and setpoint against the curve through its crisp times. */
export function crispWitness({ kitchen, window, ...given }: CrispWitnessOptions): CrispWitness {
  const curve = given.curve ?? crispCurve({ kitchen, variantId: window.variantId });
  const none = (sentence: string): CrispWitness => ({ timeMin: null, prediction95: null, agrees: null, sentence });
  if (typeof curve === "string") return none(curve);
  const { applianceId, setpointC } = variantOf(kitchen, window.variantId);
  if (window.setting.applianceId !== applianceId || Math.abs(window.setting.setpointC - setpointC) > 1)
    return none("the curve is of another appliance or setpoint");
  const { timeMin, prediction95 } = predictSlabTime(curve.fit, window.setting.thicknessMm);
  const { min, interval95 } = window.crisp;
  const agrees = interval95[0] <= prediction95[1] && interval95[1] >= prediction95[0];
  const said = `the curve says crisp at ${timeMin.toFixed(1)} min, the clocks ${min.toFixed(1)}`;
  return {
    timeMin,
    prediction95,
    agrees,
    sentence: agrees
      ? `${said}: they agree within their doubt`
      : `${said}: they disagree, so look at the trials nearest ${thicknessWords(window.setting.thicknessMm, kitchen.units)}`,
  };
}
