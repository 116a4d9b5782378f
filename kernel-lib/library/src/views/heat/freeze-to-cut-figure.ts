import { fail } from "../../check/check";
import type { FreezeToCutRow } from "../../heat/freezing/freeze-to-cut";
import { ownTemperatureText } from "../../units/temperature-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";

/**
 * When slabs can be cut, by thickness and place: firm enough (filled), hard through (hollow), and between them the time
 * left for the knife. Bars show what the doubt of the surface coefficients makes of each time.
 *
 * @param rows slabs with what `freezeToCut` says of them
 * @param units the kitchen's own; default metric
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const rows = [8, 12].map((thicknessMm) => ({ label: "rack", thicknessMm, freezing: freezeToCut({ food, thicknessMm, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 }) }));
 * freezeToCutFigure(rows).data.length; // → 3
 */
export function freezeToCutFigure(rows: readonly FreezeToCutRow[], units: KitchenUnits = "metric"): Figure {
  if (rows.length === 0) fail("freezeToCutFigure: rows", "must hold at least one slab", rows);
  const labels = [...new Set(rows.map((row) => row.label))];
  const data = labels.flatMap((label, at) => {
    const own = rows.filter((row) => row.label === label).sort((one, other) => one.thicknessMm - other.thicknessMm);
    const colour = PALETTE[at % PALETTE.length];
    const ended = own.filter(({ freezing }) => freezing.brittle !== undefined);
    const thicknesses = own.map((row) => row.thicknessMm);
    const firm = own.map((row) => row.freezing.firm);
    const hard = own.filter((row) => row.freezing.hardThrough !== undefined);
    const band =
      ended.length > 1
        ? [
            {
              type: "scatter",
              mode: "lines",
              name: `${label}: can be cut`,
              x: [...ended.map((row) => row.thicknessMm), ...ended.map((row) => row.thicknessMm).reverse()],
              y: [
                ...ended.map((row) => row.freezing.firm.timeMin),
                ...ended
                  .map((row) => Math.max(row.freezing.firm.timeMin, row.freezing.brittle?.timeMin ?? 0))
                  .reverse(),
              ],
              fill: "toself",
              fillcolor: translucent(colour, 0.18),
              line: { color: colour, width: 0 },
              hoverinfo: "skip",
            },
          ]
        : [];
    return [
      ...band,
      {
        type: "scatter",
        mode: "lines+markers",
        name: `${label}: firm`,
        x: thicknesses,
        y: firm.map((time) => time.timeMin),
        error_y: {
          type: "data",
          symmetric: false,
          array: firm.map((time) => time.latestMin - time.timeMin),
          arrayminus: firm.map((time) => time.timeMin - time.earliestMin),
          color: colour,
        },
        line: { color: colour, width: 2 },
        marker: { color: colour, symbol: MARKERS[at % MARKERS.length], size: 9 },
        hovertemplate: `${label}: firm at %{y:.0f} min, %{x:.1f} mm<extra></extra>`,
      },
      {
        type: "scatter",
        mode: "lines+markers",
        name: `${label}: hard through`,
        x: hard.map((row) => row.thicknessMm),
        y: hard.map((row) => row.freezing.hardThrough?.timeMin ?? null),
        line: { color: colour, width: 1.5, dash: "dot" },
        marker: { color: "#fff", line: { color: colour, width: 2 }, symbol: MARKERS[at % MARKERS.length], size: 9 },
        hovertemplate: `${label}: hard through at %{y:.0f} min, %{x:.1f} mm<extra></extra>`,
      },
    ];
  });
  const said = rows.map(({ label, thicknessMm, freezing }) => {
    const { firm, brittle } = freezing;
    const until = !freezing.cutsOnTheWay
      ? ", brittle outside before that"
      : brittle === undefined
        ? ""
        : ` to ${brittle.timeMin.toFixed(0)}`;
    return `${thicknessWords(thicknessMm, units)}, ${label}: ${firm.timeMin.toFixed(0)}${until} min`;
  });
  const { softAboveC, brittleBelowC } = rows[0].freezing.limits;
  const figure: Figure = {
    kind: "figure",
    data,
    layout: houseLayout({
      title: "When the slab can be cut",
      xTitle: "slab thickness (mm)",
      yTitle: "time in the freezer (min)",
      more: { yaxis: { title: { text: "time in the freezer (min)" }, rangemode: "tozero", automargin: true } },
    }),
    summary: `Cut from the mean at ${ownTemperatureText(softAboveC, units)} until the outside is at ${ownTemperatureText(brittleBelowC, units)} (${rows[0].freezing.limitsFrom}). ${said.join("; ")}.`,
  };
  return figureIn(figure, units);
}
