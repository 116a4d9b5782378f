import { ownValue } from "../../check/own-value";
import { findUnit, isUnit } from "../find-unit";

/** Units of headings that are no units of cells, and spellings that only headings have. */
const ENDING: Readonly<Record<string, string>> = {
  "%": "%",
  percent: "%",
  pct: "%",
  "min:s": "min:s",
  "min:sec": "min:s",
  "mm:ss": "min:s",
  "m:ss": "min:s",
  "d/m/y": "d/m/y",
  "dd/mm/yyyy": "d/m/y",
  "dd/mm/yy": "d/m/y",
  "dd.mm.yyyy": "d/m/y",
  "d.m.y": "d/m/y",
  dmy: "d/m/y",
  "m/d/y": "m/d/y",
  "mm/dd/yyyy": "m/d/y",
  "mm/dd/yy": "m/d/y",
  mdy: "m/d/y",
  "yyyy-mm-dd": "y-m-d",
  ymd: "y-m-d",
  iso: "y-m-d",
  "lb oz": "lb oz",
  "lb & oz": "lb oz",
  "lb and oz": "lb oz",
  "lb/oz": "lb oz",
  "lb, oz": "lb oz",
  "lbs oz": "lb oz",
  k: "K",
  degc: "°C",
  degf: "°F",
  floz: "fl oz",
  "º c": "°C",
  "º f": "°F",
  ºc: "°C",
  ºf: "°F",
  "° c": "°C",
  "° f": "°F",
  "degrees c": "°C",
  "degrees f": "°F",
};

/** A unit as headings and cells spell it, in this library's spelling; `null` for anything else. */
export function headingUnit(text: string): string | null {
  const plain = text.trim().toLowerCase();
  if (plain.length > 24) return null;
  const known = ownValue(ENDING, plain);
  if (known !== undefined) return known;
  return isUnit(plain) ? findUnit(plain, "headingUnit: text").name : null;
}
