import type { PullDownOptions } from "../../heat/freezing/freezer-load";

/** How long the steps of the hands take (min). */
export interface DayMinutes {
  /** one mix, whatever its size */
  readonly mix: number;
  /** one pan spread or filled */
  readonly spread: number;
  /** one slab cut */
  readonly cut: number;
  /** one piece coated */
  readonly coatPiece: number;
  /** an oven or a basket filled */
  readonly fillOven: number;
  /** and emptied */
  readonly emptyOven: number;
  /** an oven comes back to its setpoint between two loads */
  readonly recover: number;
  /** the pieces of one pan packed */
  readonly pack: number;
}

/** What a kitchen has for a batch day, as its `day.csv` says or as a call gives it; what is left out is as in `USUAL_DAY`. */
export interface DayPlaces {
  /** when hands are there: `"8:00"`, `"5:00 pm"` */
  readonly opens?: string;
  readonly closes?: string;
  /** when they are away */
  readonly breaks?: readonly { readonly from: string; readonly until: string }[];
  /** people who work at the same time */
  readonly hands?: number;
  /** freezer air (°C) */
  readonly freezerC?: number;
  readonly airflow?: "still" | "fan";
  /** pans or trays that stand side by side on the freezer's shelves; follows from `shelf` and `shelves` where they are given */
  readonly freezerPlaces?: number;
  /** inside of one shelf of the freezer (mm) */
  readonly shelf?: { readonly lengthMm: number; readonly widthMm: number };
  /** how many such shelves; 1 unless given */
  readonly shelves?: number;
  /** clear height above a shelf (mm): pans stand above each other as far as it lets them */
  readonly shelfClearMm?: number;
  /** pans that may stand above each other on one place, with a gap: it freezes more slowly, and is done only where the day gets shorter */
  readonly stackUpTo?: number;
  /** clear height between stacked pans (mm) */
  readonly gapMm?: number;
  /** room in which slabs temper and pieces cool (°C) */
  readonly roomC?: number;
  /** how many of an appliance, by its id; as `appliances.csv` says unless given */
  readonly appliances?: Readonly<Record<string, number>>;
  /** what the freezer takes away beside its own losses (W) */
  readonly freezerRemovesW?: number;
  /** a pull-down that was logged, in place of that */
  readonly pullDown?: PullDownOptions;
  /** food that lies in the freezer already (kg) */
  readonly storedKg?: number;
  readonly minutes?: Partial<DayMinutes>;
}
