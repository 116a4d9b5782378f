/**
 * HTML that `safeHtml` made, with its headings one level below `level`, and those below each other as they were: where a piece
 * stands on a page decides how deep its headings are.
 */
export function underHeading(safe: string, level: number): string {
  const levels = [...safe.matchAll(/<h([1-6])[ >]/g)].map(([, digit]) => Number(digit));
  const down = level + 1 - Math.min(...levels);
  if (levels.length === 0 || down === 0) return safe;
  return safe.replace(/<(\/?)h([1-6])(?=[ >])/g, (_, end, digit) => `<${end}h${Math.min(6, Number(digit) + down)}`);
}
