import { fail, finite, positive } from "../../check/check";

/** What is wanted of one measured quantity. */
export type Goal =
  | {
      /** the more, the better: nothing at `low`, all that is wanted at `target` */
      readonly wanted: "more";
      readonly low: number;
      readonly target: number;
      /** above 1 asks for nearly the target, below 1 is content early; 1 unless given */
      readonly weight?: number;
      /** how much it counts beside other goals; 1 unless given */
      readonly importance?: number;
    }
  | {
      /** the less, the better: all that is wanted at `target`, nothing at `high` */
      readonly wanted: "less";
      readonly target: number;
      readonly high: number;
      readonly weight?: number;
      readonly importance?: number;
    }
  | {
      /** best at `target`, nothing at `low` and `high` */
      readonly wanted: "target";
      readonly low: number;
      readonly target: number;
      readonly high: number;
      readonly weight?: number;
      readonly importance?: number;
    };

/**
 * How well a value meets a goal, 0 to 1 (Derringer & Suich 1980, from memory): ((y − low)/(target − low))^weight for "more", mirrored
 * for "less", both sides for "target"; 0 outside, 1 beyond the target.
 *
 * @example
 * desirability(7, { wanted: "more", low: 5, target: 9 }); // → 0.5
 */
export function desirability(value: number, goal: Goal): number {
  const where = "desirability";
  finite(value, `${where}: value`, "");
  const { weight } = checkGoal(where, goal);
  const share = (from: number, to: number): number => Math.min(1, Math.max(0, (value - from) / (to - from))) ** weight;
  if (goal.wanted === "more") return share(goal.low, goal.target);
  if (goal.wanted === "less") return share(goal.high, goal.target);
  return value <= goal.target ? share(goal.low, goal.target) : share(goal.high, goal.target);
}

/**
 * All goals together: the geometric mean, Π dᵢ^(importanceᵢ/Σ importance). One goal that is not met at all makes it 0.
 *
 * @param met how well each goal is met, 0 to 1
 * @example
 * overallDesirability([0.5, 0.8], [{ wanted: "more", low: 5, target: 9 }, { wanted: "less", target: 8, high: 15 }]); // → 0.632
 */
export function overallDesirability(met: readonly number[], goals: readonly Goal[]): number {
  if (met.length === 0 || met.length !== goals.length)
    fail("overallDesirability: met", "must hold one number for each goal, at least one", met.length);
  let sum = 0;
  let logs = 0;
  for (const [at, one] of met.entries()) {
    const { importance } = checkGoal("overallDesirability", goals[at]);
    sum += importance;
    logs += importance * Math.log(one);
  }
  return Math.exp(logs / sum);
}

/** Throws where a goal's ends are not in order; fills in weight and importance. */
export function checkGoal(where: string, goal: Goal): { readonly weight: number; readonly importance: number } {
  const ends =
    goal.wanted === "more"
      ? [goal.low, goal.target]
      : goal.wanted === "less"
        ? [goal.target, goal.high]
        : [goal.low, goal.target, goal.high];
  if (!ends.every((end, at) => Number.isFinite(end) && (at === 0 || end > ends[at - 1])))
    fail(`${where}: goal`, "must have low, target and high that rise, as far as it has them", goal);
  return {
    weight: positive(goal.weight ?? 1, `${where}: weight`, ""),
    importance: positive(goal.importance ?? 1, `${where}: importance`, ""),
  };
}
