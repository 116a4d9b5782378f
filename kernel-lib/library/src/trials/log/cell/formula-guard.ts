/** What a spreadsheet program takes for a formula: it may fetch and send when the file is opened. */
const FORMULA = /^[=+\-@\t]/;
const GUARDED = /^'+[=+\-@\t]/;
/** A number, a mark for "not known" or a date is no formula. */
const HARMLESS = /^[+-]?\s*[\d.,½¼¾⅓⅔⅛⅜⅝⅞][\s\d.,/:%a-z°"”″]*$|^[-–—]+$/i;

/** A text as it is written to a file that spreadsheet programs open: one that they would take for a formula begins with `'`. */
export function guarded(text: string): string {
  return FORMULA.test(text) || GUARDED.test(text) ? `'${text}` : text;
}

/** The text that `guarded` wrote. */
export function unguarded(text: string): string {
  return GUARDED.test(text) ? text.slice(1) : text;
}

/** Whether a cell would be taken for a formula by a spreadsheet program, and is none of the log's. */
export function isLiveFormula(cell: string): boolean {
  return FORMULA.test(cell) && !HARMLESS.test(cell);
}
