import { z } from "zod";
import { nameSchema, noteSchema } from "../../check/text-schema";
import type { ColumnPlans } from "../../units/columns/column-plan";
import { type FileUnits, type ReadRecords, readRecords } from "../../units/columns/read-records";
import { daySchema } from "./day-schema";

/** What a kitchen has of an ingredient, and what it paid. */
export interface PantryItem {
  readonly ingredientId: string;
  /** mass of a pack as it is sold (g); null: sold by weight */
  readonly packG: number | null;
  /** of a pack, in the kitchen's own currency */
  readonly packPrice: number | null;
  /** day on which that was the price, `2026-03-14` */
  readonly pricedOn: string | null;
  /** on the shelf (g); null: none */
  readonly stockG: number | null;
  readonly note: string | null;
}

const A_PACK = "a pack's mass, above 0 and up to 50 kg (110 lb)";
const A_PRICE = "the price of a pack, 0 to 100000";
const A_STOCK = "a mass of 0 to 1000 kg (2200 lb)";

const PantrySchema: z.ZodType<PantryItem, unknown> = z
  .object({
    ingredientId: nameSchema("the id of an ingredient"),
    packG: z.number(A_PACK).positive(A_PACK).max(50_000, A_PACK).nullable(),
    packPrice: z.number(A_PRICE).min(0, A_PRICE).max(100_000, A_PRICE).nullable(),
    pricedOn: daySchema().nullable(),
    stockG: z.number(A_STOCK).min(0, A_STOCK).max(1e6, A_STOCK).nullable(),
    note: noteSchema(),
  })
  .refine(({ packG, packPrice }) => packPrice === null || packG !== null, {
    path: ["packG"],
    message: "the mass of the pack that has this price",
  });

const COLUMNS: ColumnPlans<PantryItem> = {
  ingredientId: { column: "ingredient", holds: "text", also: ["id"] },
  packG: { column: "pack", holds: "mass", also: ["pack_size"] },
  packPrice: { column: "price", holds: "number", also: ["pack_price", "cost"] },
  pricedOn: { column: "priced", holds: "text", also: ["priced_on", "date"] },
  stockG: { column: "stock", holds: "mass", also: ["in_stock"] },
  note: { column: "note", holds: "text" },
};

/** Reads the packs, prices and stock of a kitchen's ingredients from CSV text. */
export function readPantry(text: string, file: string, { units }: FileUnits = {}): ReadRecords<PantryItem> {
  return readRecords({ text, file, plans: COLUMNS, schema: PantrySchema, units });
}
