import { type JsonFault, type JsonPlaces, jsonPlaces } from "./json-places";

/** A JSON text with its slips of the pen mended, so that the rest of it can be looked at. */
export interface MendedJson extends JsonPlaces {
  readonly text: string;
  /** what was mended, from top to bottom */
  readonly slips: readonly Omit<JsonFault, "at">[];
}

/** After how many slips a text is no more mended: our judgement. */
const MOST_SLIPS = 20;

/**
 * Mends in a JSON text what can be meant in one way only: a comma too many or too few, a bracket that was not closed, a
 * colon that is missing, a name without double quotes. What is left is the `fault`.
 */
export function mendJson(text: string): MendedJson {
  const slips: Omit<JsonFault, "at">[] = [];
  let mended = text;
  let places = jsonPlaces(mended);
  while (places.fault !== null && slips.length < MOST_SLIPS) {
    const change = changeFor(mended, places.fault);
    if (change === null) break;
    const { from, to, put, expected } = change;
    const line = mended.slice(0, from).split("\n").length;
    slips.push({ line: put === "" ? line : places.fault.line, expected, got: places.fault.got });
    mended = mended.slice(0, from) + put + mended.slice(to);
    places = jsonPlaces(mended);
  }
  return { ...places, text: mended, slips };
}

interface Change {
  readonly from: number;
  readonly to: number;
  readonly put: string;
  readonly expected: string;
}

function changeFor(text: string, { at, expected }: JsonFault): Change | null {
  const next = text[at] ?? "";
  const before = text.slice(0, at).trimEnd();
  const insert = (put: string, says: string): Change => ({ from: at, to: at, put, expected: says });
  if (before.endsWith(",") && /^[\]},]?$/.test(next)) {
    const closing = next === "" ? "no comma at the end" : `no comma before the closing "${next}"`;
    const says = next === "," ? "one comma, not two" : closing;
    return { from: before.length - 1, to: before.length, put: "", expected: says };
  }
  const closing = /closing "([\]}])"/.exec(expected)?.[1];
  if (closing !== undefined) {
    if (next === "" || (/[\]}]/.test(next) && next !== closing))
      return insert(closing, `a closing "${closing}" before it`);
    if (/["{[\d-]/.test(next)) return insert(",", 'a comma "," before it');
  }
  if (expected.startsWith("a colon") && /["{[\d-]/.test(next)) return insert(":", 'a colon ":" before it');
  if (expected === "a name in double quotes") {
    const name = /^'([^'"\\\n]{1,40})'|^([A-Za-z_]\w{0,39})(?=\s{0,20}:)/.exec(text.slice(at, at + 80));
    if (name !== null)
      return { from: at, to: at + name[0].length, put: `"${name[1] ?? name[2]}"`, expected: "a name in double quotes" };
  }
  return null;
}
