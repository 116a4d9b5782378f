import { tooLittle } from "../../check/too-little";
import { type Schedule, type ScheduleOptions, scheduleTasks } from "../../plan/schedule/schedule-tasks";

/** A day's schedule; where none was found, a sentence for a cook. */
export function placedDay(options: ScheduleOptions): Schedule {
  try {
    return scheduleTasks(options);
  } catch (error) {
    if (!(error instanceof RangeError && error.message.includes("must fit into"))) throw error;
    return tooLittle(
      "batchDay",
      "No plan was found that fits into three days and keeps every limit: give it more places in the freezer, more pans or hands, longer hours, or fewer pans of mix.",
    );
  }
}
