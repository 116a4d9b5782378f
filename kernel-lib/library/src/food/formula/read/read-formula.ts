import { clipped } from "../../../check/check";
import { expectedOf } from "../../../check/expected-of";
import { freezeDeep } from "../../../check/freeze-deep";
import { kebab } from "../../../check/kebab";
import { nearestName } from "../../../check/nearest-name";
import type { Notice } from "../../../check/notice";
import type { Slip } from "../../../check/slip";
import { FORMULA_NAMES, type Formula, formulaSchema } from "../formula";
import type { FormulaPlace, FormulaSource } from "./formula-source";
import { jsonFormula } from "./json-formula";
import { tableFormula } from "./table-formula";

/** A formula's file, as far as it can be read. */
export interface ReadFormula {
  readonly file: string;
  /** `null` when what it says is no formula; slips of the pen alone, such as a comma too many, leave one to be looked at */
  readonly formula: Formula | null;
  /** its id, with a slip elsewhere too; `null` when it is none */
  readonly id: string | null;
  readonly slips: readonly Slip[];
  /** how it was read, where that is not plain, and what was taken for what it does not say */
  readonly notices: readonly Notice[];
  /** where the value at a path such as `"mix.2.amount"` stands; of one that is missing, what should hold it */
  readonly placeOf: (path: string) => FormulaPlace;
}

/** The longest file of a formula: our judgement, 200 lines of long names. */
const LONGEST_TEXT = 100_000;

/** What is said of what a formula leaves out, where it matters. */
const DEFAULTS: readonly (readonly [field: string, says: string])[] = [
  ["airFraction", "says nothing of air in the mix (airFraction, in a table air_percent); none was taken"],
  ["piecesPerServing", "says nothing of piecesPerServing (in a table pieces_per_serving); 1 was taken"],
];

/**
 * Reads one formula, from JSON or, where the file's name ends in `.csv`, from a table, and lists every slip with its place.
 * What may be left out is filled in; the id is the file's name unless it is given.
 */
export function readFormula(text: string, file: string): ReadFormula {
  if (text.length > LONGEST_TEXT) {
    const expected = `at most ${LONGEST_TEXT} characters`;
    const slip: Slip = { file, row: null, at: null, expected, got: String(text.length), nearest: null };
    return { file, formula: null, id: null, slips: [slip], notices: [], placeOf: () => ({ row: 1, at: null }) };
  }
  const source = /\.csv$/i.test(file) ? tableFormula(text, file) : jsonFormula(text, file);
  return checked(source, file);
}

function checked(source: FormulaSource, file: string): ReadFormula {
  const { placeOf } = source;
  const notices: Notice[] = [...source.notices];
  const data = withId(source.data, file);
  const typedId = valueAt(source.data, ["id"]);
  const id = data === undefined ? idOf(file) : valueAt(data, ["id"]);
  if (typeof typedId === "string" && typedId !== id && typeof id === "string")
    notices.push({
      ...noticeAt(file, placeOf("id")),
      given: clipped(JSON.stringify(typedId)),
      taken: id,
      says: "was taken as an id, which has lower-case words joined by hyphens",
    });
  if (data === undefined) return { file, formula: null, id: idOf(file), slips: source.slips, notices, placeOf };

  const slips: Slip[] = [];
  const slip = (path: string, expected: string, nearest: string | null = null, isGiven = true): void => {
    const { row, at, given } = placeOf(path);
    const value = valueAt(data, path === "" ? [] : path.split("."));
    const shown = typeof value === "object" && value !== null ? null : clipped(JSON.stringify(value) ?? "none");
    const got = !isGiven ? null : given === undefined ? shown : clipped(JSON.stringify(given));
    slips.push({ file, row, at, expected, got, nearest });
  };
  const parsed = formulaSchema.safeParse(data);
  const issues = parsed.error?.issues ?? [];
  const renamed = new Set<string>();
  for (const issue of issues) {
    if (issue.code !== "unrecognized_keys") continue;
    const holder = issue.path.map(String);
    for (const key of issue.keys) {
      const free = namesIn(holder).filter((name) => valueAt(data, [...holder, name]) === undefined);
      const nearest = nearestName(key, free);
      const pathTo = (name: string): string => [...holder, name].join(".");
      if (nearest !== null) renamed.add(pathTo(nearest));
      slip(pathTo(key), "a name that a formula has", nearest === null ? null : pathTo(nearest), false);
    }
  }
  for (const { code, path, message } of issues)
    if (code !== "unrecognized_keys" && !renamed.has(path.join("."))) slip(path.join("."), expectedOf(message));
  for (const [at, layer] of parsed.data?.coating.entries() ?? [])
    if (layer.pickupBasis === "finished" && layer.pickupPercent >= 100)
      slip(`coating.${at}.pickupPercent`, "below 100 % of the finished weight");
  for (const { path, expected, nearest } of parsed.data === undefined ? [] : potFaults(parsed.data))
    slip(path, expected, nearest);
  const formula = slips.length === 0 && parsed.data !== undefined ? freezeDeep(parsed.data) : null;
  for (const [field, says] of formula === null ? [] : DEFAULTS)
    if (valueAt(data, [field]) === undefined)
      notices.push({ file, row: 1, at: null, kind: "read", given: null, taken: null, says });
  return {
    file,
    formula,
    id: typeof id === "string" ? id : null,
    slips: [...source.slips, ...slips],
    notices,
    placeOf,
  };
}

function noticeAt(file: string, { row, at }: FormulaPlace): Pick<Notice, "file" | "row" | "at" | "kind"> {
  return { file, row, at, kind: "read" };
}

/** The same with its id: as it stands, in the form of an id where words can be one, or the file's name. */
function withId(data: unknown, file: string): unknown {
  if (typeof data !== "object" || data === null || Array.isArray(data)) return data;
  const given: unknown = (data as Record<string, unknown>).id;
  if (given === undefined) {
    const id = idOf(file);
    return id === null ? data : { id, ...data };
  }
  return typeof given === "string" ? { ...data, id: kebab(given) ?? given } : data;
}

/** The id that a file's name makes; `null` where it makes none. */
function idOf(file: string): string | null {
  return kebab(file.slice(file.lastIndexOf("/") + 1).replace(/\.[^.]*$/, ""));
}

/** The names that what stands at a path has. */
function namesIn(holder: readonly string[]): readonly string[] {
  const list = holder.findLast((part) => !/^\d+$/.test(part)) ?? "";
  return list in FORMULA_NAMES ? FORMULA_NAMES[list as keyof typeof FORMULA_NAMES] : [];
}

/** Pots that lines name and `cookedG` does not, and the other way round. */
function potFaults({ mix, cookedG }: Formula): readonly { path: string; expected: string; nearest: string | null }[] {
  const weighed = typeof cookedG === "object" ? Object.keys(cookedG) : [];
  const used = new Set(mix.flatMap(({ pot }) => pot ?? []));
  return [
    ...mix.flatMap(({ pot }, at) =>
      pot === undefined || weighed.includes(pot)
        ? []
        : [
            {
              path: `mix.${at}.pot`,
              expected: "a pot whose mass stands in cookedG by its name",
              nearest: nearestName(pot, weighed),
            },
          ],
    ),
    ...weighed
      .filter((pot) => !used.has(pot))
      .map((pot) => ({
        path: "cookedG",
        expected: `pots that lines of the mix are in ("pot": ${JSON.stringify(pot)} stands on none)`,
        nearest: nearestName(pot, [...used]),
      })),
  ];
}

/** What stands at a path of plain data; undefined when nothing does. */
function valueAt(json: unknown, path: readonly string[]): unknown {
  let value = json;
  for (const name of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, name)) return undefined;
    value = (value as Record<string, unknown>)[name];
  }
  return value;
}
