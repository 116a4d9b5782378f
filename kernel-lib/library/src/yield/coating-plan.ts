import { fail, positive, within } from "../check/check";
import type { FormulaTotals } from "../food/formula/formula-totals";
import { coatPiece } from "./coat-piece";

/** Most coating on the finished weight of breaded poultry (%), 9 CFR 381.166, from memory. */
const MOST_ON_POULTRY = 30;

/** What `coatingPlan` works from. */
export interface CoatingPlanOptions {
  /** from `formulaTotals` */
  readonly totals: FormulaTotals;
  /** pieces to coat */
  readonly pieces: number;
  /** mass of a bare piece (g) */
  readonly pieceG: number;
  /** surface of a bare piece, all faces (mm²); left out: pickups as stated */
  readonly surfaceMm2?: number;
  /** share of what is put out that stays behind in tray and sieve (%); 25 unless given, our judgement */
  readonly leftoverPercent?: number;
  /** share of the wash that a piece takes up and drips off again before the next layer (% of what stays); 20 unless given, our judgement */
  readonly washDrainPercent?: number;
}

/** How much of one layer to put out. */
export interface LayerPlan {
  readonly layer: string;
  /** what stays on all pieces (g) */
  readonly onPiecesG: number;
  /** standard uncertainty of that (g), from the pickup: the same error on every piece */
  readonly onPiecesSeG: number;
  /** what drains off (g): wash only */
  readonly drainedG: number;
  /** what to put out (g), leftover included, for a pickup two standard uncertainties above the stated one */
  readonly putOutG: number;
  /** what is left when the pickup is as stated (g): drained wash and the rest; what touched raw food is thrown away */
  readonly leftG: number;
  /** the layer's ingredients for `putOutG` (g) */
  readonly lines: readonly { readonly name: string; readonly massG: number }[];
}

/** What coating N pieces takes. */
export interface CoatingPlan {
  readonly formulaId: string;
  readonly pieces: number;
  readonly coatedPieceG: number;
  readonly layers: readonly LayerPlan[];
  readonly cautions: readonly string[];
}

/**
 * How much predust, wash, breading and oil to put out for N pieces: what stays on them, what drains, and a leftover, so
 * that the last piece is coated as well as the first.
 *
 * put out = N · (layer + 2u) · (1 + drain) / (1 − leftover)
 *
 * @param options formula totals, pieces, their size, leftover
 * @returns each layer in grams, with its ingredients
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "turkey-sage").formula, kitchen.ingredients);
 * coatingPlan({ totals, pieces: 60, pieceG: 24 }).layers.map(({ putOutG }) => putOutG); // → [107.5,287.5,370.0,103.3]
 */
export function coatingPlan(options: CoatingPlanOptions): CoatingPlan {
  const { totals, pieces } = options;
  if (!(Number.isInteger(pieces) && pieces > 0)) fail("coatingPlan: pieces", "must be a whole number > 0", pieces);
  const pieceG = positive(options.pieceG, "coatingPlan: pieceG", "g");
  const leftover = within(options.leftoverPercent ?? 25, 0, 90, "coatingPlan: leftoverPercent", "%") / 100;
  const drain = within(options.washDrainPercent ?? 20, 0, 200, "coatingPlan: washDrainPercent", "%") / 100;
  if (totals.layers.length === 0)
    fail("coatingPlan: totals", "must be of a formula with coating layers", totals.formula.id);
  const coated = coatPiece({ layers: totals.formula.coating, pieceG, surfaceMm2: options.surfaceMm2 });
  const layers = coated.layers.map((one, at): LayerPlan => {
    const drained = one.layer === "wash" ? drain : 0;
    const onPiecesG = pieces * one.layerG;
    const onPiecesSeG = pieces * one.layerSeG;
    const putOutG = ((onPiecesG + 2 * onPiecesSeG) * (1 + drained)) / (1 - leftover);
    const { lines, blend } = totals.layers[at];
    return Object.freeze({
      layer: one.layer,
      onPiecesG,
      onPiecesSeG,
      drainedG: onPiecesG * drained,
      putOutG,
      leftG: putOutG - onPiecesG,
      lines: Object.freeze(
        lines.map((line) => Object.freeze({ name: line.ingredient.name, massG: (putOutG * line.massG) / blend.massG })),
      ),
    });
  });
  return Object.freeze({
    formulaId: totals.formula.id,
    pieces,
    coatedPieceG: coated.coatedG,
    layers: Object.freeze(layers),
    cautions: Object.freeze([
      ...(isPoultry(totals) && coated.coatingPercent > MOST_ON_POULTRY
        ? [
            `Coating is ${coated.coatingPercent.toFixed(0)} % of the coated piece: poultry sold as breaded in the US may carry at most ${MOST_ON_POULTRY} % (9 CFR 381.166, from memory): check.`,
          ]
        : []),
      "Throw away wash and crumbs that raw meat, fish or egg has touched; follow your local code for how long a wash may stand.",
    ]),
  });
}

/** Declared so, or with raw poultry in the mix. */
function isPoultry(totals: FormulaTotals): boolean {
  return (
    totals.formula.foodClass === "poultry" || totals.lines.some(({ ingredient }) => ingredient.foodClass === "poultry")
  );
}
