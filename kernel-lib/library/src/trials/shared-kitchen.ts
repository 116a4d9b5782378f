import { fail } from "../check/check";
import { counted } from "../check/counted";
import { csvLine } from "../check/csv-line";
import { eachCsvLine } from "../check/each-csv-line";
import { nearestName } from "../check/nearest-name";
import { readFormula } from "../food/formula/read/read-formula";
import { readIngredients } from "../food/ingredient/parse-ingredients";
import { wordsOf } from "../units/columns/words-of";
import { checkKitchen } from "./check-kitchen";
import type { Kitchen } from "./kitchen";
import { type FolderFile, isKitchenFile } from "./kitchen-folder";
import { LOG_FIELDS, logHeading } from "./log/log-fields";
import { readLogRows } from "./log/read-trials";
import { logFormat } from "./log/table/log-table";
import { writeTrials } from "./log/write/write-trials";
import { readPacks } from "./stores/packs";
import { readPantry } from "./stores/pantry";
import type { Trial } from "./trial";
import { readVariants } from "./variant";

/** What may stay at home when a kitchen is shared. */
export const PRIVATE_THINGS = ["notes", "photos", "costs"] as const;
export type PrivateThing = (typeof PRIVATE_THINGS)[number];

/** What `sharedKitchen` works from. */
export interface SharedKitchenOptions {
  /** the kitchen's folder as it lies on the disk */
  readonly files: readonly FolderFile[];
  /** variants to share, all unless given; the others stay at home with their formulas and trials */
  readonly variantIds?: readonly string[];
  /** private things to take along; none unless given */
  readonly take?: readonly PrivateThing[];
}

/** A kitchen to hand on. */
export interface SharedKitchen {
  readonly name: string;
  /** its files, a text or the bytes of a workbook */
  readonly files: readonly { readonly file: string; readonly content: string | Uint8Array }[];
  readonly variantIds: readonly string[];
  /** names of photographs that go along */
  readonly photos: readonly string[];
  /** what stays at home, a sentence each */
  readonly leftOut: readonly string[];
}

/**
 * The files of a kitchen without what is private: notes and columns of one's own, photographs, costs, and other products with
 * their formulas, ingredients and trials. A file that loses nothing stays as it is, byte for byte; trials that stay keep
 * their numbers to the digit.
 *
 * Throws for a kitchen that has problems, for a variant that it does not have, and for a private thing of another name.
 */
export function sharedKitchen({ files, variantIds, take = [] }: SharedKitchenOptions): SharedKitchen {
  const { kitchen, problems } = checkKitchen(files);
  if (kitchen === null)
    throw new RangeError(`sharedKitchen: the kitchen must have no problems:\n${problems.join("\n")}`);
  for (const thing of take)
    if (!PRIVATE_THINGS.includes(thing)) fail("sharedKitchen: take", `must be of ${PRIVATE_THINGS.join(", ")}`, thing);
  const keeps = (thing: PrivateThing): boolean => take.includes(thing);
  const variants = chosen(kitchen, variantIds);
  const ids = new Set(variants.map(({ variantId }) => variantId));
  const formulas = new Set(variants.map(({ formula }) => formula.id));
  const used = new Set(
    variants.flatMap(({ formula }) =>
      [...formula.mix, ...formula.coating.flatMap(({ lines }) => lines)].map(({ ingredient }) => ingredient),
    ),
  );
  const isAll = ids.size === kitchen.variants.length;
  const trials = kitchen.trials.filter(({ variantId }) => ids.has(variantId));
  const trialIds = new Set(trials.map(({ trialId }) => trialId));
  const leftOut: string[] = [];
  const tell = (what: string): void => void leftOut.push(what);
  const shared = files.flatMap((entry): SharedKitchen["files"] => {
    const { file, text } = entry;
    if (text === null || !isKitchenFile(file)) return [];
    const [folder, name] = file.split("/");
    if (folder === "formulas" && name !== undefined) {
      const id = readFormula(text, file).formula?.id;
      if (id === undefined || !formulas.has(id)) return [];
      const hasComment = /\.csv$/i.test(file) && !keeps("notes") && COMMENT.test(text);
      if (hasComment) tell(`${file}: lines that begin with #`);
      return [{ file, content: hasComment ? text.replace(/^[ \t]*#.*(?:\n|$)/gm, "") : text }];
    }
    if (folder === "traces" && name !== undefined)
      return trialIds.has(name.replace(/\.csv$/, "")) ? [{ file, content: text }] : [];
    if (folder === "trials" && name !== undefined) return logToShare(entry, { trialIds, keeps, tell });
    if (file === "kitchen.json") return [{ file, content: text }];
    if (file === "pantry.csv" && !keeps("costs")) {
      if (text.trim() !== "") tell(`${file}: prices and stock`);
      return [];
    }
    const kept =
      file === "pantry.csv"
        ? rowsWhere(readPantry(text, file).rows, kitchen.pantry, ({ ingredientId }) => used.has(ingredientId))
        : file === "packs.csv"
          ? rowsWhere(readPacks(text, file).rows, kitchen.packs, ({ variantId }) => ids.has(variantId))
          : file === "variants.csv"
            ? rowsOfVariants(text, file, ids)
            : isTable(file) && !isAll
              ? rowsOfIngredients(text, file, used)
              : null;
    const isKept = (row: number): boolean => kept === null || kept.has(row);
    const isPrivate = (heading: string): boolean =>
      (wordsOf(heading) === "note" && !keeps("notes")) || (/^cost/.test(wordsOf(heading)) && !keeps("costs"));
    return [{ file, content: csvToShare({ file, text, isKept, isPrivate, comments: keeps("notes"), tell }) }];
  });
  const others = kitchen.variants.filter(({ variantId }) => !ids.has(variantId));
  if (others.length > 0) tell(`${counted(others.length, "other product")} with formulas and trials`);
  const photos = [...new Set(trials.flatMap((trial) => trial.photos))];
  if (photos.length > 0 && !keeps("photos")) tell(counted(photos.length, "photograph"));
  return {
    name: kitchen.name,
    files: shared,
    variantIds: variants.map(({ variantId }) => variantId),
    photos: keeps("photos") ? photos : [],
    leftOut,
  };
}

function isTable(file: string): boolean {
  return file === "ingredients.csv" || file === "labels.csv";
}

/** The rows of a file whose records, settled as the kitchen has them, are wanted. */
function rowsWhere<T>(
  rows: readonly number[],
  records: readonly T[] | undefined,
  isWanted: (record: T) => boolean,
): ReadonlySet<number> {
  return new Set(rows.filter((_, at) => records?.[at] !== undefined && isWanted(records[at])));
}

/** The rows of the variants that are shared, by whatever words the file names them. */
function rowsOfVariants(text: string, file: string, ids: ReadonlySet<string>): ReadonlySet<number> {
  const { records, rows } = readVariants(text, file);
  return new Set(rows.filter((_, at) => ids.has(records[at].variantId)));
}

/** The rows of the ingredients that are used. */
function rowsOfIngredients(text: string, file: string, used: ReadonlySet<string>): ReadonlySet<number> {
  return new Set([...readIngredients(text, file).placeOf].flatMap(([id, { row }]) => (used.has(id) ? [row] : [])));
}

const COMMENT = /^\s*#/m;

function chosen(kitchen: Kitchen, variantIds: readonly string[] | undefined): Kitchen["variants"] {
  if (variantIds === undefined) return kitchen.variants;
  const known = kitchen.variants.map(({ variantId }) => variantId);
  for (const id of variantIds)
    if (!known.includes(id)) {
      const nearest = nearestName(id, known);
      const hint = nearest === null ? "" : ` (nearest: ${nearest})`;
      fail("sharedKitchen: variantIds", `must be of the kitchen's variants, ${known.join(", ")}${hint}`, id);
    }
  return kitchen.variants.filter(({ variantId }) => variantIds.includes(variantId));
}

interface CsvToShareOptions {
  readonly file: string;
  readonly text: string;
  readonly isKept: (row: number) => boolean;
  readonly isPrivate: (heading: string) => boolean;
  /** whether lines that begin with # stay */
  readonly comments: boolean;
  readonly tell: (what: string) => void;
}

/** A CSV file without the rows, the cells and the comments that stay at home; as it was where none do. */
function csvToShare({ file, text, isKept, isPrivate, comments, tell }: CsvToShareOptions): string {
  const lines: { readonly cells: readonly string[]; readonly row: number }[] = [];
  eachCsvLine(text, { comment: "#", take: (cells, row) => lines.push({ cells, row }) });
  const [{ cells: headings } = { cells: [] }, ...rows] = lines;
  const kept = rows.filter(({ row }) => isKept(row));
  const gone = headings.filter(
    (heading, at) => isPrivate(heading) && rows.some(({ cells }) => (cells[at] ?? "") !== ""),
  );
  if (gone.length > 0) tell(`${file}: ${gone.map((heading) => `column ${heading}`).join(", ")}`);
  const hasComment = !comments && COMMENT.test(text);
  if (hasComment) tell(`${file}: lines that begin with #`);
  if (kept.length === rows.length && gone.length === 0 && !hasComment) return text;
  const shown = kept.map(({ cells }) => headings.map((heading, at) => (isPrivate(heading) ? "" : (cells[at] ?? ""))));
  return [headings, ...shown].map((cells) => `${csvLine(cells, ",")}\n`).join("");
}

interface LogToShareOptions {
  /** trials of the variants that are shared, whatever their cells call them */
  readonly trialIds: ReadonlySet<string>;
  readonly keeps: (thing: PrivateThing) => boolean;
  readonly tell: (what: string) => void;
}

/** A log with the trials of some variants, without what is private of them; none where nothing is left of it. */
function logToShare(entry: FolderFile, { trialIds, keeps, tell }: LogToShareOptions): SharedKitchen["files"] {
  const { file, text, bytes } = entry;
  if (text === null || text.trim() === "") return [];
  const log = readLogRows(bytes ?? text, file);
  const kept = log.records.filter(({ trialId }) => trialIds.has(trialId));
  if (kept.length === 0 && log.records.length > 0) return [];
  const bare = kept.map(
    (trial): Trial => ({
      ...trial,
      ...(keeps("notes") ? {} : { note: null, extra: {} }),
      ...(keeps("photos") ? {} : { photos: [] }),
    }),
  );
  const lost = [
    !keeps("notes") && kept.some(({ note }) => note !== null) ? "notes" : "",
    ...(keeps("notes")
      ? []
      : [...new Set(kept.flatMap(({ extra }) => Object.keys(extra)))].map((name) => `column ${name}`)),
  ].filter((what) => what !== "");
  if (lost.length > 0) tell(`${file}: ${lost.join(", ")}`);
  const hasComment = !keeps("notes") && logFormat(file) !== "xlsx" && /^\s*#/m.test(text);
  if (hasComment) tell(`${file}: lines that begin with #`);
  const photos = !keeps("photos") && kept.some((trial) => trial.photos.length > 0);
  if (kept.length === log.records.length && lost.length === 0 && !hasComment && !photos && log.aside.length === 0)
    return [{ file, content: bytes !== undefined && logFormat(file) === "xlsx" ? bytes : text }];
  const format = logFormat(file) ?? "csv";
  const without = new Set([...(keeps("notes") ? [] : ["note"]), ...(keeps("photos") ? [] : ["photos"])]);
  const heads = format === "jsonl" ? undefined : headingsOf(log, without, keeps("notes"));
  return [{ file, content: writeTrials(bare, { format, units: "metric", headings: heads, file }) }];
}

/** The log's own headings, in their order, without those of what stays at home. */
function headingsOf(
  { dialect, headings }: ReturnType<typeof readLogRows>,
  without: ReadonlySet<string>,
  keepsOwn: boolean,
): readonly string[] {
  const nameOf = new Map(
    LOG_FIELDS.map((field) => [
      headings[field.name as keyof typeof headings] ?? logHeading(field, "metric"),
      field.name,
    ]),
  );
  return dialect.headings.filter((heading) => {
    if (heading === "") return false;
    const name = nameOf.get(heading);
    return name === undefined ? keepsOwn : !without.has(name);
  });
}
