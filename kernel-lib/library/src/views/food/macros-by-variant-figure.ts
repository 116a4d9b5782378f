import type { Decision, Outcome } from "../../advice/window/decide";
import type { Amount } from "../../macros/piece-macros";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";

/**
 * Energy, protein, fat and carbohydrate of one piece as eaten, by variant, with 95 % intervals.
 *
 * @param decisions from `decide`: one a variant, usually that of its own pan
 *
 * @example
 * const kitchen = loadKitchen();
 * const decisions = decide({ kitchen }).filter(({ variantId, panId }) => variantOf(kitchen, variantId).panId === panId);
 * macrosByVariantFigure(decisions).data.length; // → 4
 */
export function macrosByVariantFigure(decisions: readonly Decision[]): Figure {
  const shown = decisions.filter((decision): decision is Decision & { outcome: Outcome } => decision.outcome !== null);
  const names = shown.map((decision) => decision.variantName);
  const bars = (
    name: string,
    colour: string,
    amountOf: (outcome: Outcome) => Amount,
    axes: { xaxis: string; unit: string },
  ): object => {
    const amounts = shown.map((decision) => amountOf(decision.outcome));
    return {
      type: "bar",
      orientation: "h",
      name: `${name} (${axes.unit})`,
      y: names,
      x: amounts.map((amount) => amount.value),
      xaxis: axes.xaxis,
      error_x: {
        type: "data",
        array: amounts.map((amount) => amount.interval95[1] - amount.value),
        arrayminus: amounts.map((amount) => amount.value - Math.max(0, amount.interval95[0])),
        symmetric: false,
        thickness: 1.2,
        width: 3,
        color: "#333",
      },
      marker: { color: colour },
      hovertemplate: `%{y}: %{x:.1f} ${axes.unit} ${name}<extra></extra>`,
    };
  };
  const grams = { xaxis: "x2", unit: "g" };
  const base = houseLayout({ title: "What is in a piece as eaten", xTitle: "energy (kcal)", yTitle: "" });
  return {
    kind: "figure",
    data: [
      bars("energy", "#555", ({ macros }) => macros.perPiece.energyKcal, { xaxis: "x", unit: "kcal" }),
      bars("protein", PALETTE[0], ({ macros }) => macros.perPiece.proteinG, grams),
      bars("fat", PALETTE[4], ({ macros }) => macros.perPiece.fatG, grams),
      bars("carbohydrate", PALETTE[2], ({ macros }) => macros.perPiece.carbohydrateG, grams),
    ],
    layout: {
      ...base,
      barmode: "group",
      height: 140 + 86 * shown.length,
      xaxis: { ...(base.xaxis as object), domain: [0, 0.36] },
      xaxis2: { ...(base.xaxis as object), title: { text: "mass (g)" }, domain: [0.44, 1], anchor: "y" },
    },
    summary: `One piece as eaten: ${shown
      .map(({ variantName, outcome }) => {
        const { energyKcal, proteinG, fatG, carbohydrateG } = outcome.macros.perPiece;
        const [low, high] = energyKcal.interval95;
        return `${variantName} ${energyKcal.value.toFixed(0)} kcal (${low.toFixed(0)} to ${high.toFixed(0)}), protein ${proteinG.value.toFixed(1)} g, fat ${fatG.value.toFixed(1)} g, carbohydrate ${carbohydrateG.value.toFixed(1)} g`;
      })
      .join("; ")}.`,
  };
}
