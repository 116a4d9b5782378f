import { z } from "zod";
import { fail } from "../check/check";
import { nameSchema } from "../check/text-schema";
import { type ColumnPlans, type ReadRecords, readRecords } from "../units/read-records";
import { checkPan, type Pan } from "./pan";

/** A pan as one row of `pans.csv`: the sizes that its shape does not have are empty. */
interface PanRow {
  readonly id: string;
  readonly name: string;
  readonly shape: Pan["shape"];
  readonly bottomLengthMm: number | null;
  readonly bottomWidthMm: number | null;
  readonly bottomDiameterMm: number | null;
  readonly depthMm: number;
  readonly cornerRadiusMm: number | null;
  readonly wallTaperDeg: number;
  readonly wells: number | null;
  readonly count: number;
  readonly standing: Pan["standing"];
}

const PanRowSchema: z.ZodType<PanRow> = z.object({
  id: nameSchema("the id of a pan"),
  name: nameSchema(),
  shape: z.enum(["rectangle", "round", "wells"], "rectangle, round or wells"),
  bottomLengthMm: z.number().nullable(),
  bottomWidthMm: z.number().nullable(),
  bottomDiameterMm: z.number().nullable(),
  depthMm: z.number("a depth"),
  cornerRadiusMm: z.number().nullable(),
  wallTaperDeg: z.number("a taper in degrees from vertical (0 for a straight wall)"),
  wells: z.number().nullable(),
  count: z.number("how many the kitchen has"),
  standing: z.enum(["measured", "nominal"], "measured or nominal"),
});

const COLUMNS: ColumnPlans<PanRow> = {
  id: { column: "pan", holds: "text" },
  name: { column: "name", holds: "text" },
  shape: { column: "shape", holds: "text" },
  bottomLengthMm: { column: "bottom_length", holds: "length" },
  bottomWidthMm: { column: "bottom_width", holds: "length" },
  bottomDiameterMm: { column: "bottom_diameter", holds: "length" },
  depthMm: { column: "depth", holds: "length" },
  cornerRadiusMm: { column: "corner_radius", holds: "length" },
  wallTaperDeg: { column: "wall_taper_deg", holds: "number" },
  wells: { column: "wells", holds: "number" },
  count: { column: "count", holds: "number" },
  standing: { column: "standing", holds: "text" },
};

/** Reads the kitchen's pans from CSV text; each pan's sizes must be possible for its shape. */
export function readPans(csvText: string, file: string): ReadRecords<Pan> {
  const read = readRecords(csvText, file, COLUMNS, PanRowSchema);
  const records: Pan[] = [];
  const rows: number[] = [];
  const problems = [...read.problems];
  for (const [at, row] of read.records.entries()) {
    const where = `${file} row ${read.rows[at]}`;
    try {
      records.push(Object.freeze(checkPan(panOf(row, where), where)));
      rows.push(read.rows[at]);
    } catch (error) {
      problems.push((error as Error).message);
    }
  }
  return { records, rows, problems };
}

function panOf(row: PanRow, where: string): Pan {
  const { id, name, depthMm, wallTaperDeg, count, standing } = row;
  const base = { id, name, depthMm, wallTaperDeg, count, standing };
  const needed = (value: number | null, column: string): number =>
    value ?? fail(`${where}, column ${column}:`, `must be given when the shape is ${row.shape}`, "an empty cell");
  if (row.shape === "rectangle")
    return {
      ...base,
      shape: "rectangle",
      bottomLengthMm: needed(row.bottomLengthMm, "bottom_length"),
      bottomWidthMm: needed(row.bottomWidthMm, "bottom_width"),
      cornerRadiusMm: needed(row.cornerRadiusMm, "corner_radius"),
    };
  const bottomDiameterMm = needed(row.bottomDiameterMm, "bottom_diameter");
  if (row.shape === "round") return { ...base, shape: "round", bottomDiameterMm };
  return { ...base, shape: "wells", bottomDiameterMm, wells: needed(row.wells, "wells") };
}
