import type { FitComparison } from "../../fit/choice/compare-fits";
import type { Table } from "../table/table";

/**
 * Fits of the same data side by side, the lowest AICc first, with the reading below.
 *
 * @param comparison from `compareFits` or `compareSlabTimeForms`
 */
export function fitComparisonTable(comparison: FitComparison): Table {
  return {
    kind: "table",
    title: `Forms compared on ${comparison.n} observations`,
    columns: [
      { heading: "form" },
      { heading: "parameters", decimals: 0 },
      { heading: "residual sd" },
      { heading: "AICc", decimals: 2 },
      { heading: "above lowest", decimals: 2 },
      { heading: "weight", decimals: 3 },
      { heading: "BIC", decimals: 2 },
      { heading: "leave-one-out error" },
    ],
    rows: comparison.rows.map((row) => [
      row.name,
      row.parameterCount,
      row.residualSd,
      finiteOrNull(row.aicc),
      finiteOrNull(row.deltaAicc),
      row.weight,
      row.bic,
      row.leaveOneOutError,
    ]),
    notes: [comparison.reading, ...comparison.notes],
  };
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
