/** What parts whole from decimal places in a file's numbers; `null` when nothing tells. */
export type DecimalSign = "." | ",";

/** A number with one sign in it, which is not where thousands are parted. */
const TOKEN = /(?<![\d.,])(\d*)([.,])(\d+)(?![\d.,])/g;

/**
 * The decimal sign of a file's numbers, from those that can be read one way only: `8.1` and `0,378` tell, `1.150` and
 * `1,150` may be thousands. Where both signs are used, the one of at least nine in ten.
 *
 * @param lines rows of cells
 * @param columns places of those that hold numbers
 * @returns `null` when no number tells, or both signs are used alike
 */
export function decimalSign(
  lines: readonly { readonly cells: readonly string[] }[],
  columns: readonly number[],
): DecimalSign | null {
  let points = 0;
  let commas = 0;
  for (const { cells } of lines)
    for (const column of columns) {
      if (column >= cells.length) continue;
      const cell = cells[column];
      if (cell.length > LONGEST) continue;
      const hasComma = cell.includes(",");
      if (!hasComma && !cell.includes(".")) continue;
      // points that were seen a thousand times need no second look
      if (!hasComma && points > 1000) {
        points++;
        continue;
      }
      for (const [, whole, sign, places] of cell.matchAll(TOKEN)) {
        if (places.length === 3 && whole.length > 0 && whole.length <= 3 && whole[0] !== "0") continue;
        if (sign === ".") points++;
        else commas++;
      }
    }
  if (points + commas === 0) return null;
  if (points >= 9 * commas) return ".";
  return commas >= 9 * points ? "," : null;
}

/** The longest cell that is asked: our judgement. */
const LONGEST = 200;
