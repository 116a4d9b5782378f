import type { OtherPans } from "../../advice/window/other-pans";
import type { WindowMap } from "../../crisp/window/window-map";
import { largestOf } from "../../statistics/extremes";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE } from "../figure/palette";
import { panLines, panNames } from "./window-figure";

/** Light to dark, so that it reads in grey as well. */
const SCALE: readonly (readonly [number, string])[] = [
  [0, "#ffffff"],
  [0.5, "#b9dccf"],
  [0.9, PALETTE[2]],
  [1, "#00513b"],
];

/**
 * Map of the chance of success over slab thickness and time, or thickness and setpoint; the 90 % line is drawn, and the
 * pans are marked by the thickness that the batch gives there.
 */
export function windowMapFigure(map: WindowMap, pans?: OtherPans): Figure {
  const { thicknessesMm, acrossValues, success, setting } = map;
  const percent = success.map((row) => row.map((chance) => 100 * chance));
  const overTime = map.across === "time";
  const unit = overTime ? "min" : "°C";
  const where = overTime ? `at ${setting.setpointC} °C` : `within ${setting.longestMin} min`;
  const cells = percent.flat();
  const good = cells.filter((cell) => cell >= 90).length;
  const thickest = Math.max(0, largestOf(thicknessesMm.filter((_, at) => percent.some((row) => row[at] >= 90))));
  const best = map.bestMin;
  return {
    kind: "figure",
    data: [
      {
        type: "heatmap",
        x: thicknessesMm,
        y: acrossValues,
        z: percent,
        zmin: 0,
        zmax: 100,
        colorscale: SCALE,
        colorbar: { title: { text: "success (%)" } },
        ...(best === null ? {} : { customdata: best }),
        hovertemplate: `%{x:.1f} mm, %{y:.1f} ${unit}: %{z:.0f} %${best === null ? "" : " at %{customdata:.1f} min"}<extra></extra>`,
      },
      {
        type: "contour",
        x: thicknessesMm,
        y: acrossValues,
        z: percent,
        contours: { start: 90, end: 90, size: 1, coloring: "none" },
        line: { color: PALETTE[6], width: 1.5 },
        showscale: false,
        name: "90 %",
        showlegend: true,
        hoverinfo: "skip",
      },
    ],
    layout: houseLayout({
      title: `Chance of success, ${setting.applianceId}, ${where}`,
      xTitle: "slab thickness (mm)",
      yTitle: overTime ? "time in the appliance (min)" : "setpoint (°C)",
      more: { shapes: panLines(pans), annotations: panNames(pans), height: 480 },
    }),
    summary:
      `Chance of success over thickness (${thicknessesMm[0].toFixed(1)} to ${(thicknessesMm.at(-1) as number).toFixed(1)} mm) and ${overTime ? "time" : "setpoint"} ` +
      `(${acrossValues[0]} to ${acrossValues.at(-1)} ${unit}), ${setting.applianceId}, ${where}: ${good} of ${cells.length} cells reach 90 %, up to ${thickest.toFixed(1)} mm. ` +
      `A cell without a safe core counts as 0. ${setting.limit.caution}`,
  };
}
