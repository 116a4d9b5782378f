import type { KitchenUnits } from "../../units/unit-table";
import { KITCHEN_UNIT, type UnitKind } from "../../units/unit-table";
import type { Trial } from "../trial";

/** What a column of a log holds. */
export type Holding =
  | "text"
  | "id"
  | "day"
  | "count"
  | "share"
  | "yesNo"
  | "readings"
  | "scores"
  | "files"
  | "tasters"
  | "programme"
  | UnitKind;

/** The names of a log's columns: fields of a trial, and `tasters`, whose initials go to both panels. */
export type LogName = Exclude<keyof Trial, "coreC" | "crispTasters" | "brownTasters" | "extra"> | "tasters";

/** One column that a log may have. */
export interface LogField {
  readonly name: LogName;
  /** its heading, without a unit */
  readonly column: string;
  readonly holds: Holding;
  /** for a quantity, its kind, the unit that the trial has it in, and the endings of its headings */
  readonly kind: UnitKind | null;
  readonly base: string | null;
  readonly endings: Readonly<Record<KitchenUnits, string>> | null;
  /** several values in one cell */
  readonly many: boolean;
  /** other headings that mean the same, in lower case, words parted by one space, without a unit */
  readonly also: readonly string[];
}

const ENDINGS: Partial<Readonly<Record<UnitKind, Readonly<Record<KitchenUnits, string>>>>> = {
  length: { metric: "mm", us: "in" },
  mass: { metric: "g", us: "oz" },
  temperature: { metric: "c", us: "f" },
  time: { metric: "min", us: "min" },
};

function column(
  name: LogName,
  heading: string,
  holds: Holding,
  also: readonly string[],
  special: Partial<LogField> = {},
): LogField {
  const kind = holds in KITCHEN_UNIT ? (holds as UnitKind) : null;
  const base = kind === null ? null : KITCHEN_UNIT[kind];
  const endings = kind === null ? null : (ENDINGS[kind] ?? null);
  return Object.freeze({ name, column: heading, holds, kind, base, endings, many: false, also, ...special });
}

const MANY = { many: true };
const PROGRAMME = { many: true, kind: "temperature", base: "°C", endings: ENDINGS.temperature } as const;
const DAYS = { base: "day", endings: { metric: "days", us: "days" } } as const;

/**
 * Every column of a trial log, in the order in which a morning goes, with all headings that are taken for it: nothing
 * else is. A heading that stands here nowhere is kept with the trial as it is.
 */
export const LOG_FIELDS: readonly LogField[] = Object.freeze([
  column("trialId", "trial", "text", [
    "trial id",
    "trial name",
    "trial no",
    "trial number",
    "run",
    "run id",
    "test",
    "id",
  ]),
  column("date", "date", "day", ["day", "trial date", "run date", "test date", "date run"]),
  column("variantId", "variant", "id", ["variant id", "product", "product id"]),
  column("panId", "pan", "id", ["pan id", "tray", "sheet pan", "sheet"]),
  column("applianceId", "appliance", "id", ["appliance id", "oven", "air fryer", "fryer"]),
  column("batchG", "batch", "mass", ["batch mass", "batch weight", "batch wt", "batch size", "mix mass", "mix weight"]),
  column(
    "probesMm",
    "thickness",
    "length",
    [
      "thicknesses",
      "slab thickness",
      "thickness readings",
      "probes",
      "probe readings",
      "depth",
      "depths",
      "depth readings",
    ],
    MANY,
  ),
  column("setpointC", "setpoint", "temperature", [
    "set point",
    "set temp",
    "set temperature",
    "air temp",
    "air temperature",
    "oven temp",
    "oven temperature",
    "air fryer temp",
    "air fryer temperature",
  ]),
  column("loadFraction", "load_fraction", "share", ["load", "load share", "floor covered", "basket load"]),
  column("startC", "start", "temperature", [
    "start temp",
    "start temperature",
    "starting temp",
    "starting temperature",
  ]),
  column("pieces", "pieces", "count", ["pcs", "piece count", "number of pieces", "no of pieces", "pieces weighed"]),
  column("massBeforeG", "before", "mass", [
    "mass before",
    "weight before",
    "wt before",
    "before mass",
    "before weight",
    "before wt",
  ]),
  column("flipMin", "flip", "time", ["flip time", "flipped", "flipped at", "turn", "turned", "turned at"]),
  column("looksMin", "looks", "time", ["looks at", "looked at", "checks", "checked at", "opened at"], MANY),
  column("notCrispMin", "not_crisp", "time", ["not yet crisp", "not crisp at", "last not crisp", "still soft at"]),
  column("crispMin", "crisp", "time", ["crisp at", "crisp time", "first crisp", "crispy at"]),
  column("timeMin", "time", "time", [
    "total time",
    "cook time",
    "cooking time",
    "reheat time",
    "time out",
    "taken out",
    "taken out at",
  ]),
  column(
    "coresC",
    "core",
    "temperature",
    [
      "cores",
      "core temp",
      "core temps",
      "core temperature",
      "core temperatures",
      "internal temp",
      "internal temperature",
      "centre temp",
      "center temp",
    ],
    MANY,
  ),
  column("restMin", "rest", "time", ["rest time", "resting time"]),
  column("restedCoreC", "rested_core", "temperature", [
    "rested core temp",
    "rested core temperature",
    "core after rest",
    "core temp after rest",
  ]),
  column("massAfterG", "after", "mass", [
    "mass after",
    "weight after",
    "wt after",
    "after mass",
    "after weight",
    "after wt",
  ]),
  column(
    "crispScores",
    "crisp_scores",
    "scores",
    ["crisp score", "crispness", "crispness score", "crispness scores"],
    MANY,
  ),
  column(
    "brownScores",
    "brown_scores",
    "scores",
    ["brown score", "browning", "browning score", "browning scores", "brownness", "brownness scores"],
    MANY,
  ),
  column("tasters", "tasters", "tasters", ["taster", "panel", "tasted by"], MANY),
  column("slab", "slab", "text", ["slab id", "slab no"]),
  column("session", "session", "text", ["morning"]),
  column("cook", "cook", "text", ["run by", "cooked by", "operator", "who"]),
  column("pieceLengthMm", "piece_length", "length", []),
  column("pieceWidthMm", "piece_width", "length", []),
  column("barePieceG", "bare_piece", "mass", ["bare piece mass", "bare piece weight"]),
  column("coatedPieceG", "coated_piece", "mass", ["coated piece mass", "coated piece weight"]),
  column("oilG", "oil", "mass", ["oil sprayed", "spray oil", "oil mass"]),
  column("ageDays", "age", "time", ["freezer age", "freezer time", "time in freezer"], DAYS),
  column("frost", "frost", "text", ["frost seen"]),
  column("preheated", "preheated", "yesNo", ["preheat", "pre heated", "pre heat"]),
  column("place", "place", "text", ["position", "rack position", "shelf"]),
  column("programme", "programme", "programme", ["program", "steps"], PROGRAMME),
  column("photos", "photo", "files", ["photos", "picture", "pictures", "photo file"], MANY),
  column("card", "card", "text", ["card followed", "reheat card"]),
  column("note", "note", "text", ["notes", "remark", "remarks", "comment", "comments"]),
]);

/** The column of a field; undefined for what is no field. */
export function logField(name: LogName): LogField | undefined {
  return BY_NAME.get(name);
}

const BY_NAME: ReadonlyMap<string, LogField> = new Map(LOG_FIELDS.map((field) => [field.name, field]));

/** The heading of a column, in US or in metric units: `thickness_in`, `thickness_mm`. */
export function logHeading({ column: heading, endings }: LogField, units: KitchenUnits): string {
  return endings === null ? heading : `${heading}_${endings[units]}`;
}

/** What a new log has no column for: what few kitchens write, and what follows from the cut or the day. */
const IN_NEW_LOG: ReadonlySet<LogName> = new Set<LogName>([
  "trialId",
  "date",
  "variantId",
  "panId",
  "applianceId",
  "batchG",
  "probesMm",
  "setpointC",
  "loadFraction",
  "startC",
  "pieces",
  "massBeforeG",
  "flipMin",
  "looksMin",
  "notCrispMin",
  "crispMin",
  "timeMin",
  "coresC",
  "restMin",
  "restedCoreC",
  "massAfterG",
  "crispScores",
  "brownScores",
  "slab",
  "cook",
  "note",
]);

/** The headings of a new log, in the order in which a morning goes. */
export function logHeadings(units: KitchenUnits): readonly string[] {
  return LOG_FIELDS.filter(({ name }) => IN_NEW_LOG.has(name)).map((field) => logHeading(field, units));
}
