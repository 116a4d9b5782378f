import { numberOf } from "../../check/csv";
import { convertUnit } from "../convert-unit";
import { readArea } from "../typed/read-area";
import { type NumberRules, readNumber } from "../typed/read-number";
import { isUnknown } from "../typed/unknown-mark";
import { KITCHEN_UNIT, type UnitKind } from "../unit-table";
import type { ColumnPlan } from "./column-plan";

/** A cell as read: `null` where it says that nothing is known; or what was expected in its place. */
export type ReadCell =
  | {
      readonly value: string | number | null;
      /** what is to be said of it; `null` when it was typed as it is taken */
      readonly says: string | null;
      readonly taken: string | null;
    }
  | { readonly expected: string };

/** Reads a cell that is not empty as its column's plan says; `unit` is that of the heading. */
export function readCell(cell: string, plan: ColumnPlan, unit: string | null): ReadCell {
  const plain = (value: string | number): ReadCell => ({ value, says: null, taken: null });
  if (plan.holds === "id") return ID.test(cell) ? plain(cell) : asId(cell);
  if (plan.among !== undefined) return oneOf(cell, plan.among);
  if (plan.holds === "text") return plain(cell);
  if (isUnknown(cell)) return { value: null, says: "says that it is not known, and was kept so", taken: null };
  const number = numberOf(cell);
  if (number !== null && plan.holds === "number") return plain(number);
  if (number !== null && unit !== null)
    return plain(convertUnit({ value: number, from: unit, to: KITCHEN_UNIT[plan.holds as UnitKind] }));
  if (plan.holds === "number") return readNumber(cell, { sign: ".", kind: null, base: null, unit: null });
  const rules: NumberRules = { sign: ".", kind: plan.holds, base: KITCHEN_UNIT[plan.holds], unit };
  return plan.holds === "area" ? readArea(cell, rules) : readNumber(cell, rules);
}

const ID = /^[A-Za-z0-9][A-Za-z0-9._-]*$/;

/** Words as one id, parted by hyphens; as they stand where no id is in them. */
function asId(cell: string): ReadCell {
  const id = cell.replace(/[^A-Za-z0-9._]+/g, "-").replace(/^[-._]+|-+$/g, "");
  if (!ID.test(id) || /[^\sA-Za-z0-9._'’&,-]/.test(cell)) return { value: cell, says: null, taken: null };
  return { value: id, says: "was taken as an id, which has letters, digits, points and dashes alone", taken: id };
}

/** The word of a few that is meant; as it stands where none is. */
function oneOf(cell: string, among: Readonly<Record<string, readonly string[]>>): ReadCell {
  const asked = folded(cell);
  const found = Object.entries(among).find(([word, also]) => [word, ...also].some((one) => folded(one) === asked));
  if (found === undefined) return { value: cell, says: null, taken: null };
  const [word] = found;
  const isSame = folded(word) === asked;
  return { value: word, says: isSame ? null : `was taken as ${word}`, taken: null };
}

function folded(text: string): string {
  return text.toLowerCase().replace(/[\s_-]+/g, "");
}
