/** Today by the clock of this machine, in UTC, as `2026-03-14`. */
export function today(): string {
  return new Date().toISOString().slice(0, 10);
}
