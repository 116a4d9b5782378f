import type { FormPlanned, FormVariant, LoggedDraft, TrialForm } from "../../src/kitchen/kitchen-answer";
import type { Timer } from "./timer";

/** What one taster said. */
export interface TasterRow {
  readonly initials: string;
  readonly crisp: string;
  readonly brown: string;
}

/** One trial on this page, as it is kept in the browser. */
export interface Draft {
  /** of the card, not of the trial */
  readonly key: string;
  readonly madeAt: number;
  /** what was typed, by heading; several values where a column takes several */
  readonly cells: Readonly<Record<string, readonly string[]>>;
  readonly tasters: readonly TasterRow[];
  readonly timer: Timer;
  /** what the timer wrote over, to be taken back; null when nothing */
  readonly before: Pick<Draft, "cells" | "timer"> | null;
  /** `waiting`: sent, and no answer came */
  readonly state: "draft" | "waiting" | "logged";
  /** whether it may have arrived: its name then stays */
  readonly wasSent: boolean;
  readonly logged: LoggedDraft | null;
  /** what was planned, in words; left out where nothing was */
  readonly planned?: string;
}

/** A new draft of a variant. Its name is fixed here, so that it can be sent again without being logged again. */
export function newDraft(options: {
  readonly form: TrialForm;
  readonly variant: FormVariant;
  readonly others: readonly Draft[];
  readonly initials: readonly string[];
  /** the planned trial that is run */
  readonly planned?: FormPlanned;
}): Draft {
  const { form, variant, others, initials, planned } = options;
  const begins = { ...variant.cells, ...planned?.cells };
  const cells = Object.fromEntries(Object.entries(begins).map(([heading, text]) => [heading, [text]]));
  return {
    key: crypto.randomUUID(),
    madeAt: Date.now(),
    cells: {
      ...cells,
      [headingOf(form, "trialId")]: [planned?.trialId ?? freeId(form, variant, others)],
      [headingOf(form, "date")]: [day()],
    },
    tasters: initials.map((one) => ({ initials: one, crisp: "", brown: "" })),
    timer: { startedAt: null, takenOutAt: null },
    before: null,
    state: "draft",
    wasSent: false,
    logged: null,
    ...(planned && { planned: planned.words }),
  };
}

/** The next name of a variant's trials that no other draft of this browser has. */
export function freeId(form: TrialForm, { nextId }: FormVariant, others: readonly Draft[]): string {
  const taken = new Set(others.map((draft) => idOf(form, draft)));
  let id = nextId;
  while (taken.has(id)) id = id.replace(/\d+$/, (count) => String(Number(count) + 1).padStart(count.length, "0"));
  return id;
}

/** A draft with another variant: what stood there as the first one's own becomes the second one's. */
export function withVariant(
  draft: Draft,
  options: {
    readonly form: TrialForm;
    readonly from: FormVariant | undefined;
    readonly to: FormVariant;
    readonly others: readonly Draft[];
  },
): Draft {
  const { form, from, to, others } = options;
  const cells: Record<string, readonly string[]> = { ...draft.cells };
  for (const [heading, text] of Object.entries(to.cells)) {
    const given = cells[heading]?.[0] ?? "";
    if (given === "" || given === from?.cells[heading]) cells[heading] = [text];
  }
  cells[headingOf(form, "variantId")] = [to.variantId];
  const own = idOf(form, draft);
  const isOurs = from !== undefined && own.replace(/\d+$/, "") === from.nextId.replace(/\d+$/, "");
  if (!draft.wasSent && isOurs) cells[headingOf(form, "trialId")] = [freeId(form, to, others)];
  return { ...draft, cells };
}

/** The cells of a draft as a log takes them; empty ones are left out. */
export function typedCells(form: TrialForm, draft: Draft): Record<string, string> {
  const typed: Record<string, string> = {};
  for (const { heading, holds } of form.fields) {
    const values = (draft.cells[heading] ?? []).map((value) => (isNumeric(holds) ? pointed(value) : value.trim()));
    const given = values.filter((value) => value !== "");
    if (given.length > 0) typed[heading] = given.join("; ");
  }
  for (const [name, score] of [
    ["crispScores", "crisp"],
    ["brownScores", "brown"],
  ] as const) {
    const rows = draft.tasters.filter((row) => row[score].trim() !== "");
    const said = rows.map(
      (row) => `${row.initials.trim() === "" ? "" : `${row.initials.trim()}:`}${pointed(row[score])}`,
    );
    if (said.length > 0) typed[headingOf(form, name)] = said.join("; ");
  }
  return typed;
}

/**
 * A number of one box with a point: keypads of some languages have a comma alone. `1,150` stays as it is, since it may be a
 * thousand, and is asked about.
 */
export function pointed(text: string): string {
  return text.trim().replace(/^(-?)(0,\d+|\d+,\d{1,2})$/, (number) => number.replace(",", "."));
}

/** Whether a column holds numbers, one a box. */
export function isNumeric(holds: string): boolean {
  return NUMERIC.has(holds);
}

const NUMERIC: ReadonlySet<string> = new Set([
  "readings",
  "length",
  "mass",
  "temperature",
  "time",
  "count",
  "share",
  "scores",
]);

export function headingOf(form: TrialForm, name: string): string {
  return form.fields.find((field) => field.name === name)?.heading ?? name;
}

export function idOf(form: TrialForm, draft: Draft): string {
  return draft.cells[headingOf(form, "trialId")]?.[0] ?? "";
}

export function variantOf(form: TrialForm, draft: Draft): FormVariant | undefined {
  const id = draft.cells[headingOf(form, "variantId")]?.[0];
  return form.variants.find(({ variantId }) => variantId === id);
}

/** Today where the person is, as `2026-03-14`. */
function day(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
