/**
 * Two quantities as a range, the unit said once where both have the same: `"5/16 to 7/16 in"`, `"185 to 200 °C"`.
 *
 * @param range from and to
 * @param textOf writes one of them, such as `ownThicknessText` of a kitchen's units
 *
 * @example
 * rangeText([8, 11], (mm) => ownThicknessText(mm, "us")); // → "5/16 to 7/16 in"
 * rangeText([400, 1190], (g) => ownMassText(g, "us")); // → "14.1 oz to 2 lb 10 oz"
 * rangeText([8, 11], (mm) => thicknessText(mm, "us")); // → "5/16 in (8.0 mm) to 7/16 in (11.0 mm)"
 */
export function rangeText(range: readonly [number, number], textOf: (value: number) => string): string {
  const [from, to] = [textOf(range[0]), textOf(range[1])];
  if (from === to) return to;
  const unit = / [^\s\d)]+$/.exec(to)?.[0];
  const once = unit !== undefined && from.endsWith(unit) && !/ lb /.test(`${from} ${to}`);
  return `${once ? from.slice(0, -unit.length) : from} to ${to}`;
}
