import type { DecimalSign } from "../../../units/typed/decimal-sign";

/** How several values stand in one cell. */
export interface PartsRules {
  /** whether numbers of the cell may be fractions, so that a bare `/` parts nothing */
  readonly hasFractions: boolean;
  readonly sign: DecimalSign | null;
}

/**
 * The values of a cell that holds several: parted by semicolons, line ends, ` / `, or `/` where no fraction is meant, `|`,
 * or a comma with a space behind it where commas are not decimal signs. Empty ones are left out.
 */
export function partsOf(cell: string, { hasFractions, sign }: PartsRules): readonly string[] {
  if (/^[\d.;-]*$/.test(cell)) return cell.split(";").filter((part) => part !== "");
  let parting = hasFractions ? /;|\n|\r| \/ |\|/ : /[;\n\r/|]/;
  if (!parting.test(cell) && sign !== "," && /,\s/.test(cell)) parting = /,\s/;
  return cell
    .split(parting)
    .map((part) => part.trim())
    .filter((part) => part !== "");
}
