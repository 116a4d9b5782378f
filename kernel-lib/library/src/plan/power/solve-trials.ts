import { fail, within } from "../../check/check";

/** The number of trials, not rounded, at which a power that grows with them reaches what is asked; at least `least`. */
export function solveTrials(where: string, power: number, powerAt: (trials: number) => number, least = 2): number {
  within(power, 0.1, 0.999, `${where}: power`, "");
  if (powerAt(least) >= power) return least;
  let low = least;
  let high = 2 * least;
  while (powerAt(high) < power) {
    low = high;
    high *= 2;
    if (high > 1e6)
      fail(`${where}: difference`, "must be large enough to be seen with a million trials", powerAt(high));
  }
  for (let step = 0; step < 80 && high - low > 1e-9 * high; step++) {
    const middle = (low + high) / 2;
    if (powerAt(middle) < power) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
