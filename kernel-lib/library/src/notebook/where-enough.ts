import { isTooLittle } from "../check/too-little";
import { show } from "./show";

/**
 * Runs a part of a notebook; where the log has too little for it yet, shows what to log instead, and goes on. All other errors
 * pass.
 *
 * @param part what shows something, in a function without arguments
 * @returns what the part returned, or `null` where there was too little
 * @example
 * whereEnough(() => variantCrispTime({ kitchen: loadKitchen(), variantId: "beet-lentil" }).times.times.length); // → 21
 */
export function whereEnough<T>(part: () => T): T | null {
  try {
    return part();
  } catch (error) {
    if (!isTooLittle(error)) throw error;
    show(`Too little yet. ${error.message}`);
    return null;
  }
}
