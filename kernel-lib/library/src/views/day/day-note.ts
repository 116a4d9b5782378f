import type { DayPlan } from "../../advice/day/batch-day";
import { clockText } from "../../units/clock-text";
import type { Note } from "../note/note";
import { stepText } from "./step-text";

/** Limits of cooling and holding that the day does not keep, or may not. */
function limitsOf(limits: DayPlan["limits"]): readonly string[] {
  return limits.flatMap(({ variantName, cooked, ambient, pieces, wash }) =>
    [cooked, ambient, pieces, wash].flatMap((check) =>
      check === null || check.verdict === "passes"
        ? []
        : [`${"what" in check ? "" : `${variantName}: `}${check.sentence} ${check.todo}`],
    ),
  );
}

/** A batch day as a list to hang up or to read on a telephone: when to do what, when you may leave, cautions. */
export function dayNote(plan: DayPlan): Note {
  const { away, breaches, cautions, endMin, freezer, limits, notes, slowEndMin, startMin, steps, units } = plan;
  const clock = (min: number): string => clockText(min, units);
  const slow =
    slowEndMin === null
      ? "no plan was found for slow air within three days"
      : slowEndMin > endMin
        ? `in slow air by ${clock(slowEndMin)}`
        : "in slow air no later";
  const fits = breaches.length === 0 && limitsOf(limits).length === 0;
  return {
    kind: "note",
    title: `Batch day: ${clock(startMin)} to ${clock(endMin)}`,
    mark: fits ? "fits" : "does not fit",
    good: fits,
    parts: [
      `Packed by ${clock(endMin)}, ${slow}.`,
      { heading: "What cannot be kept", items: [...breaches, ...limitsOf(limits)] },
      {
        heading: "When to do what",
        items: steps
          .filter(({ hands }) => hands !== "none")
          .map((step) => `${clock(step.startMin)}  ${stepText(step)}`),
      },
      {
        heading: "What goes on by itself",
        items: steps.flatMap((step) =>
          step.readyMin === null
            ? []
            : [
                `${clock(step.startMin)}  ${stepText(step)}: look from ${clock(step.readyMin[0])}, done by ${clock(step.readyMin[1])}`,
              ],
        ),
      },
      {
        heading: "You may leave",
        items: away.map(({ from, until }) => `from ${clock(from)} to ${clock(until)}`),
      },
      { heading: "The freezer", items: [freezer.sentence] },
      { heading: "What this rests on", items: notes },
      ...cautions,
    ],
  };
}
