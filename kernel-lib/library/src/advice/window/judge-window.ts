import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { NEVER_MIN } from "../../crisp/window/window-setting";
import { chanceText, loadSafeText, minutesText } from "../../crisp/window/window-words";
import { ownSettingText } from "../../units/setting-text";
import type { KitchenWindow } from "./crisp-window";

/** What a window says of a batch on a pan. */
export type WindowAdvice = "keep" | "on the edge" | "outside what was tried" | "too thick" | "too thin" | "unsure";

/** The advice in one word and in a sentence. */
export interface WindowVerdict {
  readonly advice: WindowAdvice;
  readonly verdict: string;
}

/** A window that is open, within the accepted time, and whose chance at the card's time is `GOOD_CHANCE` or more. */
export function isGood({ open, recommended, setting }: KitchenWindow): boolean {
  return open && recommended.cardMin <= setting.longestMin && recommended.success >= GOOD_CHANCE;
}

/**
 * The verdict on a window, the same wherever one is given: "keep" when it is good and was tried, "on the edge" when it is
 * good at the edge of what was tried, "outside what was tried" where no chance can be given, "too thin", "too thick",
 * else "unsure".
 */
export function judgeWindow(window: KitchenWindow): WindowVerdict {
  const { recommended, setting, opens, closes, standing, extrapolation } = window;
  const card = `${recommended.cardMin} min at ${ownSettingText(setting.setpointC, setting.units)}`;
  if (!window.open && window.closedBy === "drying" && (window.meetsAtMm ?? 0) > setting.thicknessMm)
    return {
      advice: "too thin",
      verdict: `too thin: too dry at ${minutesText(closes.min)} min, before it is crisp at ${minutesText(opens.min)} min`,
    };
  if (Math.max(opens.min, recommended.cardMin) > setting.longestMin || !window.open)
    return { advice: "too thick", verdict: `too thick: ${lateText(window)}` };
  if (standing === "outside what was tried")
    return {
      advice: "outside what was tried",
      verdict: `outside what was tried (${extrapolation.join("; ")}): log a trial first; best guess ${card}`,
    };
  const chance = chanceText(recommended.success);
  if (!isGood(window))
    return {
      advice: "unsure",
      verdict: `unsure: the best safe time, ${recommended.cardMin} min, succeeds in ${chance}`,
    };
  if (standing === "on the edge of what was tried")
    return {
      advice: "on the edge",
      verdict: `on the edge of what was tried${extrapolation.length === 0 ? "" : ` (${extrapolation.join("; ")})`}: ${card} should succeed in ${chance}; log a trial to be sure`,
    };
  return { advice: "keep", verdict: `keep: ${card} succeeds in ${chance}` };
}

/** What comes too late, and after what; what never comes at all, alone. */
function lateText(window: KitchenWindow): string {
  const { closedBy, closes, core, crisp, open, recommended, setting } = window;
  const { safeFromMin } = window.chances;
  const safe = loadSafeText(safeFromMin);
  if (safeFromMin >= NEVER_MIN) return safe;
  if (crisp.min >= NEVER_MIN) return "it is never crisp";
  const isCrisp = `it is crisp only at ${minutesText(crisp.min)} min`;
  if (!open) {
    const spoiled = `after it is too ${closedBy === "browning" ? "brown" : "dry"} at ${minutesText(closes.min)} min`;
    return window.waitsFor === "core"
      ? `a typical core is at its limit only at ${minutesText(core.min)} min, ${spoiled}; ${safe}`
      : `${isCrisp}, ${spoiled}`;
  }
  const accepted = `after the ${setting.longestMin} min accepted`;
  const late = [
    ...(safeFromMin > setting.longestMin ? [safe] : []),
    ...(crisp.min > setting.longestMin ? [isCrisp] : []),
  ];
  return `${late.length === 0 ? `its best time is only at ${recommended.cardMin} min` : late.join(" and ")}, ${accepted}`;
}
