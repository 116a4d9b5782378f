import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { nameSchema, noteSchema } from "../check/text-schema";
import type { ColumnPlans } from "../units/columns/column-plan";
import { type ReadRecords, readRecords } from "../units/columns/read-records";

/** What reheats the pieces. */
export interface Appliance {
  readonly applianceId: string;
  readonly name: string;
  readonly kind: "air fryer" | "fan oven" | "still oven";
  /** floor of the basket or rack that pieces can lie on (cm²) */
  readonly floorCm2: number;
  /** rated power (W) */
  readonly powerW: number | null;
  readonly note: string | null;
}

/** The strongest appliance: our judgement, a tunnel oven of a small works. */
const MOST_POWER_W = 200_000;

/** What an appliance must hold; each message says what was expected. */
export const ApplianceSchema: z.ZodType<Appliance> = z.object({
  applianceId: idSchema("an id of letters, digits, points and dashes, such as air-fryer"),
  name: nameSchema(),
  kind: z.enum(["air fryer", "fan oven", "still oven"], "air fryer, fan oven or still oven"),
  floorCm2: z
    .number("a floor of 20 to 20000 cm²")
    .min(20, "a floor of 20 to 20000 cm²")
    .max(20_000, "a floor of 20 to 20000 cm²"),
  powerW: z.number().positive("a power above 0 W").max(MOST_POWER_W, `a power up to ${MOST_POWER_W} W`).nullable(),
  note: noteSchema(),
});

const COLUMNS: ColumnPlans<Appliance> = {
  applianceId: { column: "appliance", holds: "text" },
  name: { column: "name", holds: "text" },
  kind: { column: "kind", holds: "text" },
  floorCm2: { column: "floor", holds: "area" },
  powerW: { column: "power_w", holds: "number" },
  note: { column: "note", holds: "text" },
};

/** Reads the kitchen's appliances from CSV text. */
export function readAppliances(csvText: string, file: string): ReadRecords<Appliance> {
  return readRecords(csvText, file, COLUMNS, ApplianceSchema);
}
