import type { BatchCost } from "../../advice/cost/batch-cost";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/**
 * What a piece of each product costs, as bars: mix and coating that are in it, and what is thrown away for it; with the doubt of the sum
 * (two standard uncertainties). Where prices are missing the bar is the least that it can be.
 *
 * @example
 * costFigure([batchCost({ kitchen: loadKitchen(), variantId: "beet-lentil" })]).data.length; // → 3
 */
export function costFigure(costs: readonly BatchCost[]): Figure {
  const names = costs.map(({ unpriced, variantName }) =>
    unpriced.length > 0 ? `${variantName} (at least)` : variantName,
  );
  const parts = [
    { name: "mix", read: ({ inPiece }: BatchCost) => inPiece.mix },
    { name: "coating", read: ({ inPiece }: BatchCost) => inPiece.coating },
    { name: "thrown away", read: ({ inPiece }: BatchCost) => inPiece.waste },
  ];
  const layout = houseLayout({
    title: "What a piece costs",
    xTitle: "cost of a piece, ± two standard uncertainties",
    yTitle: "",
  });
  return {
    kind: "figure",
    data: parts.map(({ name, read }, at) => ({
      type: "bar",
      orientation: "h",
      name,
      y: names,
      x: costs.map(read),
      marker: { color: PALETTE[at], line: { color: "#fff", width: 1 } },
      ...(at === parts.length - 1
        ? {
            error_x: {
              type: "data",
              array: costs.map(({ piece }) => 2 * piece.se),
              thickness: 1.5,
              width: 5,
              color: PALETTE[6],
            },
          }
        : {}),
    })),
    layout: {
      ...layout,
      barmode: "stack",
      height: 170 + 44 * names.length,
      yaxis: { ...(layout.yaxis as object), type: "category", autorange: "reversed" },
    },
    summary: costs
      .map(
        ({ variantName, piece, inPiece, unpriced }) =>
          `${variantName}: a piece${unpriced.length > 0 ? " at least" : ""} ${piece.cost.toPrecision(2)} ± ${(2 * piece.se).toPrecision(1)}, of ${unpriced.length > 0 ? "what is priced" : "it"} ${Math.round((100 * inPiece.coating) / piece.cost)} % coating and ${Math.round((100 * inPiece.waste) / piece.cost)} % thrown away.`,
      )
      .join(" "),
  };
}
