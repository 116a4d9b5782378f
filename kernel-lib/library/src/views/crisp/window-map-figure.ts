import type { OtherPans } from "../../advice/window/other-pans";
import type { WindowMap } from "../../crisp/window/window-map";
import { limitCaution } from "../../safety/limit-text";
import { largestOf } from "../../statistics/extremes";
import { rangeText } from "../../units/range-text";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
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
  const { units } = setting;
  const where = overTime ? `at ${ownSettingText(setting.setpointC, units)}` : `within ${setting.longestMin} min`;
  const cells = percent.flat();
  const good = cells.filter((cell) => cell >= 90).length;
  const thickest = Math.max(0, largestOf(thicknessesMm.filter((_, at) => percent.some((row) => row[at] >= 90))));
  const best = map.bestMin;
  const ends = [acrossValues[0], acrossValues.at(-1) as number] as const;
  const across = overTime
    ? `${ends.join(" to ")} min`
    : rangeText(ends, (setpointC) => ownSettingText(setpointC, units));
  const figure: Figure = {
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
      `Chance of success over thickness (${thicknessWords([thicknessesMm[0], thicknessesMm.at(-1) as number], units)}) and ${overTime ? "time" : "setpoint"} ` +
      `(${across}), ${setting.applianceId}, ${where}: ${good} of ${cells.length} cells reach 90 %, up to ${thicknessWords(thickest, units)}. ` +
      `A cell without a safe core counts as 0. ${limitCaution(setting.limit, units)}`,
  };
  return figureIn(figure, units);
}
