import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { nameSchema, noteSchema } from "../check/text-schema";
import { type ColumnPlans, nameFromId } from "../units/columns/column-plan";
import { type FileUnits, type ReadRecords, readRecords } from "../units/columns/read-records";

/** A product under development: one formula, spread, cut and reheated in one way. */
export interface Variant {
  readonly variantId: string;
  readonly name: string;
  /** the formula it is mixed from */
  readonly formulaId: string;
  /** `"slab"` is cut from a sheet; `"batter"` is baked in wells */
  readonly form: "slab" | "batter";
  /** the pan it was tuned on */
  readonly panId: string;
  /** mass of mix on that pan (g) */
  readonly batchG: number;
  /** rows of the cut; for wells 1 */
  readonly rows: number;
  /** columns of the cut, along the longer side; for wells 1 */
  readonly columns: number;
  /** taken off every edge before cutting (mm) */
  readonly trimMm: number;
  /** the appliance and setting that its reheat card names */
  readonly applianceId: string;
  readonly setpointC: number;
  /** temperature of the pieces when they go in (°C) */
  readonly startC: number;
  /** longest reheat the developer accepts (min) */
  readonly longestMin: number;
  readonly note: string | null;
}

const A_BATCH = "a batch, the mix spread on the pan, above 0 and up to 20000 g (44 lb)";

const whole = (what: string): z.ZodType<number> => z.number(what).int(what).min(1, what).max(100, what);

/** What a variant must hold; each message says what was expected. */
export const VariantSchema: z.ZodType<Variant> = z.object({
  variantId: idSchema("a variant name of letters, digits, points and dashes"),
  name: nameSchema(),
  formulaId: nameSchema("the id of a formula"),
  form: z.enum(["slab", "batter"], "slab or batter"),
  panId: nameSchema("the id of a pan"),
  batchG: z.number(A_BATCH).positive(A_BATCH).max(20_000, A_BATCH),
  rows: whole("a whole number of rows, 1 to 100"),
  columns: whole("a whole number of columns, 1 to 100"),
  trimMm: z.number("a trim").min(0, "a trim of 0 to 50 mm").max(50, "a trim of 0 to 50 mm"),
  applianceId: nameSchema("the id of an appliance"),
  setpointC: z
    .number("a setpoint, the air setting")
    .min(100, "a setpoint of 100 to 290 °C (212 to 554 °F)")
    .max(290, "a setpoint of 100 to 290 °C (212 to 554 °F)"),
  startC: z.number("a start temperature").min(-40, "-40 to 40 °C").max(40, "-40 to 40 °C"),
  longestMin: z.number("a time").positive("a time above 0 min").max(180, "a time up to 180 min"),
  note: noteSchema(),
});

/** What is taken where a variant does not say it: a freezer, common practice, no source; the time is our judgement. */
const FREEZER_C = -18;
const LONGEST_MIN = 30;

const COLUMNS: ColumnPlans<Variant> = {
  variantId: { column: "variant", holds: "id", also: ["id", "variant_id", "product"] },
  name: { column: "name", holds: "text", whenEmpty: nameFromId("variantId") },
  formulaId: { column: "formula", holds: "text" },
  form: { column: "form", holds: "text", among: { slab: [], batter: [] }, whenEmpty: { value: () => "slab" } },
  panId: { column: "pan", holds: "text" },
  batchG: { column: "batch", holds: "mass" },
  rows: { column: "rows", holds: "number" },
  columns: { column: "columns", holds: "number" },
  trimMm: { column: "trim", holds: "length", whenEmpty: { value: () => 0 } },
  applianceId: { column: "appliance", holds: "text" },
  setpointC: { column: "setpoint", holds: "temperature" },
  startC: {
    column: "start",
    holds: "temperature",
    whenEmpty: { value: () => FREEZER_C, says: `${FREEZER_C} °C (0 °F) was taken, straight from the freezer` },
  },
  longestMin: {
    column: "longest",
    holds: "time",
    whenEmpty: { value: () => LONGEST_MIN, says: `a reheat of up to ${LONGEST_MIN} min was taken as accepted` },
  },
  note: { column: "note", holds: "text" },
};

/** Reads the kitchen's variants from CSV text. */
export function readVariants(text: string, file: string, { units }: FileUnits = {}): ReadRecords<Variant> {
  return readRecords({ text, file, plans: COLUMNS, schema: VariantSchema, units });
}
