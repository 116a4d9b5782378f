import type { KitchenWindow } from "../../advice/window/crisp-window";
import type { OtherPans } from "../../advice/window/other-pans";
import type { Moment } from "../../crisp/window/window-at";
import { type WindowOverThickness, windowOverThickness } from "../../crisp/window/window-over-thickness";
import { limitCaution, limitText } from "../../safety/limit-text";
import { largestOf, smallestOf } from "../../statistics/extremes";
import type { KitchenTrial } from "../../trials/kitchen";
import { SETPOINT_STEP_K } from "../../units/setpoint-step";
import { ownSettingText } from "../../units/setting-text";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";

/** What `windowFigure` draws. */
export interface WindowFigureOptions {
  readonly window: KitchenWindow;
  /** trials to put on it: those of the variant and appliance are drawn, each at its own setpoint */
  readonly trials: readonly KitchenTrial[];
  /** setpoints of the slider (°C); default: the window's own and one and two steps of a dial to either side (10 °C, 20 °F) */
  readonly setpointsC?: readonly number[];
  /** pans to mark by the thickness that the batch gives there */
  readonly pans?: OtherPans;
}

/** A trial belongs to a setpoint of the slider within this difference (K). */
const SAME_K = 5;
/** and to the window's load within this difference [-]. */
const SAME_LOAD = 0.12;
const POINTS = 33;
/** Times beyond this many times the accepted one are not drawn. */
const TALLEST = 2;

/**
 * The crisp window against slab thickness, with the trials on it and a slider over the setpoint: the band between
 * opening and closing, each with its 95 % interval, the time at which a typical core is at its limit, and the card time. A trial is a
 * bar from its last not-crisp to its first crisp check, hollow when its load was another than the window's; one not
 * crisp when taken out is an open triangle.
 *
 * @example
 * const kitchen = loadKitchen();
 * const window = crispWindow({ kitchen, variantId: "beet-lentil" });
 * windowFigure({ window, trials: kitchen.trials }).kind; // → "figure"
 */
export function windowFigure(options: WindowFigureOptions): Figure {
  const { window, pans } = options;
  const { calibration, setting } = window;
  const { units } = setting;
  const trials = options.trials.filter(
    (trial) => trial.variantId === window.variantId && trial.applianceId === setting.applianceId,
  );
  const setpointsC =
    options.setpointsC ?? [-2, -1, 0, 1, 2].map((steps) => setting.setpointC + steps * SETPOINT_STEP_K[units]);
  const all = [setting.thicknessMm, ...trials.map((trial) => trial.thicknessMm)];
  const from = Math.max(2, 0.8 * smallestOf(all));
  const onPans = placed(pans).map((pan) => pan.window?.setting.thicknessMm ?? 0);
  const to = Math.max(1.15 * largestOf(all), 1.05 * Math.min(Math.max(0, largestOf(onPans)), 1.5 * largestOf(all)));
  const thicknessesMm = Array.from({ length: POINTS }, (_, at) => from + (at * (to - from)) / (POINTS - 1));
  const topMin = TALLEST * Math.max(setting.longestMin, window.opens.min < 1e3 ? window.opens.min : 0);
  const groups = setpointsC.map((setpointC) => {
    const curves = windowOverThickness({ ...setting, setpointC, calibration, thicknessesMm });
    return [...curveTraces(curves, topMin), ...trialTraces(trials, setpointC, setting.loadFraction)];
  });
  const card = {
    type: "scatter",
    mode: "markers",
    name: "card time",
    x: [setting.thicknessMm],
    y: [window.recommended.cardMin],
    marker: { symbol: "star", size: 15, color: PALETTE[6] },
    hovertemplate: `card: %{y} min for %{x:.1f} mm at ${ownSettingText(setting.setpointC, units)}<extra></extra>`,
  };
  const ownAt = Math.max(0, setpointsC.indexOf(setting.setpointC));
  const shown = (chosen: number): boolean[] => [
    ...groups.flatMap((group, at) => group.map(() => at === chosen)),
    setpointsC[chosen] === setting.setpointC,
  ];
  const data = [...groups.flat(), card].map((trace, at) => ({ ...trace, visible: shown(ownAt)[at] }));
  const title = (setpointC: number): string =>
    `${window.variantName} at ${ownSettingText(setpointC, units)}, ${setting.applianceId}`;
  const figure: Figure = {
    kind: "figure",
    data,
    layout: houseLayout({
      title: title(setpointsC[ownAt]),
      xTitle: "slab thickness (mm)",
      yTitle: "time in the appliance (min)",
      more: {
        title: { text: title(setpointsC[ownAt]), font: { size: 16 }, yref: "container", y: 0.98, yanchor: "top" },
        height: 560,
        hovermode: "closest",
        shapes: panLines(pans),
        annotations: panNames(pans),
        margin: { t: 140, r: 24, b: 64, l: 64 },
        sliders: [
          {
            active: ownAt,
            currentvalue: { prefix: "setpoint: " },
            y: 1.02,
            yanchor: "bottom",
            pad: { t: 8, b: 24 },
            steps: setpointsC.map((setpointC, at) => ({
              label: ownSettingText(setpointC, units),
              method: "update",
              args: [{ visible: shown(at) }, { "title.text": title(setpointC) }],
            })),
          },
        ],
      },
    }),
    summary: `${window.sentence} ${limitCaution(window.limit, units)}`,
  };
  return figureIn(figure, units);
}

function curveTraces(curves: WindowOverThickness, topMin: number): object[] {
  const { thicknessesMm: x, opens, closes, core } = curves;
  const clip = (minutes: number): number => Math.min(topMin, minutes);
  const area = (
    name: string,
    low: readonly number[],
    high: readonly number[],
    colour: string,
    legend: boolean,
  ): object => ({
    type: "scatter",
    mode: "lines",
    name,
    showlegend: legend,
    x: [...x, ...x.toReversed()],
    y: [...high.map(clip), ...low.map(clip).toReversed()],
    fill: "toself",
    fillcolor: colour,
    line: { width: 0 },
    hoverinfo: "skip",
  });
  const line = (name: string, moments: readonly Moment[], colour: string, dash: string): object => ({
    type: "scatter",
    mode: "lines",
    name,
    x,
    y: moments.map((moment) => clip(moment.min)),
    line: { color: colour, width: 2.5, dash },
    customdata: moments.map(({ interval95 }) => interval95.map(clip)),
    hovertemplate: `${name}: %{y:.1f} (%{customdata[0]:.1f} to %{customdata[1]:.1f}) min at %{x:.1f} mm<extra></extra>`,
  });
  const band = (name: string, moments: readonly Moment[], colour: string): object =>
    area(
      name,
      moments.map((moment) => moment.interval95[0]),
      moments.map((moment) => moment.interval95[1]),
      translucent(colour, 0.3),
      false,
    );
  return [
    area(
      "window",
      opens.map((moment) => moment.min),
      opens.map((moment, at) => Math.max(moment.min, closes[at].min)),
      translucent(PALETTE[2], 0.15),
      true,
    ),
    band("opens, 95 %", opens, PALETTE[0]),
    band("closes, 95 %", closes, PALETTE[1]),
    line("opens", opens, PALETTE[0], "solid"),
    line("closes", closes, PALETTE[1], "solid"),
    line(`typical core at ${limitText(curves.setting.limit, curves.setting.units)}`, core, PALETTE[3], "dash"),
  ];
}

function trialTraces(trials: readonly KitchenTrial[], setpointC: number, loadFraction: number): object[] {
  const here = trials.filter((trial) => Math.abs(trial.setpointC - setpointC) <= SAME_K);
  const alike = (trial: KitchenTrial): boolean =>
    Math.abs((trial.loadFraction ?? loadFraction) - loadFraction) <= SAME_LOAD;
  const crisp = here.filter((trial) => trial.crispMin !== null && alike(trial));
  const otherLoad = here.filter((trial) => trial.crispMin !== null && !alike(trial));
  const late = here.filter((trial) => trial.crispMin === null && trial.notCrispMin !== null);
  const middleOf = ({ notCrispMin, crispMin }: KitchenTrial): number =>
    ((notCrispMin ?? (crispMin as number)) + (crispMin as number)) / 2;
  const turned = (name: string, symbol: string, shown: readonly KitchenTrial[]): object => ({
    type: "scatter",
    mode: "markers",
    name,
    x: shown.map((trial) => trial.thicknessMm),
    y: shown.map(middleOf),
    error_y: {
      type: "data",
      array: shown.map((trial) => (trial.crispMin as number) - middleOf(trial)),
      color: PALETTE[6],
      thickness: 1.2,
      width: 3,
    },
    text: shown.map((trial) => trial.trialId),
    marker: { symbol, size: 7, color: PALETTE[6] },
    hovertemplate: "%{text}: crisp at about %{y:.1f} min, %{x:.1f} mm<extra></extra>",
  });
  return [
    turned("trial: turned crisp", "circle", crisp),
    turned("the same at another load", "circle-open", otherLoad),
    {
      type: "scatter",
      mode: "markers",
      name: "trial: not crisp yet",
      x: late.map((trial) => trial.thicknessMm),
      y: late.map((trial) => trial.notCrispMin),
      text: late.map((trial) => trial.trialId),
      marker: { symbol: "triangle-up-open", size: 9, color: PALETTE[6] },
      hovertemplate: "%{text}: not crisp at %{y:.1f} min, %{x:.1f} mm<extra></extra>",
    },
  ];
}

/** Dotted uprights at the thickness that the batch gives on each pan. */
export function panLines(pans: OtherPans | undefined): object[] {
  return placed(pans).map(({ window }) => ({
    type: "line",
    xref: "x",
    yref: "paper",
    x0: window?.setting.thicknessMm,
    x1: window?.setting.thicknessMm,
    y0: 0,
    y1: 1,
    line: { color: "#777", width: 1, dash: "dot" },
  }));
}

/** The pans' names at the top of their uprights. */
export function panNames(pans: OtherPans | undefined): object[] {
  return placed(pans).map(({ window, panName }) => ({
    xref: "x",
    yref: "paper",
    x: window?.setting.thicknessMm,
    y: 1,
    text: panName,
    textangle: -90,
    showarrow: false,
    xanchor: "right",
    yanchor: "top",
    font: { size: 11, color: "#333" },
    bgcolor: "rgba(255,255,255,0.75)",
  }));
}

function placed(pans: OtherPans | undefined): OtherPans["pans"] {
  return pans === undefined ? [] : pans.pans.filter((pan) => pan.window !== null);
}
