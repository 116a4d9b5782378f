import { clipped } from "../../check/check";
import { expectedOf } from "../../check/expected-of";
import { freezeDeep } from "../../check/freeze-deep";
import { jsonPlaces } from "../../check/json-places";
import { nearestName } from "../../check/nearest-name";
import type { Slip } from "../../check/slip";
import { type Formula, formulaSchema } from "./formula";

/** A formula's file, as far as it can be read. */
export interface ReadFormula {
  readonly file: string;
  /** `null` when the file has a slip */
  readonly formula: Formula | null;
  /** its id, with a slip elsewhere too; `null` when even that cannot be read */
  readonly id: string | null;
  readonly slips: readonly Slip[];
  /** line of a value by its path, such as `"mix.2.amount"`; of one that is missing, that of what should hold it */
  readonly lineOf: (path: string) => number;
}

/** The longest file of a formula: our judgement, 200 lines of long names. */
const LONGEST_TEXT = 100_000;

/** Reads one formula from JSON text and lists every slip, with its line and the path to it. */
export function readFormula(jsonText: string, file: string): ReadFormula {
  if (jsonText.length > LONGEST_TEXT) {
    const expected = `at most ${LONGEST_TEXT} characters`;
    const slip: Slip = { file, row: null, at: null, expected, got: String(jsonText.length), nearest: null };
    return { file, formula: null, id: null, slips: [slip], lineOf: () => 1 };
  }
  const text = jsonText.replace(/^\ufeff/, "");
  const places = jsonPlaces(text);
  const lineOf = (path: string): number =>
    places.lineOf.get(path) ?? (path === "" ? 1 : lineOf(path.slice(0, Math.max(0, path.lastIndexOf(".")))));
  if (places.fault !== null) {
    const { line, expected, got } = places.fault;
    const slip: Slip = { file, row: line, at: null, expected: `JSON: ${expected}`, got, nearest: null };
    return { file, formula: null, id: null, slips: [slip], lineOf };
  }
  const json: unknown = JSON.parse(text);
  const slips: Slip[] = [];
  const slip = (path: string, expected: string, got: string | null, nearest: string | null = null): void => {
    slips.push({ file, row: lineOf(path), at: path === "" ? null : path, expected, got, nearest });
  };
  const checked = formulaSchema.safeParse(json);
  const given = (path: string): string | null => {
    const value = path === "" ? json : valueAt(json, path.split("."));
    if (value === undefined) return "none";
    return typeof value === "object" && value !== null ? null : clipped(JSON.stringify(value));
  };
  const issues = checked.error?.issues ?? [];
  const strange = issues.flatMap((issue) =>
    issue.code === "unrecognized_keys" ? issue.keys.map((key) => [...issue.path, key].map(String).join(".")) : [],
  );
  const missing = issues
    .filter(({ code, path }) => code !== "unrecognized_keys" && given(path.join(".")) === "none")
    .map(({ path }) => path.join("."));
  const renamed = new Set<string>();
  for (const path of strange) {
    const nearest = nearestName(path, missing);
    if (nearest !== null) renamed.add(nearest);
    slip(path, "a name that a formula has", null, nearest);
  }
  for (const { code, path, message } of issues) {
    const at = path.join(".");
    if (code !== "unrecognized_keys" && !renamed.has(at)) slip(at, expectedOf(message), given(at));
  }
  for (const [at, layer] of checked.data?.coating.entries() ?? [])
    if (layer.pickupBasis === "finished" && layer.pickupPercent >= 100)
      slip(`coating.${at}.pickupPercent`, "below 100 % of the finished weight", String(layer.pickupPercent));
  for (const { path, expected, nearest } of checked.data === undefined ? [] : potFaults(checked.data))
    slip(path, expected, given(path), nearest);
  const id = valueAt(json, ["id"]);
  return {
    file,
    formula: slips.length === 0 && checked.data !== undefined ? freezeDeep(checked.data) : null,
    id: typeof id === "string" ? id : null,
    slips,
    lineOf,
  };
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
