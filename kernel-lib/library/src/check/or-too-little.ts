import { tooLittle } from "./too-little";

/**
 * Gives what `work` gives; where it refuses the data (a `RangeError`), the log has too little for it yet, and that is said in
 * `sentence`. For fits over a log that was checked when it was read: then only its amount can be wrong.
 */
export function orTooLittle<T>(where: string, sentence: () => string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError) tooLittle(where, sentence());
    throw error;
  }
}
