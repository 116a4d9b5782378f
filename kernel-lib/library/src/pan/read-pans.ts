import { z } from "zod";
import { idSchema } from "../check/id-schema";
import { slipLines } from "../check/slip";
import { nameSchema } from "../check/text-schema";
import { type ColumnPlans, nameFromId } from "../units/columns/column-plan";
import { cellSlip, type Draft, type FileUnits, type ReadRecords, readRecords } from "../units/columns/read-records";
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
  depthMm: z.number("the inside depth, bottom to rim"),
  cornerRadiusMm: z.number().nullable(),
  wallTaperDeg: z.number("a taper in degrees from vertical (0 for a straight wall)"),
  wells: z.number().nullable(),
  count: z.number("how many the kitchen has"),
  standing: z.enum(["measured", "nominal"], "measured or nominal"),
});

/** The shape that has the sizes which a row gives. */
const shapeOf = ({ bottomDiameterMm, wells }: Readonly<Record<string, unknown>>): Pan["shape"] => {
  if (typeof bottomDiameterMm !== "number") return "rectangle";
  return typeof wells === "number" ? "wells" : "round";
};

const COLUMNS: ColumnPlans<PanRow> = {
  id: { column: "pan", holds: "id", also: ["id", "pan_id"] },
  name: { column: "name", holds: "text", whenEmpty: nameFromId("id") },
  bottomLengthMm: { column: "bottom_length", holds: "length", also: ["length", "inside_length"] },
  bottomWidthMm: { column: "bottom_width", holds: "length", also: ["width", "inside_width"] },
  bottomDiameterMm: { column: "bottom_diameter", holds: "length", also: ["diameter", "inside_diameter"] },
  wells: { column: "wells", holds: "number" },
  shape: {
    column: "shape",
    holds: "text",
    among: { rectangle: ["rectangular"], round: ["circular"], wells: [] },
    whenEmpty: { value: shapeOf },
  },
  depthMm: { column: "depth", holds: "length", also: ["inside_depth"] },
  cornerRadiusMm: { column: "corner_radius", holds: "length", whenEmpty: { value: () => 0 } },
  wallTaperDeg: { column: "wall_taper_deg", holds: "number", also: ["wall_taper"], whenEmpty: { value: () => 0 } },
  count: { column: "count", holds: "number", whenEmpty: { value: () => 1 } },
  standing: {
    column: "standing",
    holds: "text",
    among: { measured: [], nominal: [] },
    whenEmpty: { value: () => "nominal" },
  },
};

/** Reads the kitchen's pans from CSV text; each pan's sizes must be possible for its shape. */
export function readPans(text: string, file: string, { units }: FileUnits = {}): ReadRecords<Pan> {
  const read = readRecords({ text, file, plans: COLUMNS, schema: PanRowSchema, units });
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
    for (const field of lacking) slip(field, `a size, as the shape is ${record.shape}`);
    if (lacking.length > 0) continue;
    const pan = panOf(record);
    const faults = panFaults(pan);
    for (const { field, must } of faults) slip(field as keyof PanRow, must.replace(/^must be /, ""));
    if (faults.length > 0) continue;
    records.push(Object.freeze(pan));
    rows.push(row);
  }
  const { drafts, headings, whole, notices } = read as unknown as ReadRecords<Pan>;
  return { records, rows, problems: slipLines(slips), slips, drafts, headings, whole, notices };
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
