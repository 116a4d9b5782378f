import type { SlabTimeFit } from "../../fit/curve/fit-slab-time";
import { predictSlabTime } from "../../fit/curve/predict-slab-time";
import type { CrispTimes } from "../../trials/crisp-times";
import { thicknessWords } from "../../units/thickness-text";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";

const POINTS = 61;

/**
 * Crisp time against slab thickness: every trial as a point with a bar from its last not-crisp to its first crisp check,
 * the fitted curve, its 95 % confidence band and the 95 % band for one further trial. Beyond the thicknesses that were
 * tried the curve is dotted. A time seen from one side only is an open triangle that points to where it must lie.
 *
 * @param crisp from `crispTimes`
 * @param fit from `fitSlabTime`
 *
 * @example
 * const { times, fit } = variantCrispTime({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * crispTimeFigure(times, fit).data.length; // → 7
 */
export function crispTimeFigure(crisp: CrispTimes, fit: SlabTimeFit): Figure {
  const [thinnest, thickest] = fit.rangeX as readonly [number, number];
  const margin = 0.15 * (thickest - thinnest);
  const from = Math.max(0.5, thinnest - margin);
  const curve = Array.from({ length: POINTS }, (_, at) =>
    predictSlabTime(fit, from + (at * (thickest + margin - from)) / (POINTS - 1)),
  );
  const band = (which: "confidence95" | "prediction95", name: string, opacity: number): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x: [...curve.map((point) => point.thicknessMm), ...curve.toReversed().map((point) => point.thicknessMm)],
    y: [...curve.map((point) => point[which][1]), ...curve.toReversed().map((point) => Math.max(0, point[which][0]))],
    fill: "toself",
    fillcolor: translucent(PALETTE[0], opacity),
    line: { width: 0 },
    hoverinfo: "skip",
  });
  const line = (name: string, dash: string, points: typeof curve, showlegend: boolean): object => ({
    type: "scatter",
    mode: "lines",
    name,
    showlegend,
    x: points.map((point) => point.thicknessMm),
    y: points.map((point) => point.timeMin),
    line: { color: PALETTE[0], width: 2.5, dash },
    hovertemplate: "%{x:.1f} mm: %{y:.1f} min<extra></extra>",
  });
  const seen = crisp.times.filter((time) => time.timeMin !== null);
  const after = crisp.times.filter((time) => time.upperMin === null);
  const before = crisp.times.filter((time) => time.timeMin === null && time.upperMin !== null);
  const oneSided = (
    name: string,
    symbol: string,
    times: typeof after,
    atMin: (time: (typeof after)[number]) => number,
  ): object[] =>
    times.length === 0
      ? []
      : [
          {
            type: "scatter",
            mode: "markers",
            name,
            x: times.map((time) => time.thicknessMm),
            y: times.map(atMin),
            text: times.map((time) => time.trialId),
            marker: { color: PALETTE[3], symbol, size: 9, line: { width: 1.5, color: PALETTE[3] } },
            hovertemplate: "%{text}: %{x:.1f} mm, %{y:.1f} min<extra></extra>",
          },
        ];
  const data: object[] = [
    band("prediction95", "95 % band, one more trial", 0.12),
    band("confidence95", "95 % band, the curve", 0.25),
    line(
      "beyond what was tried",
      "dot",
      curve.filter((point) => point.thicknessMm <= thinnest),
      true,
    ),
    line(
      "beyond what was tried",
      "dot",
      curve.filter((point) => point.thicknessMm >= thickest),
      false,
    ),
    line(
      fit.equation,
      "solid",
      curve.filter((point) => !point.extrapolated),
      true,
    ),
    {
      type: "scatter",
      mode: "markers",
      name: "trial, between its two checks",
      x: seen.map((time) => time.thicknessMm),
      y: seen.map((time) => time.timeMin),
      text: seen.map((time) => time.trialId),
      error_y: {
        type: "data",
        symmetric: false,
        array: seen.map((time) => (time.upperMin as number) - (time.timeMin as number)),
        arrayminus: seen.map((time) => (time.timeMin as number) - time.lowerMin),
        thickness: 1,
        width: 3,
        color: PALETTE[1],
      },
      marker: { color: PALETTE[1], symbol: "circle", size: 8 },
      hovertemplate: "%{text}: %{x:.1f} mm, %{y:.1f} min<extra></extra>",
    },
    ...oneSided("not crisp yet when taken out", "triangle-up-open", after, (time) => time.lowerMin),
    ...oneSided("crisp at the first look", "triangle-down-open", before, (time) => time.upperMin as number),
  ];
  const middle = predictSlabTime(fit, (thinnest + thickest) / 2);
  const { units } = crisp;
  const figure: Figure = {
    kind: "figure",
    data,
    layout: houseLayout({
      title: "Crisp time against slab thickness",
      xTitle: "slab thickness (mm)",
      yTitle: "crisp time (min)",
      more: { hovermode: "closest" },
    }),
    summary:
      `Crisp time against slab thickness, ${fit.n} trials from ${thicknessWords([thinnest, thickest], units)}: ` +
      `${middle.timeMin.toFixed(1)} min at ${thicknessWords(middle.thicknessMm, units)} ` +
      `(curve ${middle.confidence95[0].toFixed(1)} to ${middle.confidence95[1].toFixed(1)} min, ` +
      `one more trial ${middle.prediction95[0].toFixed(1)} to ${middle.prediction95[1].toFixed(1)} min, 95 %).`,
  };
  return figureIn(figure, units);
}
