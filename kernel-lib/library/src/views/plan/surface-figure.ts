import { fail } from "../../check/check";
import type { BestCompromise } from "../../fit/surface/best-compromise";
import { canonicalAnalysis } from "../../fit/surface/canonical-analysis";
import type { SurfaceFit } from "../../fit/surface/fit-surface";
import type { RidgePoint } from "../../fit/surface/ridge-path";
import type { StationaryRegion } from "../../fit/surface/stationary-region";
import { surfaceAt } from "../../fit/surface/surface-at";
import type { Factor } from "../../plan/factor/factor";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";
import { type SurfaceAxes, surfaceAxes } from "./surface-axes";

/** What `surfaceFigure` draws. */
export interface SurfaceFigureOptions {
  readonly fit: SurfaceFit;
  /** what was measured, with its unit: `"crispness (0 to 9)"` */
  readonly measured: string;
  /** real values of the coded units; the axes are coded unless given */
  readonly factors?: readonly Factor[];
  /** the two factors that are drawn, by name; the first two unless given */
  readonly axes?: readonly [string, string];
  /** from `stationaryRegion`, of a surface over two factors */
  readonly region?: StationaryRegion;
  /** from `ridgePath` */
  readonly ridge?: readonly RidgePoint[];
  /** from `bestCompromise` */
  readonly compromise?: BestCompromise;
}

const STEPS = 31;
/** Beyond the trials on every side, as a share of their range. */
const BEYOND = 0.1;

/**
 * A response surface from above, over two of its factors, the others in the middle: its height as colour and lines, where trials
 * were run, the stationary point and where the true one may lie, the ridge, the compromise.
 *
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b], at) => 5 + a - a * a - 2 * b * b + 0.02 * (at % 3));
 * const fit = fitSurface({ factors: ["air", "time"], points, y });
 * surfaceFigure({ fit, measured: "crispness" }).data.length; // → 3
 */
export function surfaceFigure(options: SurfaceFigureOptions): Figure {
  const where = "surfaceFigure";
  const { fit, measured, region, ridge, compromise } = options;
  if (fit.factors.length < 2) fail(`${where}: fit`, "must be a surface over two factors or more", fit.factors);
  const shown = options.axes ?? [fit.factors[0], fit.factors[1]];
  const [across, up] = shown.map((name) => fit.factors.indexOf(name));
  if (across < 0 || up < 0 || across === up)
    fail(`${where}: axes`, `must be two of ${fit.factors.join(", ")}`, options.axes);
  if (region !== undefined && fit.factors.length !== 2)
    fail(`${where}: region`, "must be of a surface over two factors to be drawn", fit.factors);
  const axes = surfaceAxes(where, fit, options.factors);
  const levels = [across, up].map((at) => levelsOf(fit, at, region));
  const heights = levels[1].map((second) =>
    levels[0].map((first) => surfaceAt(fit, pointAt(fit, [across, first], [up, second])).value),
  );
  const place = place2(axes, across, up);
  const canonical = fit.form === "quadratic" ? canonicalAnalysis(fit) : null;
  return {
    kind: "figure",
    data: [
      {
        type: "contour",
        x: levels[0].map((coded) => axes.real(across, coded)),
        y: levels[1].map((coded) => axes.real(up, coded)),
        z: heights,
        colorscale: SCALE,
        contours: { showlabels: true, labelfont: { size: 11, color: "#222" } },
        line: { color: "#777", width: 0.8 },
        colorbar: { title: { text: measured } },
        hovertemplate: `${axes.names[across]} %{x:.2f}, ${axes.names[up]} %{y:.2f}: %{z:.2f}<extra></extra>`,
      },
      ...(region === undefined ? [] : [regionTrace(region, place)]),
      place(
        "trials",
        fit.x.map(({ point }) => point),
        { symbol: "circle", size: 9, color: PALETTE[6] },
      ),
      ...(ridge === undefined
        ? []
        : [
            {
              ...place(
                "ridge",
                ridge.map(({ point }) => point),
                { symbol: "diamond", size: 7, color: PALETTE[1] },
              ),
              mode: "lines+markers",
              line: { color: PALETTE[1], width: 2 },
            },
          ]),
      ...(canonical === null || !isShown(canonical.stationary, levels, [across, up])
        ? []
        : [place("stationary point", [canonical.stationary], { symbol: "x", size: 13, color: PALETTE[3] })]),
      ...(compromise === undefined
        ? []
        : [place("compromise", [compromise.point], { symbol: "star", size: 16, color: PALETTE[4] })]),
    ],
    layout: houseLayout({
      title: `${measured} over ${shown.join(" and ")}`,
      xTitle: axes.names[across],
      yTitle: axes.names[up],
      more: { height: 480, hovermode: "closest" },
    }),
    summary: [
      `${measured} over ${shown.join(" and ")}, a ${fit.form} surface through ${fit.n} trials, residual scatter ${fit.residualSd.toPrecision(3)}.`,
      ...(canonical === null
        ? []
        : [
            `Level at ${canonical.stationary.map((coded, at) => `${axes.names[at]} ${axes.real(at, coded).toPrecision(4)}`).join(", ")}: ${canonical.height.value.toPrecision(4)}. ${canonical.reading}`,
          ]),
      ...(region === undefined ? [] : [region.reading]),
      ...(compromise === undefined ? [] : [compromise.reading]),
    ].join(" "),
  };
}

/** Pale to dark, so that it reads in grey as well. */
const SCALE: readonly (readonly [number, string])[] = [
  [0, "#f7fbff"],
  [0.5, "#a6cbe3"],
  [1, "#2f7fb8"],
];

type Marker = Readonly<Record<string, unknown>>;

/** Makes traces of points on the two factors that are drawn. */
function place2(axes: SurfaceAxes, across: number, up: number) {
  return (name: string, points: readonly (readonly number[])[], marker: Marker): object => ({
    type: "scatter",
    mode: "markers",
    name,
    x: points.map((point) => axes.real(across, point[across])),
    y: points.map((point) => axes.real(up, point[up])),
    marker,
    hovertemplate: `${name}: %{x:.2f}, %{y:.2f}<extra></extra>`,
  });
}

/** Searched points in the region, close enough together to read as an area. */
function regionTrace(
  { levels, statistics, limit, confidence }: StationaryRegion,
  place: ReturnType<typeof place2>,
): object {
  const inside = levels[1].flatMap((second, row) =>
    levels[0].flatMap((first, column) =>
      statistics[row * levels[0].length + column] <= limit ? [[first, second]] : [],
    ),
  );
  return place(`may be the stationary point (${Math.round(100 * confidence)} %)`, inside, {
    symbol: "square",
    size: 7,
    color: translucent(PALETTE[3], 0.35),
  });
}

function levelsOf(fit: SurfaceFit, at: number, region?: StationaryRegion): readonly number[] {
  const [low, high] = fit.ranges[fit.factors[at]];
  const beyond = BEYOND * (high - low);
  const searched = region?.levels[at] ?? [];
  const from = Math.min(low - beyond, searched[0] ?? low);
  const to = Math.max(high + beyond, searched.at(-1) ?? high);
  return Array.from({ length: STEPS }, (_, step) => from + ((to - from) * step) / (STEPS - 1));
}

function pointAt(fit: SurfaceFit, ...set: readonly (readonly [number, number])[]): readonly number[] {
  return fit.factors.map((_, at) => set.find(([factor]) => factor === at)?.[1] ?? 0);
}

function isShown(
  point: readonly number[],
  levels: readonly (readonly number[])[],
  factors: readonly number[],
): boolean {
  return factors.every(
    (factor, at) => point[factor] >= levels[at][0] && point[factor] <= (levels[at].at(-1) as number),
  );
}
