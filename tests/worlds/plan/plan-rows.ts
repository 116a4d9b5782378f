import { SAFE_LOADS, type ScoreRow } from "../score";
import type { PlanWay } from "./plan-ways";

/** Trials after which a way is settled for the first time; Infinity where it never is. */
export function trialsToSettle({ printed }: PlanWay): number {
  const at = printed.findIndex(({ settled }) => settled);
  return at === -1 ? Number.POSITIVE_INFINITY : at;
}

/** Trials from which on it stays settled to the end; Infinity where it does not end so. */
export function trialsToStay({ printed }: PlanWay): number {
  const last = printed.findLastIndex(({ settled }) => !settled);
  return last === printed.length - 1 ? Number.POSITIVE_INFINITY : last + 1;
}

/** Share of ways that are settled after so many trials. */
export function settledAfter(ways: readonly PlanWay[], trials: number): number {
  return ways.filter(({ printed }) => printed[Math.min(trials, printed.length - 1)].settled).length / ways.length;
}

/** Mean share of good pieces that the printed time loses against the best, after so many trials. */
export function meanLost(ways: readonly PlanWay[], trials: number): number {
  const lost = ways.map(({ printed }) => printed[Math.min(trials, printed.length - 1)].lost);
  return lost.reduce((sum, one) => sum + one, 0) / lost.length;
}

/** Share of all printed times at which fewer loads are wholly safe than must be. */
export function unsafeShare(ways: readonly PlanWay[]): number {
  const printed = ways.flatMap((way) => way.printed);
  return printed.filter(({ safeLoads }) => safeLoads < SAFE_LOADS).length / printed.length;
}

/** The middle of a list; between two, their mean. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

/** Where a plan first says stop: after how many trials, and is it settled there; null where it never does. */
export function firstStop({ printed }: PlanWay): { readonly trials: number; readonly settled: boolean } | null {
  const at = printed.findIndex(({ stop }) => stop === true);
  return at === -1 ? null : { trials: at, settled: printed[at].settled };
}

/** Policies that are the library's own: the first of its candidates, and that of the greatest gain. */
const OWN = ["nextTrial", "mostGain"];

/** The rows of the plans: trials saved over the best other policy, and stops while not settled. */
export function planRows(ways: readonly PlanWay[]): readonly ScoreRow[] {
  const policies = [...new Set(ways.map(({ policy }) => policy))];
  const of = (policy: string): readonly PlanWay[] => ways.filter((way) => way.policy === policy);
  const medians = policies.map((policy) => [policy, median(of(policy).map(trialsToSettle))] as const);
  const own = medians.find(([policy]) => policy === "nextTrial")?.[1] ?? Number.NaN;
  const other = medians.reduce(
    (least, [policy, one]) => (OWN.includes(policy) ? least : Math.min(least, one)),
    Number.POSITIVE_INFINITY,
  );
  const stops = of("nextTrial").flatMap((way) => firstStop(way) ?? []);
  const early = stops.filter(({ settled }) => !settled);
  const told = policies.map((policy) => {
    const those = of(policy);
    const curve = [2, 4, 8, 16].filter((trials) => trials < those[0].printed.length);
    const shares = curve.map(
      (trials) =>
        `${trials}: ${settledAfter(those, trials).toFixed(2)}, ${(100 * meanLost(those, trials)).toFixed(1)} points lost`,
    );
    return `${policy} ${median(those.map(trialsToSettle))} (for good ${median(those.map(trialsToStay))}; settled after ${shares.join("; ")}; unsafe ${unsafeShare(those).toFixed(3)})`;
  });
  return [
    {
      name: "plan.trialsSaved",
      value: Number.isFinite(own) && Number.isFinite(other) ? 1 - own / other : null,
      unit: "share",
      note: `median trials until settled, ${of("nextTrial").length} kitchens: ${told.join(" · ")}`,
    },
    {
      name: "plan.falseStops",
      value: stops.length === 0 ? null : early.length / stops.length,
      unit: "share",
      note: `of ${stops.length} kitchens told to stop those not settled then; median stop after ${stops.length === 0 ? "–" : median(stops.map(({ trials }) => trials))} trials`,
    },
  ];
}
