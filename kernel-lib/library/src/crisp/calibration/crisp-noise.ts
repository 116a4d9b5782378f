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

/** Share of a piece's own time by which its core runs ahead or behind: place in the basket, thickness, coating [-]. */
export const PIECE_CORE_SPREAD = 0.05;

/**
 * How far a clock misses the truth of one setting, whatever its constants (sd of the logarithm of its time, browning of
 * its rate): the clocks are short forms, and no kitchen is them. Our judgement, held to worlds that are not the clocks'.
 */
export const SETTING_MISFIT: { readonly core: number; readonly crust: number; readonly brown: number } = Object.freeze({
  core: 0.022,
  crust: 0.03,
  brown: 0.1,
});
