import { freezeDeep } from "../../check/freeze-deep";
import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import { applianceOf, variantOf } from "../../trials/kitchen-lookup";
import type { CrispWindowOptions } from "../window/crisp-window";
import { windowCalibration } from "../window/window-calibration";
import { cardNumber, cardTexts } from "./card-texts";
import { type ReheatCard, reheatCard } from "./reheat-card";

/** A card for a pack that goes into kitchens with other appliances. */
export interface PackCard {
  readonly kind: "pack card";
  readonly variantId: string;
  /** the card of each appliance that its trials were run in */
  readonly cards: readonly ReheatCard[];
  /** minutes that should do in nine of ten appliances of this kind; null with fewer than three, or when there are none */
  readonly rangeMin: readonly [number, number] | null;
  readonly ready: boolean;
  /** to be printed, one line each, the caution last */
  readonly lines: readonly string[];
  readonly why: readonly string[];
}

/** Appliances from which a population is drawn; our judgement. */
const LEAST_APPLIANCES = 3;
/** Usual spread of times between appliances (sd of the logarithm), worth three appliances; our judgement. */
const USUAL_SPREAD = 0.15;
const USUAL_WORTH = 3;

/**
 * The card for a pack, from every appliance that the variant was tried in. From one or two it says that it was tested in
 * those only. From three or more it draws a population of appliances and gives the range of minutes that works in nine of
 * ten: from the time at which the product is crisp in nine of ten and its core safe in 98 of 100, to that at which it is
 * not yet overdone in nine of ten (Student's t on the logarithms, their spread pulled to 15 %).
 *
 * @param options as for `crispWindow`, without an appliance
 *
 * @example
 * packCard({ kitchen: loadKitchen(), variantId: "turkey-sage" }).lines[1]; // → "Tested in small basket, fan oven only: in another appliance watch, and probe the core."
 */
export function packCard(options: Omit<CrispWindowOptions, "applianceId">): PackCard {
  const { kitchen } = options;
  const { variantId } = variantOf(kitchen, options.variantId);
  const calibration = options.calibration ?? windowCalibration({ kitchen, variantId });
  const tried = kitchen.appliances
    .map((appliance) => appliance.applianceId)
    .filter((id) => kitchen.trials.some((trial) => trial.variantId === variantId && trial.applianceId === id));
  const cards = tried.map((applianceId) => reheatCard({ ...options, applianceId, calibration }));
  const [first] = cards;
  if (first === undefined)
    return freezeDeep({
      kind: "pack card",
      variantId,
      cards,
      rangeMin: null,
      ready: false,
      lines: [],
      why: ["no trial of it was logged"],
    });
  const windows = cards.map((card) => card.window);
  const rangeMin =
    cards.length < LEAST_APPLIANCES
      ? null
      : populationRange({
          crispMin: windows.map((window) => window.crisp.min),
          safeMin: windows.map((window) => window.chances.safeFromMin),
          closesMin: windows.map((window) => window.closes.min),
        });
  const nameOf = (card: ReheatCard): string => applianceOf(kitchen, card.window.setting.applianceId).name;
  const names = cards.map(nameOf).join(", ");
  const why = [
    ...cards.filter((card) => !card.ready).map((card) => `${nameOf(card)}: ${card.why.join("; ")}`),
    ...(cards.length >= LEAST_APPLIANCES && rangeMin === null
      ? ["no one time works in nine of ten appliances: print a time for each kind"]
      : []),
  ];
  const texts = cardTexts(kitchen.language);
  const number = (minutes: number): string => cardNumber(minutes, kitchen.language, kitchen.units);
  const time =
    rangeMin === null
      ? texts.takeOutIn(cards.map((card) => [nameOf(card), number(card.window.recommended.cardMin)]))
      : texts.takeOut(number(rangeMin[0]), number(rangeMin[1]));
  return freezeDeep({
    kind: "pack card",
    variantId,
    cards,
    rangeMin,
    ready: why.length === 0,
    lines: [
      `${first.lines[0]} ${time}`,
      rangeMin === null ? texts.testedInFew(names) : texts.testedInMany(names),
      ...first.lines.slice(1, 2),
      texts.softOtherwise,
      texts.caution(first.window.limit, kitchen.units),
    ],
    why,
  });
}

/** The range of minutes that works in nine of ten appliances, rounded inwards to half minutes; null when it is empty. */
export function populationRange(times: {
  readonly crispMin: readonly number[];
  readonly safeMin: readonly number[];
  readonly closesMin: readonly number[];
}): readonly [number, number] | null {
  const from = Math.max(nextApplianceMin(times.crispMin, 0.9), nextApplianceMin(times.safeMin, 0.98));
  const to = nextApplianceMin(times.closesMin, 0.1);
  const [first, last] = [Math.ceil(2 * from) / 2, Math.floor(2 * to) / 2];
  return first <= last ? [first, last] : null;
}

/** A quantile of the time in one more appliance, from the times in several (min). */
function nextApplianceMin(minutes: readonly number[], share: number): number {
  const logs = minutes.map(Math.log);
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  const squares = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0);
  const freedom = logs.length - 1 + USUAL_WORTH;
  const sd = Math.sqrt((squares + USUAL_WORTH * USUAL_SPREAD ** 2) / freedom);
  return Math.exp(mean + studentTQuantile(share, freedom) * sd * Math.sqrt(1 + 1 / logs.length));
}
