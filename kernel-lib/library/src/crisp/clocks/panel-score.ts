import { normalCdf, normalDensity } from "../../statistics/distributions/normal-distribution";

/** Both scales run from 0 to this. */
export const TOP_SCORE = 9;
/** A crispness score from which a piece counts as crisp; our judgement, the same that a check means by "crisp". */
export const CRISP_SCORE = 6;

/**
 * Crispness score at a crust depth, after the Fermi form of Peleg: 9/[1 + exp(−(s − s_c)/b)], with s_c placed so that
 * the score is 6 at the depth that checks call crisp.
 */
export function crispScoreAt(depthMm: number, crustMm: number, panelWidthMm: number): number {
  const centreMm = crustMm - panelWidthMm * Math.log(CRISP_SCORE / (TOP_SCORE - CRISP_SCORE));
  return TOP_SCORE / (1 + Math.exp(-(depthMm - centreMm) / panelWidthMm));
}

/** Browning at which every steepness gives the same score, 4.06: a middle of the scale. */
const MIDDLE_BROWNING = 0.6;

/** Browning score for ∫k dt: 9·(1 − exp(−0.6·(B/0.6)^m)), first order when the steepness m is 1. */
export function brownScoreAt(browning: number, steepness: number): number {
  return TOP_SCORE * (1 - Math.exp(-MIDDLE_BROWNING * (browning / MIDDLE_BROWNING) ** steepness));
}

/** ∫k dt at which the browning score reaches a value below 9: the inverse of `brownScoreAt`. */
export function browningFor(score: number, steepness: number): number {
  return MIDDLE_BROWNING * (-Math.log(1 - score / TOP_SCORE) / MIDDLE_BROWNING) ** (1 / steepness);
}

/**
 * Mean of what tasters write when they scatter about a score but the scale ends at 0 and 9:
 * score + sd·[G(score/sd) − G((9 − score)/sd)], G(x) = φ(x) − x·(1 − Φ(x)) the mean by which a standard normal exceeds x.
 */
export function meanWritten(score: number, tasterSd: number): number {
  return score + tasterSd * (meanExcess(score / tasterSd) - meanExcess((TOP_SCORE - score) / tasterSd));
}

function meanExcess(x: number): number {
  return x > 6 ? 0 : normalDensity(x) - x * normalCdf(-x);
}
