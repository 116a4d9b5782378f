import type { Notice } from "../../../check/notice";
import type { Slip } from "../../../check/slip";

/** Where a value of a formula stands in its file. */
export interface FormulaPlace {
  /** line of a JSON file, row of a table */
  readonly row: number;
  /** `"mix.2.amount"`, `"column amount"`; `null` for the whole */
  readonly at: string | null;
  /** what stands there, as typed; left out where it is the value itself */
  readonly given?: string;
}

/** A formula's file taken apart, before it is known whether it is one. */
export interface FormulaSource {
  /** plain data in the shape of a formula; undefined where the file cannot be taken apart */
  readonly data: unknown;
  readonly slips: readonly Slip[];
  readonly notices: readonly Notice[];
  /** where the value at a path stands; of one that is missing, what should hold it */
  readonly placeOf: (path: string) => FormulaPlace;
}
