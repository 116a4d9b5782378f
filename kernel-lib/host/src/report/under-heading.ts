/**
 * HTML that `safeHtml` made, with its headings one level below `level`, and those below each other as they were: where a piece
 * stands on a page decides how deep its headings are.
 */
export function underHeading(safe: string, level: number): string {
  const highest = [1, 2, 3, 4, 5, 6].find((one) => new RegExp(`<h${one}[ >]`).test(safe));
  if (highest === undefined || highest === level + 1) return safe;
  const down = level + 1 - highest;
  return safe.replace(/<(\/?)h([1-6])(?=[ >])/g, (_, end, digit) => `<${end}h${Math.min(6, Number(digit) + down)}`);
}
