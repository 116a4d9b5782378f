import type { Trial } from "../trial";

/** The morning that a trial was run in: as the log names it, or else its day. */
export function sessionOf({ session, date }: Trial): string {
  return session ?? date;
}
