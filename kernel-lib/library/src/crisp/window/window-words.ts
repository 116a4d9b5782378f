import { ownLengthText } from "../../units/length-text";
import { ownThicknessText, thicknessWords } from "../../units/thickness-text";
import type { Standing } from "./misfit-at";
import { NEVER_MIN, type SettledSetting } from "./window-setting";

/** A chance in words: never quite 0 or 100 %. */
export function chanceText(chance: number): string {
  if (chance >= 0.995) return "over 99 %";
  return chance < 0.005 ? "under 1 %" : `${Math.round(100 * chance)} %`;
}

/** The chance of success of a window in words; on the edge of what was tried it says so, and outside there is none to print. */
export function chanceOf({
  standing,
  recommended,
}: {
  readonly standing: Standing;
  readonly recommended: { readonly success: number };
}): string {
  if (standing === "outside what was tried") return "outside what was tried, so no chance is given: log a trial first";
  const edge = standing === "tried" ? "" : `, ${standing}`;
  return `chance of success ${chanceText(recommended.success)}${edge}`;
}

/** Thickness, and the sides of a piece where it is cut: `"8.9 mm (58 × 39 mm)"`, `"2 5/16 × 1 9/16 × 11/32 in (8.9 mm thick)"`. */
export function sizeText({
  thicknessMm,
  sidesMm,
  units,
}: Pick<SettledSetting, "thicknessMm" | "sidesMm" | "units">): string {
  const thick = thicknessWords(thicknessMm, units);
  if (sidesMm === null) return thick;
  const sides = ownLengthText(sidesMm, units);
  if (units === "metric") return `${thick} (${sides})`;
  return `${sides.replace(/ in$/, "")} × ${ownThicknessText(thicknessMm, "us")} (${ownThicknessText(thicknessMm, "metric")} thick)`;
}

/** From when on a whole load is safe, in words: the one time that is called safe; a typical core is hot enough sooner. */
export function loadSafeText(safeFromMin: number): string {
  return safeFromMin < NEVER_MIN
    ? `every core of 99 of 100 loads is safe only from ${minutesText(safeFromMin)} min`
    : "at no time is every core of 99 of 100 loads safe";
}

/** Minutes in words; what never comes is said so. */
export function minutesText(minutes: number): string {
  return minutes < NEVER_MIN ? minutes.toFixed(1) : "never";
}
