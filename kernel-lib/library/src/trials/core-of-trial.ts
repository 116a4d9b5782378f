import type { Trial } from "./trial";

/** Water in a core boils at 100 °C; a reading up to so much higher is the thermometer's (°C): our judgement. */
export const MOST_CORE_C = 103;

/** The highest core that was read of a trial, at taking out or rested (°C); null when none was read. */
export function highestCore({ coreC, restedCoreC }: Trial): number | null {
  return coreC === null ? restedCoreC : Math.max(coreC, restedCoreC ?? coreC);
}

/** Whether a core was read that no piece with water in it has: most often °F that stand under °C. */
export function hasImpossibleCore(trial: Trial): boolean {
  return (highestCore(trial) ?? 0) > MOST_CORE_C;
}
