import { panOutline, placesOnShelf } from "../../pan/freezer-fit";
import type { Pan } from "../../pan/pan";
import type { Kitchen } from "../../trials/kitchen";
import { type DayPlaces, type SettledPlaces, settlePlaces, USUAL_DAY } from "./day-places";
import { recoveryMin } from "./recovery-min";

/** What `kitchenPlaces` works from. */
export interface KitchenPlacesOptions {
  readonly kitchen: Kitchen;
  /** goes before what the kitchen says itself */
  readonly given?: DayPlaces;
  /** pans that are to stand in the freezer: the largest and the highest decide how many fit; all of the kitchen's unless given */
  readonly pans?: readonly Pan[];
  readonly where: string;
}

/**
 * A kitchen's places for a day: what is given, else what its `day.csv` says, else as in `USUAL_DAY`. How many of an appliance there are is
 * in `appliances.csv`; how long it takes to come back after filling, in loggers' files, where there are any (`recoveryMin`);
 * how many pans fit, side by side and above each other, follows from the sides and the clear height of a shelf.
 */
export function kitchenPlaces({ kitchen, given = {}, pans, where }: KitchenPlacesOptions): SettledPlaces {
  const own = kitchen.day ?? {};
  const all: DayPlaces = { ...own, ...defined(given), minutes: { ...own.minutes, ...given.minutes } };
  const counts = Object.fromEntries(kitchen.appliances.map(({ applianceId, count = 1 }) => [applianceId, count]));
  const logged = kitchen.appliances.flatMap(({ applianceId, name }) => {
    const min = recoveryMin(kitchen, applianceId);
    return min === null ? [] : [{ applianceId, name, min: Math.ceil(min) }];
  });
  const settled = settlePlaces(
    {
      ...all,
      ...shelfPlaces(all, pans ?? kitchen.pans, given),
      minutes: Object.keys(all.minutes ?? {}).length === 0 ? undefined : all.minutes,
      appliances: { ...counts, ...all.appliances },
    },
    where,
    kitchen.units,
  );
  const ofLogs = logged.map(({ name, min }) =>
    min === 0
      ? `As logged, the ${name} stays at its setting when it is filled.`
      : `As logged, the ${name} is back at its setting ${min} min after it was filled.`,
  );
  const standIns = [settled.standIns, ...ofLogs].filter((one) => one !== null).join(" ");
  return Object.freeze({
    ...settled,
    recoverMin: Object.freeze(Object.fromEntries(logged.map(({ applianceId, min }) => [applianceId, min]))),
    standIns: standIns === "" ? null : standIns,
  });
}

function defined(places: DayPlaces): DayPlaces {
  return Object.fromEntries(Object.entries(places).filter(([, value]) => value !== undefined)) as DayPlaces;
}

/** Places and stacks that follow from the shelves, where they are known and nothing else was said. */
function shelfPlaces(
  { gapMm = USUAL_DAY.gapMm, shelf, shelfClearMm, shelves = 1, stackUpTo }: DayPlaces,
  pans: readonly Pan[],
  given: DayPlaces,
): Pick<DayPlaces, "freezerPlaces" | "stackUpTo"> {
  if (shelf === undefined || given.freezerPlaces !== undefined || pans.length === 0) return {};
  const outlines = pans.map(panOutline);
  const largest = outlines.reduce((one, other) =>
    other.lengthMm * other.widthMm > one.lengthMm * one.widthMm ? other : one,
  );
  const heightMm = outlines.reduce((most, one) => Math.max(most, one.heightMm), 0);
  const { perShelf, stack } = placesOnShelf({
    shelves: { ...shelf, clearMm: shelfClearMm ?? heightMm + gapMm },
    thing: { ...largest, heightMm },
    gapMm,
  });
  return {
    freezerPlaces: Math.max(1, perShelf * shelves),
    stackUpTo: stackUpTo ?? (shelfClearMm === undefined ? 1 : Math.min(20, Math.max(1, stack))),
  };
}
