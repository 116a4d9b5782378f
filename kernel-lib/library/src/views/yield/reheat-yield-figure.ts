import { type ExpectedYield, expectedYield, type ReheatYield } from "../../advice/curve/reheat-yield";
import { predictSlabTime } from "../../fit/curve/predict-slab-time";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { thicknessWords } from "../../units/thickness-text";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE, translucent } from "../figure/palette";

const POINTS = 41;

/**
 * Reheat yield against slab thickness by variant: every weighed trial as a point, and the yield expected when taken
 * out as long after the crisp time as the trials were on average, with the 95 % band for one more trial.
 *
 * @param yields variant's name to its `reheatYield`
 */
export function reheatYieldFigure(yields: Readonly<Record<string, ReheatYield>>): Figure {
  const names = Object.keys(yields);
  const units = names.some((name) => yields[name].crispTime.times.units === "us") ? "us" : "metric";
  const data = names.flatMap((name, at) => tracesOf(name, yields[name], at));
  const findings = names.map((name) => {
    const { trials } = yields[name];
    const mean = trials.reduce((sum, trial) => sum + trial.thicknessMm, 0) / trials.length;
    const afterMin = meanAfterCrispMin(yields[name]);
    const { yieldPercent } = expectedAfterCrisp(yields[name], mean, afterMin);
    return `${name} ${yieldPercent.toFixed(0)} % at ${thicknessWords(mean, units)}, ${afterMin.toFixed(1)} min after crisp`;
  });
  const figure: Figure = {
    kind: "figure",
    data,
    layout: houseLayout({
      title: "Reheat yield against slab thickness",
      xTitle: "slab thickness (mm)",
      yTitle: "reheat yield (% of mass before)",
      more: { hovermode: "closest" },
    }),
    summary: `Reheat yield: ${findings.join("; ")}.`,
  };
  return figureIn(figure, units);
}

/** How long after its crisp time a trial was taken out, on average (min). */
function meanAfterCrispMin({ trials, crispTime }: ReheatYield): number {
  const after = trials.map((trial) => trial.timeMin - predictSlabTime(crispTime.fit, trial.thicknessMm).timeMin);
  return after.reduce((sum, minutes) => sum + minutes, 0) / after.length;
}

function expectedAfterCrisp(yields: ReheatYield, thicknessMm: number, afterMin: number): ExpectedYield {
  const { timeMin } = predictSlabTime(yields.crispTime.fit, thicknessMm);
  return expectedYield(yields, { thicknessMm, timeMin: timeMin + afterMin });
}

function tracesOf(name: string, yields: ReheatYield, at: number): object[] {
  const colour = PALETTE[at % PALETTE.length];
  const thicknesses = yields.trials.map((trial) => trial.thicknessMm);
  const [from, to] = [smallestOf(thicknesses), largestOf(thicknesses)];
  const x = Array.from({ length: POINTS }, (_, step) => from + (step * (to - from)) / (POINTS - 1));
  const afterMin = meanAfterCrispMin(yields);
  const curve = x.map((thicknessMm) => expectedAfterCrisp(yields, thicknessMm, afterMin));
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
      hovertemplate: `${name}, ${afterMin.toFixed(1)} min after crisp: %{x:.1f} mm, %{y:.1f} %<extra></extra>`,
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
