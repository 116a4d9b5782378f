import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { slipLines } from "../check/slip";
import { nameSchema } from "../check/text-schema";
import type { ColumnPlans } from "../units/columns/column-plan";
import { cellSlip, type Draft, type ReadRecords, readRecords } from "../units/columns/read-records";
import { type Pan, panFaults } from "./pan";

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
  id: idSchema("an id of letters, digits, points and dashes, such as half-sheet"),
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
  const slips = [...read.slips];
  const draftOf = new Map(read.drafts.map((draft) => [draft.row, draft]));
  for (const [at, record] of read.records.entries()) {
    const row = read.rows[at];
    const { cells } = draftOf.get(row) as Draft<PanRow>;
    const slip = (field: keyof PanRow, expected: string): void => {
      slips.push(cellSlip({ file, row, heading: read.headings[field], cells, expected }));
    };
    const lacking = SIZES[record.shape].filter((field) => record[field] === null);
    for (const field of lacking) slip(field, `a value, as the shape is ${record.shape}`);
    if (lacking.length > 0) continue;
    const pan = panOf(record);
    const faults = panFaults(pan);
    for (const { field, must } of faults) slip(field as keyof PanRow, must.replace(/^must be /, ""));
    if (faults.length > 0) continue;
    records.push(Object.freeze(pan));
    rows.push(row);
  }
  const { drafts, headings, whole } = read as unknown as ReadRecords<Pan>;
  return { records, rows, problems: slipLines(slips), slips, drafts, headings, whole };
}

/** The sizes that a shape has. */
const SIZES: Readonly<Record<Pan["shape"], readonly (keyof PanRow)[]>> = {
  rectangle: ["bottomLengthMm", "bottomWidthMm", "cornerRadiusMm"],
  round: ["bottomDiameterMm"],
  wells: ["bottomDiameterMm", "wells"],
};

function panOf(row: PanRow): Pan {
  const { id, name, depthMm, wallTaperDeg, count, standing } = row;
  const base = { id, name, depthMm, wallTaperDeg, count, standing };
  const sizes = Object.fromEntries(SIZES[row.shape].map((field) => [field, row[field]]));
  return { ...base, shape: row.shape, ...sizes } as unknown as Pan;
}
