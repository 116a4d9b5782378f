import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { LOOSE_LOAD } from "../../crisp/clocks/load-effect";
import { largestOf } from "../../statistics/extremes";
import type { Kitchen } from "../../trials/kitchen";
import { variantOf } from "../../trials/kitchen-lookup";
import type { KitchenUnits } from "../../units/unit-table";
import type { DayMinutes, DayPlaces } from "../day/day-places";
import { kitchenPlaces } from "../day/kitchen-places";
import { crispWindow } from "../window/crisp-window";
import { piecesOnFloor, wholeOnFloor } from "../window/load-plan";
import { windowCalibration } from "../window/window-calibration";

/** What `loadChoices` works from. */
export interface LoadChoicesOptions {
  readonly kitchen: Kitchen;
  readonly variantId: string;
  /** pieces to bring back; those of one batch unless given */
  readonly pieces?: number;
  /** minutes of hands and ovens; as the kitchen's day unless given */
  readonly places?: DayPlaces;
  /** pieces drawn for each chance; 1000 unless given */
  readonly draws?: number;
}

/** One way to bring so many pieces back: an appliance, filled loosely or until its floor is covered. */
export interface LoadChoice {
  readonly applianceId: string;
  readonly applianceName: string;
  /** how many of it there are */
  readonly appliances: number;
  readonly fill: "loose" | "full";
  readonly setpointC: number;
  readonly piecesPerLoad: number;
  /** share of the floor that a load covers [-] */
  readonly loadFraction: number;
  /** what the areas alone would claim for a full floor; null where its shape is not known */
  readonly byArea: number | null;
  readonly loads: number;
  /** a load's time (min) */
  readonly cookMin: number;
  /** from the first piece in to the last one out, with filling, emptying and recovery (min) */
  readonly totalMin: number;
  /** of that, minutes in which hands are wanted */
  readonly handsMin: number;
  /** by how much the first load is older than the last when all is out (min) */
  readonly waitsMin: number;
  /** chance that a piece is safe, crisp and not overdone [-]; null where nothing near it was logged */
  readonly success: number | null;
  /** every piece of a load has its core at the limit [-]; null as above */
  readonly safeLoads: number | null;
  /** where the setting stands to what was tried, in words; null when inside */
  readonly standing: string | null;
}

/** Ways to bring a number of pieces back, held against each other. */
export interface LoadChoices {
  readonly kind: "load choices";
  readonly variantId: string;
  readonly variantName: string;
  readonly pieces: number;
  readonly units: KitchenUnits;
  /** soonest first */
  readonly choices: readonly LoadChoice[];
  /** what the choice comes to, for a cook */
  readonly sentence: string;
  readonly notes: readonly string[];
}

/** A covered floor in one layer: above this pieces overlap; our judgement. */
const FULL_LOAD = 0.95;

/**
 * One oven tray against ten basket loads: for every appliance of the kitchen, filled loosely and in full, how many loads a
 * number of pieces takes, how long that is from the first piece in to the last one out, how long hands are wanted, and how
 * often a piece comes out safe, crisp and not overdone.
 *
 * total = rounds·(fill + cook + empty) + (rounds − 1)·recovery, rounds = ⌈loads / appliances⌉; whole pieces where the floor's
 * shape is known (`wholePieces`), else by area. A fuller floor heats more slowly (`coefficientAtLoad`), and its time is longer.
 *
 * @returns choices, soonest first; one whose setting is far from the trials has no chance
 *
 * @example
 * const { choices } = loadChoices({ kitchen: loadKitchen(), variantId: "beet-lentil", pieces: 60 });
 * choices[0].totalMin < choices[choices.length - 1].totalMin; // → true
 * choices.find(({ applianceId, fill }) => applianceId === "small-basket" && fill === "loose").loads; // → 5
 */
export function loadChoices(options: LoadChoicesOptions): LoadChoices {
  const where = "loadChoices";
  const { kitchen, draws = 1000 } = options;
  const variant = variantOf(kitchen, options.variantId);
  const places = kitchenPlaces({ kitchen, given: options.places, where: `${where}: places` });
  const calibration = windowCalibration({ kitchen, variantId: variant.variantId });
  const own = crispWindow({ kitchen, variantId: variant.variantId, calibration, draws: 100 });
  const [lengthMm, widthMm] = own.batch?.sidesMm ?? [0, 0];
  const pieceMm2 = lengthMm * widthMm;
  const pieces = options.pieces ?? own.batch?.pieces.pieces ?? 1;
  if (!(Number.isInteger(pieces) && pieces >= 1 && pieces <= 100_000))
    fail(`${where}: pieces`, "must be a whole number from 1 to 100000", pieces);
  const choices = kitchen.appliances.flatMap((appliance): LoadChoice[] => {
    const { applianceId, name, floorCm2 } = appliance;
    const setpointC = usualSetpoint(kitchen, variant.variantId, applianceId) ?? variant.setpointC;
    const whole = wholeOnFloor(appliance, [lengthMm, widthMm]);
    const fillings = (["loose", "full"] as const).map((fill) => ({
      fill,
      most: piecesOnFloor(appliance, fill === "loose" ? LOOSE_LOAD : FULL_LOAD, [lengthMm, widthMm]),
    }));
    return fillings
      .filter(
        ({ fill, most }, at) =>
          most >= 1 && (fill === "loose" || (most > fillings[at - 1].most && pieces > fillings[at - 1].most)),
      )
      .map(({ fill, most }): LoadChoice => {
        const piecesPerLoad = Math.min(pieces, most);
        const loadFraction = (piecesPerLoad * pieceMm2) / (100 * floorCm2);
        const { recommended, standing } = crispWindow({
          kitchen,
          variantId: variant.variantId,
          applianceId,
          setpointC,
          loadFraction,
          calibration,
          draws,
        });
        const loads = Math.ceil(pieces / piecesPerLoad);
        const count = places.appliances[applianceId] ?? 1;
        const isKnown = standing !== "outside what was tried";
        return {
          applianceId,
          applianceName: name,
          appliances: count,
          fill,
          setpointC,
          piecesPerLoad,
          loadFraction,
          byArea: whole === null ? null : Math.floor((100 * floorCm2) / pieceMm2 + 1e-9),
          loads,
          cookMin: recommended.cardMin,
          ...minutesOf(loads, count, recommended.cardMin, {
            ...places.minutes,
            recover: places.recoverMin?.[applianceId] ?? places.minutes.recover,
          }),
          success: isKnown ? recommended.success : null,
          safeLoads: isKnown ? recommended.safeLoads : null,
          standing: standing === "tried" ? null : standing,
        };
      });
  });
  const sorted = [...choices].sort((a, b) => a.totalMin - b.totalMin);
  return freezeDeep({
    kind: "load choices" as const,
    variantId: variant.variantId,
    variantName: variant.name,
    pieces,
    units: kitchen.units,
    choices: sorted,
    sentence: sentenceOf(variant.name, pieces, sorted),
    notes: [
      ...(places.standIns === null ? [] : [places.standIns]),
      ...(kitchen.appliances.some(({ floorShape }) => floorShape == null)
        ? [
            "Pieces are counted by area where only the floor's area is known, which may claim some too many: type its sides into appliances.csv.",
          ]
        : []),
      "A setpoint is that of most trials in that appliance, else the variant's own. Probe every load.",
    ],
  });
}

/** Minutes from the first piece in to the last one out, with several of an appliance side by side. */
function minutesOf(
  loads: number,
  appliances: number,
  cookMin: number,
  { emptyOven, fillOven, recover }: DayMinutes,
): Pick<LoadChoice, "totalMin" | "handsMin" | "waitsMin"> {
  const rounds = Math.ceil(loads / appliances);
  const round = fillOven + cookMin + emptyOven;
  return {
    totalMin: rounds * round + (rounds - 1) * recover,
    handsMin: loads * (fillOven + emptyOven),
    waitsMin: (rounds - 1) * (round + recover),
  };
}

/** The setting of most trials of a variant in an appliance; null where there is none. */
function usualSetpoint(kitchen: Kitchen, variantId: string, applianceId: string): number | null {
  const counts = new Map<number, number>();
  for (const trial of kitchen.trials)
    if (trial.variantId === variantId && trial.applianceId === applianceId)
      counts.set(trial.setpointC, (counts.get(trial.setpointC) ?? 0) + 1);
  const most = largestOf([0, ...counts.values()]);
  return [...counts].find(([, count]) => count === most)?.[0] ?? null;
}

function sentenceOf(name: string, pieces: number, choices: readonly LoadChoice[]): string {
  const told = ({
    applianceName,
    appliances,
    cookMin,
    fill,
    handsMin,
    loads,
    success,
    totalMin,
  }: LoadChoice): string => {
    const chance =
      success === null
        ? "no chance can be told, as nothing near it was logged"
        : `${Math.round(100 * success)} of 100 pieces right`;
    return `${loads === 1 ? "one load" : `${loads} loads`}${fill === "full" ? " on a covered floor" : ""} in the ${applianceName}${appliances > 1 ? ` (${appliances} of them)` : ""}, ${cookMin} min${loads === 1 ? "" : " each"}: ${Math.ceil(totalMin)} min in all, hands for ${Math.ceil(handsMin)}, ${chance}`;
  };
  if (choices.length === 0) return `No appliance of this kitchen takes a piece of ${name}.`;
  const [soonest] = choices;
  const crispest = [...choices].sort((a, b) => (b.success ?? -1) - (a.success ?? -1))[0];
  const percent = (share: number | null): number => Math.round(100 * (share ?? 0));
  const both = percent(crispest.success) <= percent(soonest.success);
  return `${pieces} pieces of ${name}, soonest: ${told(soonest)}.${both ? "" : ` Most often right: ${told(crispest)}.`}`;
}
