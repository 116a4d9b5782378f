import { fail, positive } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";

/** A pack in the freezer. */
export interface StoredPack {
  readonly id: string;
  readonly pieces: number;
  /** days until its quality is used up, from `storageLife` */
  readonly leftDays: number;
}

/** When one pack is eaten. */
export interface PackTurn {
  readonly id: string;
  readonly pieces: number;
  /** it is opened and finished after so many days from now */
  readonly fromDay: number;
  readonly untilDay: number;
  /** days that are left of its quality when it is finished; below 0 it comes too late */
  readonly spareDays: number;
}

/** In which order packs go, and how long they last. */
export interface StockPlan {
  readonly kind: "stock plan";
  readonly turns: readonly PackTurn[];
  readonly lastsDays: number;
  /** pieces that would be past their quality before they are eaten */
  readonly tooLate: number;
}

/**
 * The order in which to use the packs in the freezer, what ends first going first, and how long they last at so many pieces
 * a week. No other order leaves the latest pack less late (J. R. Jackson 1955).
 *
 * @example
 * const packs = [{ id: "May", pieces: 40, leftDays: 90 }, { id: "March", pieces: 20, leftDays: 10 }];
 * const plan = stockPlan({ packs, piecesPerWeek: 20 });
 * plan.turns.map(({ id }) => id); // → ["March", "May"]
 * plan.lastsDays; // → 21
 */
export function stockPlan(options: {
  readonly packs: readonly StoredPack[];
  readonly piecesPerWeek: number;
}): StockPlan {
  const where = "stockPlan";
  const piecesPerDay = positive(options.piecesPerWeek, `${where}: piecesPerWeek`, "") / 7;
  for (const { id, pieces, leftDays } of options.packs) {
    if (!(Number.isInteger(pieces) && pieces >= 1))
      fail(`${where}: pieces of ${id}`, "must be a whole number from 1", pieces);
    if (!(leftDays >= 0)) fail(`${where}: leftDays of ${id}`, "must be >= 0", leftDays);
  }
  const turns: PackTurn[] = [];
  let day = 0;
  for (const { id, pieces, leftDays } of [...options.packs].sort((a, b) => a.leftDays - b.leftDays)) {
    const untilDay = day + pieces / piecesPerDay;
    turns.push({ id, pieces, fromDay: day, untilDay, spareDays: leftDays - untilDay });
    day = untilDay;
  }
  const late = ({ pieces, fromDay, spareDays, untilDay }: PackTurn): number =>
    spareDays >= 0 ? 0 : Math.min(pieces, Math.ceil(Math.min(-spareDays, untilDay - fromDay) * piecesPerDay - 1e-9));
  return freezeDeep({
    kind: "stock plan" as const,
    turns,
    lastsDays: day,
    tooLate: turns.reduce((sum, turn) => sum + late(turn), 0),
  });
}
