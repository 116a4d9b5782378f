import { fail } from "../../check/check";
import { orTooLittle } from "../../check/or-too-little";
import { type FitProbeTrace, fitProbeTrace } from "../../heat/probe/fit-probe-trace";
import type { ProbeTrace } from "../../heat/probe/probe-trace";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { trialOf, variantOf } from "../../trials/kitchen-lookup";
import { sidesOfTrial } from "../../trials/pieces/sides-of-trial";
import { thermalOf } from "../window/window-calibration";

/** What `trialTraceFit` works from. */
export interface TrialTraceFitOptions {
  readonly kitchen: Kitchen;
  /** a trial that the kitchen has a trace of */
  readonly trialId: string;
}

/** How fast an appliance heated a piece, by the trace of one trial. */
export interface TrialTraceFit {
  readonly trial: KitchenTrial;
  readonly trace: ProbeTrace;
  readonly fit: FitProbeTrace;
}

/** Names of a channel that is not the core's: `fitProbeTrace` takes it as the air. */
const AIR = /air|oven|basket|chamber|ambient/i;
const CORE = /core|centre|center|middle/i;

/**
 * The surface coefficient of an appliance from the trace of a trial: the piece is that of the log, the air that of the trace's
 * own channel or else the setpoint (`fitProbeTrace`).
 *
 * @example
 * const kitchen = loadKitchen();
 * const [{ trialId }] = kitchen.traces;
 * trialTraceFit({ kitchen, trialId }).fit.n > 20; // → true
 */
export function trialTraceFit({ kitchen, trialId }: TrialTraceFitOptions): TrialTraceFit {
  const trial = trialOf(kitchen, trialId);
  const known = kitchen.traces.map((one) => one.trialId);
  const { trace } =
    kitchen.traces.find((one) => one.trialId === trialId) ??
    fail("trialTraceFit: trialId", `must be one with a trace: ${known.join(", ") || "there is none"}`, trialId);
  const names = trace.channels.map(({ name }) => name);
  const channel = names.find((name) => CORE.test(name)) ?? names.find((name) => !AIR.test(name)) ?? names[0];
  const air = names.find((name) => AIR.test(name)) ?? trial.setpointC;
  const [lengthMm, widthMm] = sidesOfTrial(kitchen, trial);
  const fit = orTooLittle(
    "trialTraceFit",
    () =>
      `The trace of trial ${trialId} does not tell how fast the piece heated: it takes a probe in the middle of a piece from when it goes in, with a reading every 15 s or so, until the core is hot.`,
    () =>
      fitProbeTrace({
        trace,
        channel,
        air,
        food: thermalOf(variantOf(kitchen, trial.variantId)),
        thicknessMm: trial.thicknessMm,
        lengthMm,
        widthMm,
      }),
  );
  return Object.freeze({ trial, trace, fit });
}
