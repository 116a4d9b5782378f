import type { Kitchen } from "../../trials/kitchen";

/** Air counts as back from here on: so far below the setting (K); our judgement. */
const BACK_K = 5;
/** A fall that is later than this is not of the door that was opened to fill it (min); our judgement. */
const LATEST_MIN = 15;
/** A channel of the appliance's air. */
const AIR = /air|oven|basket/i;

/**
 * How long an appliance takes to come back to its setting once it was filled (min), from loggers' files with a channel of
 * its air: the last time within a quarter of an hour at which the air is more than 5 K below the trial's setting. The middle of several; null
 * where no file tells.
 */
export function recoveryMin(kitchen: Pick<Kitchen, "trials" | "traces">, applianceId: string): number | null {
  const trialOf = new Map(kitchen.trials.map((trial) => [trial.trialId, trial]));
  const logged = kitchen.traces.flatMap(({ trialId, trace }): number[] => {
    const trial = trialOf.get(trialId);
    const air = trace.channels.find(({ name }) => AIR.test(name));
    if (trial?.applianceId !== applianceId || air === undefined) return [];
    const { timeMin } = trace;
    if (timeMin[timeMin.length - 1] < 2) return [];
    const cold = air.temperatureC.findLastIndex(
      (celsius, at) => timeMin[at] <= LATEST_MIN && celsius < trial.setpointC - BACK_K,
    );
    if (cold === -1) return [0];
    return cold + 1 < timeMin.length ? [timeMin[cold + 1]] : [];
  });
  const sorted = [...logged].sort((a, b) => a - b);
  return sorted.length === 0 ? null : sorted[Math.floor((sorted.length - 1) / 2)];
}
