import { fQuantile } from "slabwright/statistics";
import { median } from "../plan/plan-rows";
import type { ScoreRow } from "../score";
import type { HeldCard } from "./hold-card";

/** One load in a hundred may have a cold piece. */
export const MOST_COLD = 0.01;

/** 95 % interval of a share after so many of so many (Clopper & Pearson 1934, from the quantiles of F). */
export function shareInterval95(count: number, of: number): readonly [number, number] {
  const f = (a: number, b: number): number => fQuantile(0.975, 2 * a, 2 * b);
  const low = count === 0 ? 0 : count / (count + (of - count + 1) * f(of - count + 1, count));
  const above = count === of ? 1 : (count + 1) * f(count + 1, of - count);
  return [low, count === of ? 1 : above / (of - count + above)];
}

/** Which of the two printed times. */
export type PrintedTime = "card" | "coreBy";

/** Share of a kitchen's loads that have a cold piece at a printed time. */
export function coldShare({ loads, coldAtCard, coldAtCoreBy }: HeldCard, time: PrintedTime): number {
  return (time === "card" ? coldAtCard : coldAtCoreBy) / loads;
}

/** The rows of held cards: kitchens whose printed time leaves more cold loads than it may, and how late the times are. */
export function cardRows(cards: readonly HeldCard[]): readonly ScoreRow[] {
  const groups: readonly (readonly [string, readonly HeldCard[]])[] = [
    ["ready", cards.filter(({ ready }) => ready)],
    ["notReady", cards.filter(({ ready }) => !ready)],
  ];
  return groups.flatMap(([group, those]) =>
    those.length === 0
      ? []
      : [
          brokenRow(group, those, "card"),
          brokenRow(group, those, "coreBy"),
          lateRow(group, those, "card"),
          lateRow(group, those, "coreBy"),
          clockRow(group, those),
        ],
  );
}

function brokenRow(group: string, cards: readonly HeldCard[], time: PrintedTime): ScoreRow {
  const broken = cards.filter((card) => coldShare(card, time) > MOST_COLD);
  const surely = broken.filter(
    (card) => shareInterval95(Math.round(coldShare(card, time) * card.loads), card.loads)[0] > MOST_COLD,
  );
  const [low, high] = shareInterval95(broken.length, cards.length);
  const worst = cards.reduce((most, card) => (coldShare(card, time) > coldShare(most, time) ? card : most));
  const mean = cards.reduce((sum, card) => sum + coldShare(card, time), 0) / cards.length;
  return {
    name: `promise.${group}.${time}`,
    value: broken.length / cards.length,
    unit: "share",
    note: `${broken.length} of ${cards.length} kitchens with a cold piece in more than 1 load in 100 (95 %: ${low.toFixed(4)} to ${high.toFixed(4)}), ${surely.length} beyond the doubt of their ${cards[0].loads} loads; mean ${(100 * mean).toFixed(3)} %, worst ${(100 * coldShare(worst, time)).toFixed(2)} % (kitchen ${worst.seed}, ${worst.product}, ${worst.trials} trials, ${worst.tidy ? "tidy" : "sloppy"})`,
  };
}

/** Minutes by which a time is later than the truth's, where 99 of 100 loads are safe. */
function lateRow(group: string, cards: readonly HeldCard[], time: PrintedTime): ScoreRow {
  const late = cards.map((card) => (time === "card" ? card.cardMin : card.coreByMin) - card.trueCoreByMin);
  const share = cards.map((card) => (time === "card" ? card.cardMin : card.coreByMin) / card.trueCoreByMin - 1);
  return {
    name: `late.${group}.${time}`,
    value: median(late),
    unit: "min",
    note: `median of ${cards.length}; ${(100 * median(share)).toFixed(1)} % of the true time`,
  };
}

function clockRow(group: string, cards: readonly HeldCard[]): ScoreRow {
  const off = (those: readonly HeldCard[]): number =>
    median(those.map(({ coreMin, trueCoreMin }) => coreMin / trueCoreMin - 1));
  const long = cards.filter(({ trials }) => trials >= 16);
  return {
    name: `late.${group}.clock`,
    value: off(cards),
    unit: "share",
    note: `median error of the typical core's time${long.length === 0 ? "" : `, ${off(long).toFixed(3)} after 16 trials and more`}; core by over core: printed ${median(cards.map(({ coreByMin, coreMin }) => coreByMin / coreMin)).toFixed(3)}, true ${median(cards.map(({ trueCoreByMin, trueCoreMin }) => trueCoreByMin / trueCoreMin)).toFixed(3)}`,
  };
}

export { holdCard } from "./hold-card";
