import { GOOD_CHANCE } from "../../crisp/window/card-time";
import { largestOf } from "../../statistics/extremes";
import { isComplete } from "./evidence-needs";
import type { ValuedTrials } from "./valued-trials";

/** Whether a further trial is worth its while. */
export interface Stopping {
  readonly stop: boolean;
  /** false where the log holds what a card must rest on and no trial is expected to change the decision, be it good or not */
  readonly worthwhile: boolean;
  /** chance that the best next trial would move the time by more than half a minute, or to another alternative [-] */
  readonly chanceOfChange: number;
  /** what the best next trial is expected to gain: share of pieces that do, or for a card the chance that it becomes ready [-] */
  readonly gain: number;
  /** the same of the best 1, 2, 3 … further trials together */
  readonly ahead: readonly number[];
  /** a trial is worth its while from this gain on [-] */
  readonly worth: number;
  readonly sentence: string;
}

/** Trials looked ahead, and the candidates that they are taken from. */
const AHEAD = 4;
const FROM = 12;
/** A decision that the next trial changes more often than this is not settled [-]; our judgement. */
const SETTLED = 0.2;

/**
 * Whether to stop: the gain a trial of the best few together is below what one is worth, the decision is settled, and the
 * log holds what a card must rest on, and the chance of success is good. Looked at for several trials, as one alone may be too few to change anything.
 */
export function stoppingOf({ values, ranked, asked, needs, worth }: ValuedTrials): Stopping {
  const { question } = asked;
  const ready = asked.unmet.length === 0;
  if (ranked.length === 0)
    return {
      stop: false,
      worthwhile: true,
      chanceOfChange: 0,
      gain: 0,
      ahead: [],
      worth,
      sentence: "No trial of it can be planned here.",
    };
  const best = ranked.reduce((most, one) => (one.worth.gain > most.worth.gain ? one : most), ranked[0]);
  const { gain, chanceOfChange } = best.worth;
  const ahead = [gain];
  const chosen = [best.trial];
  for (let more = 2; more <= AHEAD; more++) {
    let top = { gain: Number.NEGATIVE_INFINITY, trial: ranked[0].trial };
    for (const { trial } of ranked.slice(0, FROM)) {
      const together = values.worthOf([...chosen, trial]).gain;
      if (together > top.gain) top = { gain: together, trial };
    }
    chosen.push(top.trial);
    ahead.push(Math.max(top.gain, ahead[ahead.length - 1]));
  }
  const perTrial = largestOf(ahead.map((all, at) => all / (at + 1)));
  const settled = chanceOfChange <= SETTLED;
  const good = question.kind === "card" ? ready : question.kind === "difference" || values.successNow >= GOOD_CHANCE;
  const worthwhile = !(isComplete(needs) && perTrial < worth && settled);
  const stop = !worthwhile && good;
  const points = (share: number): string => `${(100 * share).toFixed(1)} points`;
  const gains =
    question.kind === "card"
      ? `The best next trial makes the card ready with a chance of ${Math.round(100 * gain)} %`
      : `The best next trial should gain ${points(Math.max(0, gain))} of success and change the decision in ${Math.round(100 * chanceOfChange)} of 100 cases`;
  const why = stop
    ? `a trial is worth its while from ${points(worth)} on: stop`
    : !isComplete(needs)
      ? "the log does not yet hold what a card must rest on: go on"
      : question.kind === "card"
        ? ready
          ? "the card is ready, but the decision may still move: go on"
          : worthwhile
            ? "the card is not ready: go on"
            : "trials alone will hardly bring what it still asks for"
        : perTrial >= worth
          ? `a trial is worth its while from ${points(worth)} on: go on`
          : settled
            ? `trials of it alone will hardly bring its ${Math.round(100 * values.successNow)} % up to ${Math.round(100 * GOOD_CHANCE)} %: ask which pan or which setting`
            : "the decision is not settled: go on";
  return { stop, worthwhile, chanceOfChange, gain, ahead, worth, sentence: `${gains}; ${why}.` };
}
