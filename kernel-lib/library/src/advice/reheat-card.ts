import { freezeDeep } from "../check/freeze-deep";
import { chanceText } from "../crisp/window/window-at";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "./crisp-window";

/** What goes on the pack or the ticket, with what stands behind it. */
export interface ReheatCard {
  readonly kind: "reheat card";
  readonly title: string;
  /** to be printed, one line each, the caution last */
  readonly lines: readonly string[];
  /** false when the card should not be printed yet, with `why` */
  readonly ready: boolean;
  readonly why: readonly string[];
  readonly window: KitchenWindow;
}

/** Below this chance a card is not ready; our judgement. */
const READY_CHANCE = 0.9;

/**
 * The reheat card of a variant: setting in °C and °F, load, turn, time rounded the safe way, the core to probe for, and
 * the caution; with its chance of success for the developer, and whether it is ready to be printed.
 *
 * @param options as for `crispWindow`
 *
 * @example
 * reheatCard({ kitchen: loadKitchen(), variantId: "turkey-sage" }).lines[0]; // → "From frozen, pre-heat to 195 °C (385 °F)."
 */
export function reheatCard(options: CrispWindowOptions): ReheatCard {
  const window = crispWindow(options);
  const { setting, recommended, limit, calibration } = window;
  const why: string[] = [];
  if (!window.open) why.push("the window is closed at this setting");
  if (recommended.success < READY_CHANCE) why.push(`its chance of success is ${chanceText(recommended.success)}`);
  if (recommended.cardMin > setting.longestMin)
    why.push(`it takes ${recommended.cardMin} min, past the ${setting.longestMin} min accepted`);
  if (!calibration.converged) why.push("the calibration did not converge");
  why.push(...window.extrapolation);
  const fahrenheit = Math.round((setting.setpointC * 1.8 + 32) / 5) * 5;
  const from = setting.startC < -5 ? "From frozen" : `From ${setting.startC} °C`;
  const half = Math.round(0.6 * recommended.cardMin);
  return freezeDeep({
    kind: "reheat card",
    title: `${window.variantName}: reheat`,
    lines: [
      `${from}, pre-heat to ${setting.setpointC} °C (${fahrenheit} °F).`,
      `One layer, at most ${Math.round(100 * setting.loadFraction)} % of the floor covered.`,
      ...(setting.turned ? [`Turn after ${half} min.`] : []),
      `${recommended.cardMin} min.`,
      limit.caution,
    ],
    ready: why.length === 0,
    why,
    window,
  });
}
