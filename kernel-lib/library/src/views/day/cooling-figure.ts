import type { DayPlan } from "../../advice/day/batch-day";
import { COOLING_LIMITS } from "../../safety/cold/cooling-check";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * Cores of a batch day as they cool, in air as slow as its doubt allows, with the marks that they must be below: 21 °C after 2 h
 * and 5 °C after 6 h for what was cooked (from 57 °C on), 5 °C after 4 h for a mix from warm ingredients.
 *
 * @example
 * coolingFigure(batchDay({ kitchen: loadKitchen(), batches: [{ variantId: "turkey-sage" }] })).data.length; // → 3
 */
export function coolingFigure({ limits, units }: Pick<DayPlan, "limits" | "units">): Figure {
  const { ambientMin, coldC, cookedMin, firstC, firstMin, startC } = COOLING_LIMITS;
  const shown = limits.flatMap(({ curve, cooked, variantName }) => {
    if (curve === null) return [];
    // the clock of cooked food starts when its core passes 57 °C
    const from =
      cooked === null
        ? 0
        : Math.max(
            0,
            curve.coreC.findLastIndex((celsius) => celsius >= startC),
          );
    return [
      {
        name: `${variantName}${cooked === null ? "" : ", cooked"}`,
        x: curve.timeMin.slice(from).map((min) => min - curve.timeMin[from]),
        y: curve.coreC.slice(from),
        isCooked: cooked !== null,
      },
    ];
  });
  const marks = [
    ...(shown.some(({ isCooked }) => isCooked)
      ? [{ name: "limit, cooked", x: [firstMin, cookedMin], y: [firstC, coldC] }]
      : []),
    { name: "limit, from warm ingredients", x: [ambientMin], y: [coldC] },
  ];
  const figure: Figure = {
    kind: "figure",
    data: [
      ...shown.map(({ name, x, y, isCooked }, at) => ({
        type: "scatter",
        mode: "lines",
        name,
        x,
        y,
        line: { color: PALETTE[at % PALETTE.length], width: 2, dash: isCooked ? "solid" : "dash" },
      })),
      ...marks.map(({ name, x, y }, at) => ({
        type: "scatter",
        mode: "markers",
        name,
        x,
        y,
        marker: { color: PALETTE[6], symbol: MARKERS[at === 0 ? 5 : 4], size: 12 },
      })),
    ],
    layout: houseLayout({
      title: "Cooling, in slow air",
      xTitle: "time (min)",
      yTitle: "core (°C)",
      more: { height: 380 },
    }),
    summary: limits
      .map(({ variantName, cooked, ambient }) => `${variantName}: ${(cooked ?? ambient)?.sentence ?? "is not cooled."}`)
      .join(" "),
  };
  return figureIn(figure, units);
}
