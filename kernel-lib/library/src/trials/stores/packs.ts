import { z } from "zod";
import { nameSchema, noteSchema } from "../../check/text-schema";
import type { ColumnPlans } from "../../units/columns/column-plan";
import { type FileUnits, type ReadRecords, readRecords } from "../../units/columns/read-records";
import { daySchema } from "./day-schema";

/** A pack of a product in the kitchen's freezer. */
export interface FreezerPack {
  readonly packId: string;
  readonly variantId: string;
  /** day on which it was packed, `2026-03-14` */
  readonly packedOn: string;
  /** pieces that are left in it */
  readonly pieces: number;
  /** where it is kept (°C) */
  readonly keptC: number;
  /** warm spells: temperature (°C) and how long (days), in the same order */
  readonly warmC: readonly number[];
  readonly warmDays: readonly number[];
  /** `loose`: full of air, or frost is in it; `tight`: close to the pieces */
  readonly packing: "tight" | "loose";
  readonly note: string | null;
}

const A_COUNT = "a whole number of pieces, 1 to 100000";
const A_COLD = "a temperature of -40 to -5 °C (-40 to 23 °F): warmer food has begun to thaw, and no rule speaks of it";
const KEPT_C = -18;

const PackSchema: z.ZodType<FreezerPack> = z
  .object({
    packId: nameSchema("a name of the pack"),
    variantId: nameSchema("the id of a variant"),
    packedOn: daySchema(),
    pieces: z.number(A_COUNT).int(A_COUNT).min(1, A_COUNT).max(100_000, A_COUNT),
    keptC: z.number(A_COLD).min(-40, A_COLD).max(-5, A_COLD),
    warmC: z.array(z.number(A_COLD).min(-40, A_COLD).max(-5, A_COLD)),
    warmDays: z.array(z.number("days, 0 to 365").min(0, "days, 0 to 365").max(365, "days, 0 to 365")),
    packing: z.enum(["tight", "loose"], "tight or loose"),
    note: noteSchema(),
  })
  .refine(({ warmC, warmDays }) => warmC.length === warmDays.length, {
    path: ["warmDays"],
    message: "as many days as there are warm temperatures, parted by semicolons",
  });

const COLUMNS: ColumnPlans<FreezerPack> = {
  packId: { column: "pack", holds: "text", also: ["id"] },
  variantId: { column: "variant", holds: "text", also: ["product"] },
  packedOn: { column: "packed", holds: "text", also: ["packed_on", "date"] },
  pieces: { column: "pieces", holds: "number" },
  keptC: {
    column: "kept",
    holds: "temperature",
    whenEmpty: { value: () => KEPT_C, says: `it was taken as kept at ${KEPT_C} °C (0 °F)` },
  },
  warmC: { column: "warm", holds: "temperature", many: true },
  warmDays: { column: "warm_days", holds: "number", many: true },
  packing: {
    column: "packing",
    holds: "text",
    among: { tight: ["close", "vacuum"], loose: ["frosty", "frost"] },
    whenEmpty: { value: () => "tight" },
  },
  note: { column: "note", holds: "text" },
};

/** Reads the packs in a kitchen's freezer from CSV text. */
export function readPacks(text: string, file: string, { units }: FileUnits = {}): ReadRecords<FreezerPack> {
  return readRecords({ text, file, plans: COLUMNS, schema: PackSchema, units });
}
