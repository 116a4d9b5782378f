import { bothLimits } from "../../safety/limit-text";
import type { Kitchen } from "../../trials/kitchen";
import type { Trial } from "../../trials/trial";
import { temperatureText } from "../../units/temperature-text";

/** A sentence where the coldest core of a trial, at taking out, is below what its product must reach; null where it is not, or was not read. */
export function coldCore({ variantId, coreC }: Trial, { variants, units }: Kitchen): string | null {
  const limit = variants.find((variant) => variant.variantId === variantId)?.limit;
  if (limit === undefined || coreC === null || coreC >= limit.limitC) return null;
  return `The core of ${temperatureText(coreC, units)} is below ${bothLimits(limit, units)}, which every core must reach: not safe, however crisp it is.`;
}
