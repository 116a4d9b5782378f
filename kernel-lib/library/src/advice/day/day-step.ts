import type { PlannedStep } from "./day-problem";

/** A step with its time, in minutes after midnight of the first day. */
export interface DayStep extends PlannedStep {
  readonly startMin: number;
  readonly endMin: number;
  /** by how much it may begin later while nothing else moves (min) */
  readonly slackMin: number;
  /** from when to look, and by when it is done even in slow air (minutes after midnight); null for work by hand */
  readonly readyMin: readonly [number, number] | null;
}
