import { expectedYield, type ReheatYield } from "../advice/reheat-yield";
import { predictSlabTime } from "../fit/predict-slab-time";
import type { Figure } from "./figure";
import { houseLayout } from "./layout";
import { MARKERS, PALETTE, translucent } from "./palette";

const POINTS = 41;

/**
 * Reheat yield against slab thickness by variant: every weighed trial as a point, and the yield expected when taken out
 * just crisp, with the 95 % band for one more trial.
 *
 * @param yields variant's name to its `reheatYield`
 */
export function reheatYieldFigure(yields: Readonly<Record<string, ReheatYield>>): Figure {
  const names = Object.keys(yields);
  const data = names.flatMap((name, at) => tracesOf(name, yields[name], at));
  const middles = names.map((name) => {
    const { trials } = yields[name];
    const mean = trials.reduce((sum, trial) => sum + trial.thicknessMm, 0) / trials.length;
    const at = atCrisp(yields[name], mean);
    return `${name} ${at.yieldPercent.toFixed(0)} % at ${mean.toFixed(1)} mm`;
  });
  return {
    kind: "figure",
    data,
    layout: houseLayout({
      title: "Reheat yield against slab thickness",
      xTitle: "slab thickness (mm)",
      yTitle: "reheat yield (% of mass before)",
      more: { hovermode: "closest" },
    }),
    summary: `Reheat yield when taken out just crisp: ${middles.join("; ")}. Thinner slabs lose a larger share.`,
  };
}

function atCrisp(yields: ReheatYield, thicknessMm: number): ReturnType<typeof expectedYield> {
  return expectedYield(yields, thicknessMm, predictSlabTime(yields.crispTime.fit, thicknessMm).timeMin);
}

function tracesOf(name: string, yields: ReheatYield, at: number): object[] {
  const colour = PALETTE[at % PALETTE.length];
  const thicknesses = yields.trials.map((trial) => trial.thicknessMm);
  const [from, to] = [Math.min(...thicknesses), Math.max(...thicknesses)];
  const x = Array.from({ length: POINTS }, (_, step) => from + (step * (to - from)) / (POINTS - 1));
  const curve = x.map((thicknessMm) => atCrisp(yields, thicknessMm));
  return [
    {
      type: "scatter",
      mode: "lines",
      legendgroup: name,
      showlegend: false,
      x: [...x, ...x.toReversed()],
      y: [...curve.map((one) => one.interval95[1]), ...curve.toReversed().map((one) => one.interval95[0])],
      fill: "toself",
      fillcolor: translucent(colour, 0.12),
      line: { width: 0 },
      hoverinfo: "skip",
    },
    {
      type: "scatter",
      mode: "lines",
      legendgroup: name,
      showlegend: false,
      x,
      y: curve.map((one) => one.yieldPercent),
      line: { color: colour, width: 2 },
      hovertemplate: `${name}, just crisp: %{x:.1f} mm, %{y:.1f} %<extra></extra>`,
    },
    {
      type: "scatter",
      mode: "markers",
      legendgroup: name,
      name,
      x: thicknesses,
      y: yields.fit.fitted.map((fitted, index) => fitted + yields.fit.residuals[index]),
      text: yields.trials.map((trial) => `${trial.trialId}, ${trial.timeMin} min`),
      marker: { color: colour, symbol: MARKERS[at % MARKERS.length], size: 8 },
      hovertemplate: "%{text}: %{x:.1f} mm, %{y:.1f} %<extra></extra>",
    },
  ];
}
