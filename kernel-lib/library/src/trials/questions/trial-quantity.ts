import type { KitchenTrial } from "../kitchen";

/** A number that a trial tells, by name. */
export interface TrialQuantity {
  /** as a heading says it, with its unit */
  readonly heading: string;
  /** null where the trial does not tell it */
  readonly of: (trial: KitchenTrial) => number | null;
}

/** Name of a number that a trial tells. */
export type TrialQuantityName =
  | "thicknessMm"
  | "setpointC"
  | "timeMin"
  | "crispTimeMin"
  | "coreC"
  | "lossPercent"
  | "pieceG"
  | "crispScore"
  | "brownScore";

/** The numbers that trials are asked for. */
export const TRIAL_QUANTITIES: Readonly<Record<TrialQuantityName, TrialQuantity>> = {
  thicknessMm: { heading: "thickness (mm)", of: (trial) => trial.thicknessMm },
  setpointC: { heading: "setpoint (°C)", of: (trial) => trial.setpointC },
  timeMin: { heading: "time (min)", of: (trial) => trial.timeMin },
  /** middle between the last look that was not crisp and the first that was */
  crispTimeMin: {
    heading: "crisp time (min)",
    of: ({ notCrispMin, crispMin }) =>
      notCrispMin === null || crispMin === null ? null : (notCrispMin + crispMin) / 2,
  },
  coreC: { heading: "core (°C)", of: (trial) => trial.coreC },
  lossPercent: {
    heading: "loss (%)",
    of: ({ massBeforeG, massAfterG }) =>
      massBeforeG === null || massAfterG === null ? null : 100 * (1 - massAfterG / massBeforeG),
  },
  pieceG: {
    heading: "piece (g)",
    of: ({ massBeforeG, pieces }) => (massBeforeG === null || pieces === null ? null : massBeforeG / pieces),
  },
  crispScore: { heading: "crispness (0 to 9)", of: (trial) => meanOf(trial.crispScores) },
  brownScore: { heading: "browning (0 to 9)", of: (trial) => meanOf(trial.brownScores) },
};

function meanOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
