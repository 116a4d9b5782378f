import type { CoreLimit } from "../../safety/core-limit";
import { limitCaution, limitText } from "../../safety/limit-text";
import type { KitchenUnits } from "../../units/unit-table";

/**
 * What stands below every plan: the core limit and its caution, that a plan is no card, and how raw food is handled. 5 °C
 * (41 °F) for cold food is the FDA Food Code's (3-501.16, from memory).
 */
export function planCautions(limit: CoreLimit, units: KitchenUnits): readonly string[] {
  const cold = units === "us" ? "41 °F (5 °C)" : "5 °C (41 °F)";
  return [
    limitCaution(limit, units),
    `Taste and serve only pieces of a load whose core was read at ${limitText(limit, units)} or more; throw the others away. These are times to try, not times to print.`,
    ...(limit.raw
      ? [
          `The pieces are raw: keep mix and pieces at ${cold} or colder until they go in, and wash hands, board, knife and probe before they touch anything else.`,
        ]
      : []),
  ];
}
