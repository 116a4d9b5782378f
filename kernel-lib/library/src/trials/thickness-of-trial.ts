import { evenness } from "../pan/evenness";
import type { Pan } from "../pan/pan";
import { slabThickness } from "../pan/slab-thickness";
import { ownMassText } from "../units/mass-text";
import { thicknessWords } from "../units/thickness-text";
import type { KitchenUnits } from "../units/unit-table";
import type { Trial } from "./trial";

/** Probes and batch mass that differ by more are worth a look [-]: common practice, no source. */
export const MOST_DISAGREEMENT = 0.1;

/** What `thicknessOfTrial` works from. */
export interface ThicknessOfTrialOptions {
  readonly trial: Trial;
  /** the pan the trial was spread on */
  readonly pan: Pan;
  /** density of the variant's mix as spread, air included (kg/m³) */
  readonly densityKgM3: number;
  /** units of the notice; default metric */
  readonly units?: KitchenUnits;
}

/** How thick a logged slab was, by each way that the log allows. */
export interface ThicknessOfTrial {
  /** the thickness to use: mean probe reading, or from the mass where no probe was used (mm) */
  readonly thicknessMm: number;
  readonly from: "probes" | "mass";
  readonly probesMm: number | null;
  readonly massMm: number | null;
  /** standard deviation of the probe readings (mm); unknown with fewer than two */
  readonly sdMm: number | null;
  /** probes over mass minus 1; unknown unless both were logged */
  readonly disagreement: number | null;
  /** a sentence when probes and mass disagree by more than they should */
  readonly notice: string | null;
}

/**
 * Thickness of a logged slab from its probe readings, held against the batch mass: m = ρ·V(t).
 *
 * A notice is given when the two differ by more than 10 % (common practice, no source) and by more than three standard
 * errors of the mean reading: the batch was weighed wrong, some stayed in the bowl, the pan is not the one named, or
 * the mix holds more air than its formula says.
 */
export function thicknessOfTrial(options: ThicknessOfTrialOptions): ThicknessOfTrial {
  const { trial, pan, densityKgM3, units = "metric" } = options;
  const spread = trial.probesMm.length > 1 ? evenness(trial.probesMm) : null;
  const probesMm = spread?.meanMm ?? trial.probesMm[0] ?? null;
  const massMm = trial.batchG === null ? null : slabThickness({ pan, batchG: trial.batchG, densityKgM3 }).thicknessMm;
  const disagreement = probesMm === null || massMm === null ? null : probesMm / massMm - 1;
  return Object.freeze({
    thicknessMm: (probesMm ?? massMm) as number,
    from: probesMm === null ? "mass" : "probes",
    probesMm,
    massMm,
    sdMm: spread?.sdMm ?? null,
    disagreement,
    notice: noticeOf(trial, { probesMm, massMm, standardErrorMm: spread?.meanStandardErrorMm ?? 0, units }),
  });
}

function noticeOf(
  trial: Trial,
  {
    probesMm,
    massMm,
    standardErrorMm,
    units,
  }: {
    readonly probesMm: number | null;
    readonly massMm: number | null;
    readonly standardErrorMm: number;
    readonly units: KitchenUnits;
  },
): string | null {
  if (probesMm === null || massMm === null) return null;
  const differenceMm = Math.abs(probesMm - massMm);
  if (differenceMm <= MOST_DISAGREEMENT * massMm || differenceMm <= 3 * standardErrorMm) return null;
  const percent = Math.round((probesMm / massMm - 1) * 100);
  return (
    `trial ${trial.trialId}: the probes say ${thicknessWords(probesMm, units)}, but ${ownMassText(trial.batchG ?? 0, units)} on ${trial.panId} make ` +
    `${thicknessWords(massMm, units)} (${percent > 0 ? "+" : ""}${percent} %); check the batch mass, the pan and the air in the mix`
  );
}
