import { freezeDeep } from "../../check/freeze-deep";
import type { CardLanguage } from "../../trials/card-language";
import type { Kitchen } from "../../trials/kitchen";
import { applianceOf, panOf } from "../../trials/kitchen-lookup";
import { massText } from "../../units/mass-text";
import { settingText } from "../../units/setting-text";
import { temperatureText } from "../../units/temperature-text";
import { thicknessText } from "../../units/thickness-text";
import { type CrispWindowOptions, crispWindow, type KitchenWindow } from "../window/crisp-window";
import { type CardCondition, type CardEvidenceOptions, cardEvidence } from "./card-evidence";
import { cardNumber, cardTexts } from "./card-texts";
import { latestTime } from "./latest-time";

/** What goes on the pack or the ticket, with what stands behind it. */
export interface ReheatCard {
  readonly kind: "reheat card";
  readonly title: string;
  /** of its title and lines; what stands against it is for the developer, in English */
  readonly language: CardLanguage;
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
 * The reheat card of a variant in the kitchen's language (`cardTexts`): setting in its unit with the other beside it (`settingText`),
 * load, turn, time rounded the safe way (`cardTime`) and up to when that is as good (`latestTime`), the slab that it is for, the core
 * to probe for, and the caution; with its chance of success for the developer, and whether the log is good for printing it
 * (`cardEvidence`). A card from one appliance says that it was tested in that one only.
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
  const { units, language } = kitchen;
  const texts = cardTexts(language);
  const number = (text: string | number): string => cardNumber(text, language, units);
  const evidence = cardEvidence({ kitchen, window });
  const open = evidence.filter((condition) => !condition.met);
  const from = setting.startC <= -10 ? null : number(temperatureText(setting.startC, units));
  const latest = latestTime(window);
  const appliance = applianceOf(kitchen, setting.applianceId).name;
  const tested = kitchen.trials.some(
    (trial) => trial.variantId === window.variantId && trial.applianceId === setting.applianceId,
  );
  return freezeDeep({
    kind: "reheat card",
    title: texts.title(window.variantName),
    language,
    lines: [
      texts.preheat(from, number(settingText(setting.setpointC, units))),
      texts.layer(Math.round(100 * setting.loadFraction)),
      ...(setting.turned ? [texts.turn(String(Math.round(0.6 * recommended.cardMin)))] : []),
      texts.takeOut(number(recommended.cardMin), latest === null ? null : number(latest)),
      slabLine(kitchen, window),
      tested ? texts.testedIn(appliance) : texts.notTestedIn(appliance),
      texts.softOtherwise,
      texts.caution(limit, units),
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
  const { units, language } = kitchen;
  const number = (text: string): string => cardNumber(text, language, units);
  return cardTexts(language).slab(
    number(thicknessText(setting.thicknessMm, units)),
    panId === null || batchG === null
      ? null
      : { mass: number(massText(batchG, units)), pan: panOf(kitchen, panId).name },
  );
}
