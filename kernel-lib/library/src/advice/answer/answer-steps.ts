import type { AnswerFacts } from "./answer-sentences";

/** Conditions of a card that a log without trials is told: the others only follow from these. */
const FIRST: ReadonlySet<string> = new Set([
  "enough trials",
  "two thicknesses",
  "cores still climbing",
  "cores at the limit",
]);
/** Conditions that the remedies of a decision answer. */
const REMEDIED: ReadonlySet<string> = new Set(["window open in time", "chance of success"]);

/** What to do next with a product, the first thing first: what a card still asks for, and what could be changed. */
export function answerSteps({ decision, card, state }: AnswerFacts): readonly string[] {
  if (typeof decision === "string") return [];
  const remedies = decision.remedies.map(({ sentence }) => sentence);
  if (card === null) return remedies;
  if (state === "ready")
    return [
      "print the card, follow it with a full load, probe the thickest piece, and log what comes of it under the card's name",
    ];
  const { n } = card.window.calibration;
  const open = card.evidence.filter(({ name, met }) => !met && (n > 0 || FIRST.has(name)));
  if (state === "not tried") return open.flatMap(({ todo }) => todo ?? []);
  const asked = open.filter(({ name }) => remedies.length === 0 || !REMEDIED.has(name));
  return [...asked.flatMap(({ todo }) => todo ?? []), ...remedies];
}
