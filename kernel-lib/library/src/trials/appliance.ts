import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { nameSchema, noteSchema } from "../check/text-schema";
import type { Floor } from "../pan/whole-pieces";
import { type ColumnPlans, nameFromId } from "../units/columns/column-plan";
import { type FileUnits, type ReadRecords, readRecords } from "../units/columns/read-records";
import { readFloor, type TypedFloor } from "../units/typed/read-area";

/** What reheats the pieces. */
export interface Appliance {
  readonly applianceId: string;
  readonly name: string;
  readonly kind: "air fryer" | "fan oven" | "still oven";
  /** floor of the basket or rack that pieces can lie on (cm²) */
  readonly floorCm2: number;
  /** its sides or its diameter, where they were typed: `9 x 9 1/2`, `round 9`; null where only its area is known */
  readonly floorShape?: Floor | null;
  /** the cell that says so, where it is one of its own */
  readonly floorSides?: string | null;
  /** how many of it there are; 1 unless given */
  readonly count?: number;
  /** rated power (W) */
  readonly powerW: number | null;
  readonly note: string | null;
}

/** The strongest appliance: our judgement, a tunnel oven of a small works. */
const MOST_POWER_W = 200_000;

/** An appliance as one row says it, cell by cell. */
type ApplianceRow = Omit<Appliance, "floorShape">;

const SOME_SIDES = "two sides such as 21 x 20 cm, or a diameter such as round 22 cm";

const A_COUNT = "a whole number of them, 1 to 100";
const A_FLOOR = "a floor of 20 to 20000 cm² (3 to 3100 in²), the part that pieces lie on";

/** What an appliance must hold; each message says what was expected. */
export const ApplianceSchema: z.ZodType<ApplianceRow> = z.object({
  applianceId: idSchema("an id of letters, digits, points and dashes, such as air-fryer"),
  name: nameSchema(),
  kind: z.enum(["air fryer", "fan oven", "still oven"], "air fryer, fan oven or still oven"),
  floorCm2: z.number(A_FLOOR).min(20, A_FLOOR).max(20_000, A_FLOOR),
  floorSides: z
    .string(SOME_SIDES)
    .max(60, SOME_SIDES)
    .refine((text) => readFloor(text, { sign: ".", unit: "cm" }) !== null, SOME_SIDES)
    .nullable(),
  count: z.number(A_COUNT).int(A_COUNT).min(1, A_COUNT).max(100, A_COUNT),
  powerW: z.number().positive("a power above 0 W").max(MOST_POWER_W, `a power up to ${MOST_POWER_W} W`).nullable(),
  note: noteSchema(),
});

const KINDS: Readonly<Record<Appliance["kind"], readonly string[]>> = {
  "air fryer": [],
  "fan oven": ["convection oven", "convection"],
  "still oven": ["conventional oven"],
};

const COLUMNS: ColumnPlans<ApplianceRow> = {
  applianceId: { column: "appliance", holds: "id", also: ["id", "appliance_id"] },
  name: { column: "name", holds: "text", whenEmpty: nameFromId("applianceId") },
  kind: { column: "kind", holds: "text", among: KINDS },
  floorCm2: { column: "floor", holds: "area", also: ["basket_floor", "rack_floor"] },
  floorSides: { column: "floor_sides", holds: "text", also: ["sides"] },
  count: { column: "count", holds: "number", whenEmpty: { value: () => 1 } },
  powerW: { column: "power_w", holds: "number", also: ["power", "watts"] },
  note: { column: "note", holds: "text" },
};

/** Reads the kitchen's appliances from CSV text. */
export function readAppliances(text: string, file: string, { units }: FileUnits = {}): ReadRecords<Appliance> {
  const read = readRecords({ text, file, plans: COLUMNS, schema: ApplianceSchema, units });
  const heading = read.headings.floorCm2;
  const unit = /cm/i.test(heading) || (units !== "us" && !/in(?:2|²)|sq/i.test(heading)) ? "cm" : "in";
  const cellOf = new Map(read.drafts.map(({ row, cells }) => [row, cells[heading] ?? ""]));
  const shape = (text: string | undefined | null): TypedFloor | null => readFloor(text ?? "", { sign: ".", unit });
  return {
    ...read,
    headings: { ...read.headings, floorShape: heading },
    records: read.records.map((one, at) =>
      Object.freeze({ ...one, floorShape: shape(one.floorSides) ?? shape(cellOf.get(read.rows[at])) }),
    ),
  };
}
