import { HttpError } from "./http-error";

/** Refuses what comes faster than `most` requests in `spanMs`. */
export function rateLimit(most: number, spanMs: number, now: () => number = Date.now): () => void {
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
