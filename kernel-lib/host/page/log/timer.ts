import type { TrialForm } from "../../src/kitchen/kitchen-answer";
import { type Draft, headingOf } from "./draft";

/** When the pieces went in and came out, by the clock of the day (ms): a locked phone loses no time. */
export interface Timer {
  readonly startedAt: number | null;
  readonly takenOutAt: number | null;
}

/** What is pressed while the pieces are in. */
export type Press = "start" | "not yet" | "crisp" | "turned" | "taken out";

/** Minutes to a quarter minute, the least a quarter. */
export function quarterMinutes(ms: number): number {
  return Math.max(0.25, Math.round(ms / 15_000) / 4);
}

/** `"9:05"` */
export function clockText(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** A draft after a press at a time: "not yet" and "crisp" are looks, of which the last "not yet" and the first "crisp" count. */
export function pressed(
  draft: Draft,
  press: Press,
  options: { readonly form: TrialForm; readonly now: number },
): Draft {
  const { form, now } = options;
  const { cells, timer } = draft;
  const before = { cells, timer };
  if (press === "start") return { ...draft, before, timer: { startedAt: now, takenOutAt: null } };
  if (timer.startedAt === null) return draft;
  const minutes = String(quarterMinutes(now - timer.startedAt));
  const given = (name: string): readonly string[] => (cells[headingOf(form, name)] ?? []).filter((text) => text !== "");
  const written = (name: string, values: readonly string[]): Draft["cells"] => ({ [headingOf(form, name)]: values });
  if (press === "turned") return { ...draft, before, cells: { ...cells, ...written("flipMin", [minutes]) } };
  if (press === "taken out")
    return {
      ...draft,
      before,
      timer: { ...timer, takenOutAt: now },
      cells: { ...cells, ...written("timeMin", [minutes]) },
    };
  const looks = written("looksMin", [...new Set([...given("looksMin"), minutes])]);
  const isFirstCrisp = press === "crisp" && given("crispMin").length === 0;
  const seen =
    press === "not yet" ? written("notCrispMin", [minutes]) : isFirstCrisp ? written("crispMin", [minutes]) : {};
  return { ...draft, before, cells: { ...cells, ...looks, ...seen } };
}
