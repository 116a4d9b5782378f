import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { Panel } from "../../trials/questions/panel-of";

/** From which concordance on orders are called so; our judgement. */
const ORDERS = [
  [0.9, "nearly the same order"],
  [0.7, "much the same order"],
  [0.5, "partly the same order"],
] as const;
/** From which correlation on numbers are called so, after Koo and Li (2016), from memory. */
const NUMBERS = [
  [0.9, "nearly the same number"],
  [0.75, "much the same number"],
  [0.5, "roughly the same number"],
] as const;
/** An order that chance gives more often than this says nothing. */
const CHANCE = 0.05;

/** What a panel's scores say of the tasters, in sentences: habits, order, numbers. */
export function panelText(panel: Panel): string {
  const { of, tasters, named, complete } = panel;
  const who = named
    ? tasters.join(", ")
    : `${tasters.length} tasters, by their place in the scores as the log has no initials`;
  return [`${capital(of)} by ${who}.`, habits(panel), order(panel), numbers(panel), few(complete)]
    .filter(Boolean)
    .join(" ");
}

function habits({ levels, tasters }: Panel): string {
  if (levels.sd === null) return "Too few scores to tell how sure their habits are.";
  const reach = studentTQuantile(0.975, levels.df);
  const clear = tasters.flatMap((taster) => {
    const level = levels.judges.get(taster);
    if (!level || level.standardError === null || Math.abs(level.value) <= reach * level.standardError) return [];
    const points = Math.abs(level.value).toFixed(1);
    const half = (reach * level.standardError).toFixed(1);
    return [`${taster} scores ${points} ± ${half} ${level.value > 0 ? "higher" : "lower"} than the panel`];
  });
  const scatter = `one score scatters by ${levels.sd.toFixed(1)} once habits are off`;
  return clear.length === 0
    ? `No taster's habit is more than its doubt; ${scatter}.`
    : `${capital(clear.join("; "))}; ${scatter}.`;
}

function order({ order: found, complete }: Panel): string {
  if (found === null || Number.isNaN(found.w)) return "";
  const w = `W = ${found.w.toFixed(2)} over ${complete} trials`;
  if (found.pValue > CHANCE) return `The tasters' orders have no more in common than chance may give (${w}).`;
  const words = ORDERS.find(([least]) => found.w >= least)?.[1] ?? "only loosely the same order";
  return `The tasters put the trials in ${words} (${w}).`;
}

function numbers({ numbers: found }: Panel): string {
  if (found === null) return "";
  const { value, confidence95 } = found.agreement;
  const words = NUMBERS.find(([least]) => value >= least)?.[1] ?? "numbers that differ";
  const [low, high] = confidence95.map((end) => end.toFixed(2));
  return `They give a trial ${words} (ICC = ${value.toFixed(2)}, ${low} to ${high}).`;
}

function few(complete: number): string {
  return complete >= 3
    ? ""
    : `How far they agree shows once all of them have scored 3 of the same trials; so far ${complete}.`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
