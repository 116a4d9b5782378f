import { freezeDeep } from "../../check/freeze-deep";
import { limitCaution } from "../../safety/limit-text";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { temperatureText } from "../../units/temperature-text";
import { thicknessText } from "../../units/thickness-text";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "../window/crisp-window";
import { type CardCondition, type CardEvidenceOptions, cardEvidence } from "./card-evidence";

/** What goes on the pack or the ticket, with what stands behind it. */
export interface ReheatCard {
  readonly kind: "reheat card";
  readonly title: string;
  /** to be printed, one line each, the caution last */
  readonly lines: readonly string[];
  /** false when the card should not be printed yet, with `why` and what is `missing` */
  readonly ready: boolean;
  /** what stands against it, in words */
  readonly why: readonly string[];
  /** the trials to run or the things to look at, in words */
  readonly missing: readonly string[];
  readonly evidence: readonly CardCondition[];
  readonly window: KitchenWindow;
}

/**
 * The reheat card of a variant: setting in the kitchen's unit with the other beside it (`settingText`), load, turn, time rounded
 * the safe way (`cardTime`), the slab that it is for, the core to probe for, and the caution; with its chance of success for the developer, and whether the log is good for
 * printing it (`cardEvidence`). A card from one appliance says that it was tested in that one only.
 *
 * @param options as for `crispWindow`
 *
 * @example
 * reheatCard({ kitchen: loadKitchen(), variantId: "turkey-sage" }).lines[0]; // → "From frozen, pre-heat to 195 °C (385 °F)."
 */
export function reheatCard(options: CrispWindowOptions): ReheatCard {
  return cardOfWindow({ kitchen: options.kitchen, window: crispWindow(options) });
}

/** The reheat card of a window that is there already. */
export function cardOfWindow({ kitchen, window }: CardEvidenceOptions): ReheatCard {
  const { setting, recommended, limit } = window;
  const evidence = cardEvidence({ kitchen, window });
  const open = evidence.filter((condition) => !condition.met);
  const from = setting.startC <= -10 ? "From frozen" : `From ${temperatureText(setting.startC, setting.units)}`;
  const appliance = applianceOf(kitchen, setting.applianceId).name;
  const tested = kitchen.trials.some(
    (trial) => trial.variantId === window.variantId && trial.applianceId === setting.applianceId,
  );
  const half = Math.round(0.6 * recommended.cardMin);
  return freezeDeep({
    kind: "reheat card",
    title: `${window.variantName}: reheat`,
    lines: [
      `${from}, pre-heat to ${settingText(setting.setpointC, setting.units)}.`,
      `One layer, at most ${Math.round(100 * setting.loadFraction)} % of the floor covered.`,
      ...(setting.turned ? [`Turn after ${half} min.`] : []),
      `Take out after ${recommended.cardMin} min.`,
      slabLine(kitchen, window),
      tested ? `Tested in ${appliance} only.` : `Not tested in ${appliance} yet.`,
      limitCaution(limit, setting.units),
    ],
    ready: open.length === 0,
    why: open.map((condition) => `${condition.name}: ${condition.found}`),
    missing: open.map((condition) => condition.todo as string),
    evidence,
    window,
  });
}

/** What slab the time is for: as thick as the batch lies on its pan. */
function slabLine(kitchen: Kitchen, { setting, panId, batchG }: KitchenWindow): string {
  const slab = `For pieces of a slab ${thicknessText(setting.thicknessMm, kitchen.units)} thick`;
  if (panId === null || batchG === null) return `${slab}.`;
  return `${slab}: ${massText(batchG, kitchen.units)} on one ${panOf(kitchen, panId).name}.`;
}
