import { clipped } from "../../../check/check";
import { eachCsvLine } from "../../../check/each-csv-line";
import { nearestName } from "../../../check/nearest-name";
import type { Slip } from "../../../check/slip";
import { headingUnit } from "../../../units/columns/heading-unit";
import { wordsOf } from "../../../units/columns/words-of";
import { readNumber } from "../../../units/typed/read-number";
import { LAYER_KINDS } from "../formula";
import { typedMassG } from "../typed-mass";
import type { FormulaPlace, FormulaSource } from "./formula-source";

/** The lines above a formula's table, by their first cell, and the field that they fill. */
const FIELDS: Readonly<Record<string, string>> = {
  id: "id",
  name: "name",
  origin: "origin",
  food_class: "foodClass",
  state: "state",
  air_percent: "airFraction",
  total: "mixG",
  cooked: "cookedG",
  pieces_per_serving: "piecesPerServing",
  note: "note",
};
/** The columns of its table; the first two it must have. */
const COLUMNS: Readonly<Record<string, string>> = {
  ingredient: "ingredient",
  amount: "amount",
  part: "part",
  pickup_percent: "pickupPercent",
  pickup_basis: "pickupBasis",
  pickup_se_percent: "pickupSePercent",
  at_surface_cm2_per_g: "atSurfaceCm2PerG",
  pot: "pot",
};
/** Other words for them. */
const ALSO: Readonly<Record<string, string>> = {
  air: "air_percent",
  serving: "pieces_per_serving",
  notes: "note",
  class: "food_class",
  pickup: "pickup_percent",
  layer: "part",
  ingredients: "ingredient",
  amounts: "amount",
  quantity: "amount",
};
const PARTS: readonly string[] = ["mix", ...LAYER_KINDS];

interface Line {
  readonly row: number;
  readonly cells: readonly string[];
}

/**
 * Takes a formula in a table apart: lines of a field and its value, then the headings `part,ingredient,amount` and, where
 * there is a coating, `pickup_percent`, then a line an ingredient. A part that is not given is that of the line above, or
 * the mix. Lines of one coating layer stand together; its pickup stands on any of them, and for a layer of one ingredient
 * may be its amount: `spray oil,oil-canola,2 %`.
 */
export function tableFormula(text: string, file: string): FormulaSource {
  const slips: Slip[] = [];
  const places = new Map<string, FormulaPlace>();
  const slip = (
    row: number | null,
    at: string | null,
    expected: string,
    got: string | null,
    nearest?: string | null,
  ): void => {
    slips.push({
      file,
      row,
      at,
      expected,
      got: got === null ? null : clipped(JSON.stringify(got)),
      nearest: nearest ?? null,
    });
  };
  const lines: Line[] = [];
  const take = (cells: readonly string[], row: number): void => {
    if (cells.some((cell) => cell !== "")) lines.push({ row, cells });
  };
  const stop = eachCsvLine(text, { comment: "#", take, delimiter: delimiterOf(text) });
  if (stop !== null) slip(stop.row, null, stop.expected, null);
  const top = lines.findIndex(({ cells }) => cells.some((cell) => nameOf(cell, COLUMNS) === "ingredient"));
  const data: Record<string, unknown> = {};
  const put = (path: string, place: FormulaPlace): void => {
    places.set(path, place);
  };

  for (const { row, cells } of top < 0 ? lines : lines.slice(0, top)) {
    const [field, ...rest] = cells;
    const values = rest.filter((cell) => cell !== "");
    const name = nameOf(field, FIELDS);
    if (name === null) {
      if (top >= 0)
        slip(row, null, "a field above the headings of the table", field, nearestName(field, Object.keys(FIELDS)));
      continue;
    }
    const path = FIELDS[name];
    if (values.length === 0) continue;
    if (data[path] !== undefined && path !== "cookedG") slip(row, name, "each field once", field);
    put(path, { row, at: name, given: values.join(", ") });
    fillField(data, path, values);
  }
  const placeOf = (path: string): FormulaPlace =>
    places.get(path) ??
    (path === ""
      ? { row: lines[Math.max(top, 0)]?.row ?? 1, at: null }
      : placeOf(path.slice(0, Math.max(0, path.lastIndexOf(".")))));
  if (top < 0) {
    slip(
      lines[0]?.row ?? 1,
      null,
      "a row of headings, part,ingredient,amount, and below it a line an ingredient",
      null,
    );
    return { data: undefined, slips, notices: [], placeOf };
  }

  const columnAt = new Map<string, { readonly at: number; readonly heading: string; readonly unit: string | null }>();
  for (const [at, heading] of lines[top].cells.entries()) {
    if (heading === "") continue;
    const { name, unit } = columnOf(heading);
    if (name === null)
      slip(
        lines[top].row,
        `column ${clipped(heading)}`,
        `one of ${Object.keys(COLUMNS).join(", ")}`,
        null,
        nearestName(heading, Object.keys(COLUMNS)),
      );
    else if (columnAt.has(name)) slip(lines[top].row, `column ${clipped(heading)}`, "each heading once", "it twice");
    else columnAt.set(name, { at, heading, unit });
  }
  const mix: Record<string, unknown>[] = [];
  const coating: (Record<string, unknown> & { lines: Record<string, unknown>[] })[] = [];
  let part = "mix";
  let whole = stop === null;
  for (const { row, cells } of lines.slice(top + 1)) {
    const width = lines[top].cells.length;
    if (cells.slice(width).some((cell) => cell !== "")) {
      slip(row, null, `${width} cells; a text with a comma in it stands in double quotes`, String(cells.length));
      whole = false;
      continue;
    }
    const cell = (name: string): string => cells[columnAt.get(name)?.at ?? -1] ?? "";
    const place = (name: string): FormulaPlace => ({
      row,
      at: `column ${columnAt.get(name)?.heading ?? name}`,
      given: cell(name),
    });
    const typedPart = cell("part");
    const known = PARTS.find((one) => wordsOf(one) === wordsOf(typedPart));
    if (typedPart !== "" && known === undefined) {
      slip(
        row,
        `column ${columnAt.get("part")?.heading}`,
        `one of ${PARTS.join(", ")}, or blank for that of the line above`,
        typedPart,
        nearestName(typedPart, PARTS),
      );
      whole = false;
      continue;
    }
    const isNew = known !== undefined && known !== part;
    part = known ?? part;
    const amount = cell("amount");
    const unit = columnAt.get("amount")?.unit ?? null;
    const line: Record<string, unknown> = {
      ingredient: cell("ingredient") || undefined,
      amount:
        amount === ""
          ? undefined
          : unit !== null && /^[\d.,/ ½¼¾⅓⅔⅛⅜⅝⅞-]+$/.test(amount)
            ? `${amount} ${unit}`
            : amount,
    };
    if (part === "mix") {
      const path = `mix.${mix.length}`;
      for (const name of ["ingredient", "amount", "pot"]) put(`${path}.${name}`, place(name));
      put(path, { row, at: null });
      mix.push(cell("pot") === "" ? line : { ...line, pot: cell("pot") });
      continue;
    }
    if (coating.length === 0 || isNew) {
      put(`coating.${coating.length}`, { row, at: null });
      coating.push({ layer: part, lines: [] });
    }
    const layer = coating[coating.length - 1];
    const path = `coating.${coating.length - 1}`;
    const linePath = `${path}.lines.${layer.lines.length}`;
    for (const name of ["ingredient", "amount"]) put(`${linePath}.${name}`, place(name));
    layer.lines.push(line);
    for (const name of ["pickup_percent", "pickup_basis", "pickup_se_percent", "at_surface_cm2_per_g"]) {
      const typed = cell(name);
      const field = COLUMNS[name];
      if (typed === "") continue;
      if (layer[field] !== undefined)
        slip(row, `column ${columnAt.get(name)?.heading}`, "one value a layer, on one of its lines", typed);
      layer[field] = name === "pickup_basis" ? typed.toLowerCase() : numberIn(typed);
      put(`${path}.${field}`, place(name));
    }
    if (!places.has(`${path}.pickupPercent`)) put(`${path}.pickupPercent`, { ...place("pickup_percent"), row });
  }
  for (const [at, layer] of coating.entries())
    asPickup(layer, (field) =>
      put(`coating.${at}.${field}`, places.get(`coating.${at}.lines.0.amount`) as FormulaPlace),
    );
  if (!whole) return { data: undefined, slips, notices: [], placeOf };
  return { data: { ...data, mix, ...(coating.length > 0 && { coating }) }, slips, notices: [], placeOf };
}

/** Of a layer of one ingredient the amount says nothing but the pickup. */
function asPickup(
  layer: Record<string, unknown> & { lines: Record<string, unknown>[] },
  moved: (field: string) => void,
): void {
  const [line, ...others] = layer.lines;
  if (others.length > 0) return;
  const percent = /^([\d.]+) ?%$/.exec(String(line.amount ?? ""));
  if (percent !== null && layer.pickupPercent === undefined) {
    layer.pickupPercent = Number(percent[1]);
    line.amount = undefined;
    moved("pickupPercent");
  }
  line.amount ??= "100 g";
}

function fillField(data: Record<string, unknown>, path: string, values: readonly string[]): void {
  const [first, second] = values;
  if (path === "airFraction") {
    const percent = numberIn(first);
    data[path] = typeof percent === "number" ? percent / 100 : percent;
  } else if (path === "piecesPerServing") data[path] = numberIn(first);
  else if (path === "mixG") data[path] = massIn(first);
  else if (path === "cookedG") {
    if (second === undefined) data[path] = /^[\d.]+$/.test(first) ? Number(first) : first;
    else data[path] = { ...(typeof data[path] === "object" ? data[path] : {}), [first]: second };
  } else if (path === "state") data[path] = first.toLowerCase();
  else if (path === "foodClass")
    data[path] = first.toLowerCase().replace(/[\s_-]+([a-z])/g, (_, letter) => letter.toUpperCase());
  else data[path] = values.join(", ");
}

/** A number, with its `%` or without; the text where it is none. */
function numberIn(typed: string): number | string {
  const read = readNumber(typed.replace(/ ?%$/, ""), { sign: ".", kind: null, base: null, unit: null });
  return "expected" in read ? typed : read.value;
}

/** Grams; the text where it is no mass. */
function massIn(typed: string): number | string {
  try {
    return typedMassG(/^[\d.]+$/.test(typed) ? Number(typed) : typed);
  } catch (error) {
    if (error instanceof RangeError) return typed;
    throw error;
  }
}

/** A comma, unless the first line that has one of them has a semicolon or a tab. */
function delimiterOf(text: string): string {
  return /[,;\t]/.exec(text.replace(/^#.*$/gm, ""))?.[0] ?? ",";
}

function nameOf(cell: string, names: Readonly<Record<string, string>>): string | null {
  if (cell.length > 60) return null;
  const words = wordsOf(cell);
  const name = Object.hasOwn(ALSO, words) ? ALSO[words] : words;
  return Object.hasOwn(names, name) ? name : null;
}

/** The column that a heading names, and the unit of its amounts. */
function columnOf(heading: string): { readonly name: string | null; readonly unit: string | null } {
  const whole = nameOf(heading, COLUMNS);
  if (whole !== null) return { name: whole, unit: null };
  const [name, ending] = wordsOf(heading).split(/_(?=[^_]*$)/);
  const unit = headingUnit(ending ?? "");
  return nameOf(name, COLUMNS) === "amount" && unit !== null ? { name: "amount", unit } : { name: null, unit: null };
}
