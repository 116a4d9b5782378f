import type { DayPlan } from "../../advice/day/batch-day";
import { clockText } from "../../units/clock-text";
import type { Note } from "../note/note";
import { stepText } from "./step-text";

/** A batch day as a list to hang up or to read on a telephone: when to do what, when you may leave, cautions. */
export function dayNote(plan: DayPlan): Note {
  const { away, breaches, cautions, endMin, notes, slowEndMin, startMin, steps, units } = plan;
  const clock = (min: number): string => clockText(min, units);
  const slow =
    slowEndMin === null
      ? "no plan was found for slow air within three days"
      : slowEndMin > endMin
        ? `in slow air by ${clock(slowEndMin)}`
        : "in slow air no later";
  return {
    kind: "note",
    title: `Batch day: ${clock(startMin)} to ${clock(endMin)}`,
    mark: breaches.length === 0 ? "fits" : "does not fit",
    good: breaches.length === 0,
    parts: [
      `Packed by ${clock(endMin)}, ${slow}.${plan.stacked > 1 ? ` Pans stand ${plan.stacked} above each other in the freezer, with ${plan.places.gapMm} mm between.` : ""}`,
      { heading: "What cannot be kept", items: breaches },
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
      { heading: "What this rests on", items: notes },
      ...cautions,
    ],
  };
}
