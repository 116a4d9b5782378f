import { counted } from "../../check/counted";
import { tooLittle } from "../../check/too-little";
import type { Kitchen, KitchenTrial } from "../../trials/kitchen";
import { sessionOf } from "../../trials/questions/session-of";
import type { Figure } from "../figure/figure";
import { houseLayout } from "../figure/layout";
import { MARKERS, PALETTE } from "../figure/palette";

/**
 * What was tried when: a mark for each product and session, on its day, with its number of trials. Names of sessions and
 * trials stand in its hover text.
 *
 * @throws too little, in words, while nothing is logged
 * @example
 * logTimelineFigure(loadKitchen()).data.length; // → 5
 */
export function logTimelineFigure({ variants, trials }: Pick<Kitchen, "variants" | "trials">): Figure {
  if (trials.length === 0) tooLittle("logTimelineFigure", "No trial is logged yet: log the first one.");
  const days = [...new Set(trials.map(({ date }) => date))].sort();
  const sessions = new Set(trials.map(sessionOf)).size;
  const tried = variants
    .map(({ variantId, name }) => ({ name, trials: trials.filter((trial) => trial.variantId === variantId) }))
    .filter((variant) => variant.trials.length > 0);
  const data = tried.map(({ name, trials: own }, at) => {
    const groups = bySession(own);
    return {
      type: "scatter",
      mode: "markers+text",
      name,
      showlegend: false,
      x: groups.map(([{ date }]) => date),
      y: groups.map(() => name),
      text: groups.map((group) => String(group.length)),
      textposition: "top center",
      customdata: groups.map(inWords),
      marker: {
        color: PALETTE[at % PALETTE.length],
        symbol: MARKERS[at % MARKERS.length],
        size: 12,
      },
      hovertemplate: `${name}, %{customdata}<extra></extra>`,
    };
  });
  const layout = houseLayout({ title: "What was tried when", xTitle: "day", yTitle: "" });
  const span = days.length === 1 ? `on ${days[0]}` : `from ${days[0]} to ${days.at(-1)}`;
  const counts = tried.map(({ name, trials: own }) => `${name} ${own.length}, last on ${lastDay(own)}`);
  const untried = variants.filter(({ variantId }) => !trials.some((trial) => trial.variantId === variantId));
  return {
    kind: "figure",
    data,
    layout: {
      ...layout,
      height: 200 + 60 * tried.length,
      xaxis: {
        ...(layout.xaxis as object),
        type: "date",
        tickformat: "%e %b %Y",
        ...(days.length === 1 && { dtick: 86_400_000 }),
      },
      yaxis: {
        ...(layout.yaxis as object),
        type: "category",
        categoryarray: tried.map(({ name }) => name),
        autorange: "reversed",
      },
    },
    summary:
      `${counted(trials.length, "trial")} in ${counted(sessions, "session")} ${span}: ${counts.join("; ")}.` +
      (untried.length === 0 ? "" : ` Not tried yet: ${untried.map(({ name }) => name).join(", ")}.`),
  };
}

/** Trials of one session on one day, in the log's order. */
function bySession(trials: readonly KitchenTrial[]): readonly KitchenTrial[][] {
  const groups = new Map<string, KitchenTrial[]>();
  for (const trial of trials) {
    const key = `${trial.date} ${sessionOf(trial)}`;
    const group = groups.get(key);
    if (group) group.push(trial);
    else groups.set(key, [trial]);
  }
  return [...groups.values()];
}

function inWords(group: readonly KitchenTrial[]): string {
  const [first] = group;
  const session = sessionOf(first);
  const named = session === first.date ? "" : `, ${session}`;
  return `${first.date}${named}: ${group.map(({ trialId }) => trialId).join(", ")}`;
}

function lastDay(trials: readonly KitchenTrial[]): string {
  return trials
    .map(({ date }) => date)
    .sort()
    .at(-1) as string;
}
