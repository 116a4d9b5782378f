/**
 * Style rules for tables that match: they stand as blocks, one a row, its cells beside or below each other with their headings
 * (`data-label`), so that no column goes out of sight. A cell with nothing to say has no label, and is left out.
 */
export function tableBlocks(match: string): string {
  const table = `table${match}:has(td[data-label])`;
  return `
${table}, ${table} tbody, ${table} caption { display: block; }
${table} thead { display: none; }
${table} tr { display: flex; flex-wrap: wrap; gap: .05rem .9rem; padding: .5rem .6rem; border-bottom: 1px solid var(--line); break-inside: avoid; }
${table} td { border: 0; padding: 0; text-align: left !important; white-space: normal; }
${table} td::before { content: attr(data-label) " "; color: var(--quiet); font-size: .88em; font-weight: 400; }
${table} td:first-child { flex: 0 0 100%; font-weight: 600; }
${table} td:first-child::before { content: none; }
${table} td:not([data-label]) { display: none; }
${table} + .tools .sort-list { display: inline; }`;
}

/** Tables of so many columns or more. */
export function ofColumns(count: number): string {
  return `:has(th:nth-child(${count}))`;
}
