import { NUTRIENT_LABELS, NUTRIENT_NAMES } from "../../food/ingredient/nutrients";
import type { Amount, PieceMacros } from "../../macros/piece-macros";
import type { Table } from "../table/table";

/**
 * What is in a piece, a serving and 100 g: a row a nutrient, each cell value ± standard error.
 *
 * @example
 * const kitchen = loadKitchen();
 * const totals = formulaTotals(variantOf(kitchen, "beet-lentil").formula, kitchen.ingredients);
 * const macros = pieceMacros({ totals, pieceG: 16, pieceSeG: 0.8, reheat: { yieldPercent: 93, yieldSePercent: 1 } });
 * macroTable(macros).rows.length; // → 11
 */
export function macroTable(macros: PieceMacros): Table {
  const views = [macros.perPiece, macros.perServing, macros.per100GRaw, macros.per100GFrozen, macros.per100GEaten];
  return {
    kind: "table",
    title: `What is in ${macros.formulaId} (value ± standard error)`,
    columns: [
      { heading: "what" },
      { heading: `a piece, ${macros.eatenG.value.toFixed(1)} g as eaten` },
      { heading: `a serving, ${macros.piecesPerServing} pieces` },
      { heading: "100 g coated, raw" },
      { heading: "100 g frozen" },
      { heading: "100 g as eaten" },
    ],
    rows: NUTRIENT_NAMES.map((name) => [NUTRIENT_LABELS[name], ...views.map((view) => cellOf(view[name]))]),
    notes: [
      `Energy: ${macros.energyBasis}. Doubt by ${macros.method === "GUM" ? "propagation" : "drawing"}: weights, food table, pickup, piece mass, yield.`,
      ...macros.notices,
      "An estimate from tables and trials, not a compliance document.",
    ],
  };
}

function cellOf({ value, standardError, atLeast }: Amount): string {
  const size = Math.max(Math.abs(value), standardError);
  const decimals = size >= 100 ? 0 : size >= 10 ? 1 : 2;
  return `${atLeast ? "≥ " : ""}${value.toFixed(decimals)} ± ${standardError.toFixed(decimals)}`;
}
