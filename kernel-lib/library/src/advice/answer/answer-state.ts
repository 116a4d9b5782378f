import type { CardCondition } from "../card/card-evidence";
import type { ReheatCard } from "../card/reheat-card";
import type { Decision } from "../window/decide";

/** How far a product is: `"ready"` when its card may be printed. */
export type AnswerState = "ready" | "not ready" | "not tried" | "does not fit" | "cannot be worked out";

/**
 * How far a product is on its own pan, and what is missing in a few words: nothing when it is ready. A cold core that nobody
 * has explained comes before all else that is missing.
 *
 * @param decision on its own pan, or the sentence that says why none can be made
 * @param card of that decision; null where its batch does not go on the pan
 */
export function answerState(
  decision: Decision | string,
  card: ReheatCard | null,
): { readonly state: AnswerState; readonly missing: string | null } {
  if (typeof decision === "string") return { state: "cannot be worked out", missing: "see below" };
  if (card === null)
    return {
      state: "does not fit",
      missing: decision.advice === "other kind of pan" ? "another kind of pan" : "a larger pan",
    };
  const { calibration, standing } = card.window;
  if (calibration.n === 0) return { state: "not tried", missing: "no trial logged yet" };
  if (standing === "outside what was tried") return { state: "not tried", missing: "trials at this setting" };
  if (card.ready) return { state: "ready", missing: null };
  const open = card.evidence.filter(({ met }) => !met);
  const first = open.find(isColdCore) ?? open[0];
  return {
    state: "not ready",
    missing: missingText(first, open),
  };
}

/** One thing or two as they are, of more the first and how many. */
function missingText(first: CardCondition, open: readonly CardCondition[]): string | null {
  if (open.length > 2) return `${first.missing}, and ${open.length - 1} things more`;
  const other = open.find((one) => one !== first);
  return other === undefined ? first.missing : `${first.missing}, and ${other.missing}`;
}

/** Whether a condition is the one that no core was found cold at the card's time. */
export function isColdCore({ name }: CardCondition): boolean {
  return name === "no cold core";
}
