import { fail } from "../check/check";
import { summariseDraws } from "../statistics/random/monte-carlo";
import { seededRandom } from "../statistics/random/seeded-random";
import { MACRO_OUTPUTS, macroModel, type PieceMacrosOptions } from "./macro-model";
import { assembleMacros, type PieceMacros } from "./piece-macros";

/** What `pieceMacrosMonteCarlo` works from. */
export interface PieceMacrosMonteCarloOptions extends PieceMacrosOptions {
  /** 10,000 unless given */
  readonly draws?: number;
  /** 1 unless given; the same seed gives the same answer everywhere */
  readonly seed?: number;
}

/**
 * What is in a piece, by drawing every weight, value, pickup and yield from a normal distribution of its standard
 * uncertainty (JCGM 101:2008). Every second draw mirrors the one before it about the middle (antithetic draws, after
 * Hammersley & Morton 1956, from memory), which steadies the mean and spares half the drawing. Values are means of the
 * draws, intervals their middle 95 %. It needs no straightness, and `pieceMacros` must agree with it where the doubts
 * are small.
 *
 * @param options as for `pieceMacros`, with draws and seed
 * @returns as `pieceMacros`; shares of the doubt are not worked out
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const macros = pieceMacrosMonteCarlo({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } });
 * macros.perPiece.energyKcal.interval95; // → [24.5,31]
 */
export function pieceMacrosMonteCarlo(options: PieceMacrosMonteCarloOptions): PieceMacros {
  const draws = options.draws ?? 10_000;
  if (!(Number.isInteger(draws) && draws >= 1000)) {
    fail("pieceMacrosMonteCarlo: draws", "must be a whole number >= 1000", draws);
  }
  const model = macroModel(options);
  const random = seededRandom(options.seed ?? 1);
  const count = model.values.length;
  const results = Array.from({ length: MACRO_OUTPUTS }, () => new Float64Array(draws));
  const drawn = Float64Array.from(model.values);
  const out = new Float64Array(MACRO_OUTPUTS);
  for (let draw = 0; draw < draws; draw++) {
    const mirrored = draw % 2 === 1;
    for (let at = 0; at < count; at++) {
      const value = model.values[at];
      const u = model.uncertainties[at];
      if (u > 0) drawn[at] = mirrored ? 2 * value - drawn[at] : value + u * random.normal();
    }
    model.evaluate(drawn, out);
    for (let k = 0; k < MACRO_OUTPUTS; k++) results[k][draw] = out[k];
  }
  return assembleMacros({
    options,
    missing: model.missing,
    notices: model.notices,
    method: "Monte Carlo",
    energyDoubt: [],
    tableDoubt: {},
    amountAt: (k) => {
      const { mean, standardUncertainty, interval } = summariseDraws(results[k], 0.95);
      return { value: mean, standardError: standardUncertainty, interval95: interval };
    },
  });
}
