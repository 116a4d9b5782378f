import { HttpError } from "./http-error";

/** Time that only goes forward, ms: the clock of the day may be set back, and a limit by it would then hold for hours. */
export const steadyMs = (): number => performance.now();

/** Refuses what comes faster than `most` requests in `spanMs`. */
export function rateLimit(most: number, spanMs: number, now: () => number = steadyMs): () => void {
  let began = now();
  let count = 0;
  return () => {
    if (now() - began >= spanMs) {
      began = now();
      count = 0;
    }
    if (++count > most) throw new HttpError(429, "too many requests; wait a moment");
  };
}
