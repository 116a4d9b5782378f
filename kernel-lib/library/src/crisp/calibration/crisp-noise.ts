/** How far measurements scatter about the clocks; each is estimated again from the trials. */
export interface CrispNoise {
  /** crisp times, from one piece and look to the next [-] */
  readonly crispTime: number;
  /** core readings (K) */
  readonly coreK: number;
  /** loss (% points) */
  readonly lossPercent: number;
  /** one taster's score, crispness and browning */
  readonly crispScore: number;
  readonly brownScore: number;
  /** coefficient, from one run to the next: shared by all that was measured in the run [-] */
  readonly run: number;
  /** coefficient, from one session to the next [-] */
  readonly session: number;
  /** how much wider than usual the clocks miss a setting that was logged: 1 or more [-] */
  readonly misfit: number;
}

/** What is usual, where a log does not tell; our judgement from test-kitchen scatter. */
export const USUAL_NOISE: CrispNoise = Object.freeze({
  crispTime: 0.04,
  coreK: 2.5,
  lossPercent: 0.8,
  crispScore: 0.8,
  brownScore: 0.8,
  run: 0.06,
  session: 0.03,
  misfit: 1,
});

/** The usual noise counts as this many measurements when the noise is estimated again. */
export const USUAL_WORTH = 6;

/** Piece-to-piece coefficient of variation of a slab's thickness, where nobody probed it [-]; our judgement. */
export const USUAL_UNEVENNESS = 0.03;

/** Share of its time by which a piece's core runs ahead or behind for its place and its coating, its thickness apart [-]; our judgement. */
export const PLACE_CORE_SPREAD = 0.03;

/** The core's time changes with the thickness by this power, between 1 (surface) and 2 (inside). */
export const THICKNESS_POWER = 1.3;

/** Mean thickness of one slab about what was wanted, from one to the next [-]; our judgement. */
export const SLAB_SPREAD = 0.02;

/** Share of its time by which any one piece's core runs ahead or behind: place, coating, thickness [-]. */
export function pieceCoreSpread(unevenness: number): number {
  return Math.hypot(PLACE_CORE_SPREAD, THICKNESS_POWER * unevenness);
}

/**
 * How far above its slab's mean the piece lies whose core is read, in standard deviations of the slab's pieces, and how far from that
 * one kitchen's habit is: between any piece (0) and the thickest of five (1.16, the order statistic), picked by eye. No reading tells it
 * from a slower core, so its doubt is no trial's to take away. Our judgement.
 */
export const PROBED_THICKER = 0.6;
export const PROBED_THICKER_SD = 0.5;

/** Thickness of the piece whose core is read (mm). */
export function probedMm(thicknessMm: number, unevenness: number): number {
  return thicknessMm * (1 + PROBED_THICKER * unevenness);
}

/**
 * How far a clock misses the truth of one setting, whatever its constants (sd of the logarithm of its time, browning of
 * its rate): the clocks are short forms, and no kitchen is them. Our judgement, held to worlds that are not the clocks'.
 */
export const SETTING_MISFIT: { readonly core: number; readonly crust: number; readonly brown: number } = Object.freeze({
  core: 0.022,
  crust: 0.03,
  brown: 0.1,
});
