import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { nameSchema, noteSchema } from "../check/text-schema";
import { type ColumnPlans, nameFromId } from "../units/columns/column-plan";
import { type FileUnits, type ReadRecords, readRecords } from "../units/columns/read-records";

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

const A_FLOOR = "a floor of 20 to 20000 cm² (3 to 3100 in²), the part that pieces lie on";

/** What an appliance must hold; each message says what was expected. */
export const ApplianceSchema: z.ZodType<Appliance> = z.object({
  applianceId: idSchema("an id of letters, digits, points and dashes, such as air-fryer"),
  name: nameSchema(),
  kind: z.enum(["air fryer", "fan oven", "still oven"], "air fryer, fan oven or still oven"),
  floorCm2: z.number(A_FLOOR).min(20, A_FLOOR).max(20_000, A_FLOOR),
  powerW: z.number().positive("a power above 0 W").max(MOST_POWER_W, `a power up to ${MOST_POWER_W} W`).nullable(),
  note: noteSchema(),
});

const KINDS: Readonly<Record<Appliance["kind"], readonly string[]>> = {
  "air fryer": [],
  "fan oven": ["convection oven", "convection"],
  "still oven": ["conventional oven"],
};

const COLUMNS: ColumnPlans<Appliance> = {
  applianceId: { column: "appliance", holds: "id", also: ["id", "appliance_id"] },
  name: { column: "name", holds: "text", whenEmpty: nameFromId("applianceId") },
  kind: { column: "kind", holds: "text", among: KINDS },
  floorCm2: { column: "floor", holds: "area", also: ["basket_floor", "rack_floor"] },
  powerW: { column: "power_w", holds: "number", also: ["power", "watts"] },
  note: { column: "note", holds: "text" },
};

/** Reads the kitchen's appliances from CSV text. */
export function readAppliances(text: string, file: string, { units }: FileUnits = {}): ReadRecords<Appliance> {
  return readRecords({ text, file, plans: COLUMNS, schema: ApplianceSchema, units });
}
