/**
 * Tables that match, as blocks: one a row, its cells beside or below each other with their headings (`data-label`), so that
 * no column goes out of sight. A cell with nothing to say has no label, and is left out.
 */
function asBlocks(match: string): string {
  const table = `table${match}:has(td[data-label])`;
  return `
${table}, ${table} tbody, ${table} caption { display: block; }
${table} thead { display: none; }
${table} tr { display: flex; flex-wrap: wrap; gap: .05rem .9rem; padding: .5rem .6rem; border-bottom: 1px solid var(--line); break-inside: avoid; }
${table} td { border: 0; padding: 0; text-align: left !important; white-space: normal; }
${table} td::before { content: attr(data-label) " "; color: var(--quiet); font-size: .88em; font-weight: 400; }
${table} td:first-child { flex: 0 0 100%; font-weight: 600; }
${table} td:first-child::before { content: none; }
${table} td:not([data-label]) { display: none; }`;
}

/** Tables of so many columns or more. */
function ofColumns(count: number): string {
  return `:has(th:nth-child(${count}))`;
}

/** The report's own style sheet: plain, one column, readable on a phone, in the dark and on paper. */
export const REPORT_STYLE: string = `
:root { color-scheme: light dark; --ground: #fbfaf7; --paper: #fff; --ink: #23221f; --quiet: #66635c; --line: #dcd8ce; --link: #0b5c8a; --code: #f3f1ea; --bad: #a3261b; --good: #1d6b34; --look: #fbeec2; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #1b1c1d; --paper: #242526; --ink: #e8e6e1; --quiet: #a9a59c; --line: #3d3e40; --link: #83c1e8; --code: #2b2c2e; --bad: #ff9d8f; --good: #8fd6a3; --look: #5a4a12; }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; scroll-padding-top: 1rem; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 16px/1.55 system-ui, -apple-system, "Segoe UI", sans-serif; }
main, header, nav, footer, #answer { max-width: 68rem; margin: 0 auto; padding: 0 1.25rem; }
.prose, .rich > p, .rich > blockquote, .error, figcaption { max-width: 50rem; }
header { padding-top: 1.6rem; }
header p { margin-bottom: .6rem; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .2rem; overflow-wrap: anywhere; }
h2 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 .8rem; }
h3 { font-size: 1.18rem; margin: 2rem 0 .5rem; }
h4, h5, h6 { font-size: 1rem; margin: 1.5rem 0 .4rem; }
p, ul, ol { margin: 0 0 .9rem; }
a { color: var(--link); }
.quiet, footer, .absent { color: var(--quiet); }
nav { margin-top: 1.6rem; }
nav ol { padding-left: 1.4rem; }
nav ul { list-style: none; padding-left: 0; margin: .15rem 0 .6rem; font-size: .94rem; }
nav summary, details.code summary { cursor: pointer; color: var(--quiet); font-size: .88rem; }
#answer { border: 0; margin-top: 0; padding-top: 0; }
section { border-top: 1px solid var(--line); margin-top: 2.6rem; padding-top: 2rem; }
section.failed > h2 { color: var(--bad); }
details.code { margin: .9rem 0 .4rem; }
pre { margin: .3rem 0 .9rem; padding: .7rem .9rem; overflow-x: auto; background: var(--code); border-radius: 6px; font: 13px/1.5 ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; }
code { font: .9em ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; background: var(--code); padding: .08em .3em; border-radius: 4px; }
pre code { background: none; padding: 0; font: inherit; }
pre.stderr { border-left: 3px solid var(--line); }
.error { border-left: 3px solid var(--bad); padding: .1rem 0 .1rem .9rem; margin: .4rem 0 .9rem; overflow-wrap: anywhere; }
.error p { margin: 0 0 .2rem; }
.error summary { cursor: pointer; color: var(--quiet); font-size: .88rem; }
.error pre { white-space: pre-wrap; }
blockquote { margin: 0 0 .9rem; padding: .1rem 0 .1rem 1rem; border-left: 3px solid var(--line); }
blockquote p:last-child { margin-bottom: 0; }
figure.plot { margin: .8rem 0 1.6rem; padding: .6rem; background: var(--paper); border: 1px solid var(--line); border-radius: 8px; }
figure.plot .canvas { width: 100%; }
figcaption { color: var(--quiet); font-size: .9rem; padding: .4rem .4rem .1rem; }
img { max-width: 100%; height: auto; }
.rich, .prose, pre { overflow-x: auto; }
.rich, .prose { margin-bottom: .8rem; }
.rich > p { font-size: .88rem; color: var(--quiet); margin: .5rem 0; }
.rich > blockquote { background: var(--paper); border: 1px solid var(--line); border-left-width: 3px; border-radius: 6px; padding: .7rem 1rem .2rem; break-inside: avoid; }
.rich > blockquote h4 { margin: 0 0 .4rem; }
.rich > blockquote p:has(> strong) { margin: 0; font-size: .88rem; }
.rich > blockquote ul { padding-left: 1.3rem; margin-bottom: .6rem; }
h4 > strong, h4 > mark { font-size: .85em; padding: .1em .5em; border-radius: 4px; margin-left: .3em; font-weight: 600; }
h4 > strong { color: var(--good); border: 1px solid currentColor; }
mark { background: var(--look); color: inherit; }
th small { font-weight: 400; color: var(--quiet); }
td[data-label="write here"] { min-width: 17rem; height: 2.6rem; border: 1px solid var(--line); text-align: right; }
td[data-label="card"] { font-weight: 700; white-space: nowrap; }
table { border-collapse: collapse; font-size: .88rem; font-variant-numeric: tabular-nums; background: var(--paper); }
caption { text-align: left; font-weight: 600; padding: .2rem 0 .4rem; background: var(--ground); }
th, td { border-bottom: 1px solid var(--line); padding: .34rem .6rem; text-align: left; vertical-align: top; }
th { border-bottom-width: 2px; }
${asBlocks(ofColumns(10))}
footer { border-top: 1px solid var(--line); margin-top: 3rem; padding-top: 1rem; padding-bottom: 3rem; font-size: .88rem; }
@media screen and (max-width: 60rem) {${asBlocks(ofColumns(7))}
}
@media screen and (max-width: 40rem) {${asBlocks(ofColumns(4))}
  header { padding-top: .8rem; }
  main, header, nav, footer, #answer { padding-left: .9rem; padding-right: .9rem; }
  h1 { font-size: 1.35rem; } h2 { font-size: 1.3rem; }
  table { font-size: .8rem; } th, td { padding: .3rem .4rem; }
  figure.plot { margin-left: -.5rem; margin-right: -.5rem; padding: .25rem; }
}
@media print {${asBlocks(ofColumns(7))}
  :root { --ground: #fff; --paper: #fff; --ink: #000; --quiet: #444; --line: #bbb; --link: #000; --code: #f4f4f4; --bad: #900; }
  body { font-size: 10.5pt; } nav details, .modebar-container, details.code { display: none; }
  main, header, nav, footer, #answer { max-width: none; padding: 0; }
  #answer { break-before: avoid; }
  .error details { display: none; }
  pre { font-size: 7pt; }
  table { font-size: 8.5pt; } th, td { padding: .2rem .4rem; }
  section { break-before: page; border: 0; margin: 0; padding: 0; }
  figure, .canvas, tr, pre { break-inside: avoid; } h2, h3, h4 { break-after: avoid; }
  .rich, pre { overflow: visible; }
  pre { white-space: pre-wrap; }
  .rich > p, .rich > blockquote { font-size: 9pt; }
}
`;
