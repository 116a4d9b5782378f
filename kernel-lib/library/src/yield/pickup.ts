import { fail, positive, within } from "../check/check";
import type { PickupBasis } from "../food/formula/formula";

/** What `pickup` works from. */
export interface PickupOptions {
  /** mass before the layer (g) */
  readonly beforeG: number;
  /** mass after the layer (g) */
  readonly afterG: number;
  /** what the percentage is of; there is no default, as the trade uses both */
  readonly basis: PickupBasis;
}

/** A pickup with the weight that it is of. */
export interface Pickup {
  readonly layerG: number;
  readonly percent: number;
  readonly basis: PickupBasis;
}

/**
 * Coating pickup from two weighings, on the weight before the layer (`substrate`) or after it (`finished`). The same
 * layer reads 30 % on one and 23 % on the other, so a pickup without its basis says little.
 *
 * @param options masses (g) and basis
 * @example
 * pickup({ beforeG: 20, afterG: 26, basis: "substrate" }).percent; // → 30
 * pickup({ beforeG: 20, afterG: 26, basis: "finished" }).percent; // → 23.0769
 * pickup({ beforeG: 20, afterG: 19, basis: "finished" }); // throws "must be at least beforeG"
 */
export function pickup(options: PickupOptions): Pickup {
  const beforeG = positive(options.beforeG, "pickup: beforeG", "g");
  const afterG = positive(options.afterG, "pickup: afterG", "g");
  if (afterG < beforeG) fail("pickup: afterG", `must be at least beforeG ${beforeG} g`, afterG);
  const layerG = afterG - beforeG;
  const percent = (100 * layerG) / (checkBasis(options.basis) === "substrate" ? beforeG : afterG);
  return Object.freeze({ layerG, percent, basis: options.basis });
}

/** What `convertPickup` works from. */
export interface ConvertPickupOptions {
  /** pickup (%) on `from` */
  readonly percent: number;
  readonly from: PickupBasis;
  readonly to: PickupBasis;
}

/**
 * A pickup on the other basis: finished = substrate / (1 + substrate), as fractions.
 *
 * @example
 * convertPickup({ percent: 30, from: "substrate", to: "finished" }); // → 23.0769
 */
export function convertPickup(options: ConvertPickupOptions): number {
  const from = checkBasis(options.from);
  const to = checkBasis(options.to);
  const top = from === "finished" ? 99.9 : 1000;
  const share = within(options.percent, 0, top, "convertPickup: percent", `% of the ${from} weight`) / 100;
  if (from === to) return options.percent;
  return from === "substrate" ? (100 * share) / (1 + share) : (100 * share) / (1 - share);
}

function checkBasis(basis: PickupBasis): PickupBasis {
  if (basis !== "substrate" && basis !== "finished") fail("pickup: basis", 'must be "substrate" or "finished"', basis);
  return basis;
}
