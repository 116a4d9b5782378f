/** The report's own style sheet: plain, one column, readable on a phone, in the dark and on paper. */
export const REPORT_STYLE = `
:root { color-scheme: light dark; --ground: #fbfaf7; --paper: #fff; --ink: #23221f; --quiet: #66635c; --line: #dcd8ce; --link: #0b5c8a; --code: #f3f1ea; --bad: #a3261b; }
@media (prefers-color-scheme: dark) {
  :root { --ground: #1b1c1d; --paper: #242526; --ink: #e8e6e1; --quiet: #a9a59c; --line: #3d3e40; --link: #83c1e8; --code: #2b2c2e; --bad: #ff9d8f; }
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; scroll-padding-top: 1rem; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 16px/1.55 system-ui, -apple-system, "Segoe UI", sans-serif; }
main, header, nav, footer { max-width: 54rem; margin: 0 auto; padding: 0 1.25rem; }
header { padding-top: 2.5rem; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 .4rem; }
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
section { border-top: 1px solid var(--line); margin-top: 2.6rem; padding-top: 2rem; }
section.failed > h2 { color: var(--bad); }
details.code { margin: .9rem 0 .4rem; }
pre { margin: .3rem 0 .9rem; padding: .7rem .9rem; overflow-x: auto; background: var(--code); border-radius: 6px; font: 13px/1.5 ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; }
code { font: .9em ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; background: var(--code); padding: .08em .3em; border-radius: 4px; }
pre code { background: none; padding: 0; font: inherit; }
pre.stderr { border-left: 3px solid var(--line); }
pre.error { border-left: 3px solid var(--bad); color: var(--bad); white-space: pre-wrap; overflow-wrap: anywhere; }
blockquote { margin: 0 0 .9rem; padding: .1rem 0 .1rem 1rem; border-left: 3px solid var(--line); }
blockquote p:last-child { margin-bottom: 0; }
figure.plot { margin: .8rem 0 1.6rem; padding: .6rem; background: #fff; border: 1px solid var(--line); border-radius: 8px; }
figure.plot .canvas { width: 100%; }
figcaption { color: #45433e; font-size: .9rem; padding: .4rem .4rem .1rem; }
img { max-width: 100%; height: auto; }
.rich, .prose { overflow-x: auto; margin-bottom: .8rem; }
table { border-collapse: collapse; font-size: .88rem; font-variant-numeric: tabular-nums; background: var(--paper); }
caption { text-align: left; font-weight: 600; padding: .2rem 0 .4rem; background: var(--ground); }
th, td { border-bottom: 1px solid var(--line); padding: .34rem .6rem; text-align: left; vertical-align: top; }
th { border-bottom-width: 2px; }
footer { border-top: 1px solid var(--line); margin-top: 3rem; padding-top: 1rem; padding-bottom: 3rem; font-size: .88rem; }
@media (max-width: 40rem) {
  main, header, nav, footer { padding-left: .9rem; padding-right: .9rem; }
  h1 { font-size: 1.55rem; } h2 { font-size: 1.3rem; }
  table { font-size: .8rem; } th, td { padding: .3rem .4rem; } td:first-child { white-space: nowrap; }
  figure.plot { margin-left: -.5rem; margin-right: -.5rem; padding: .25rem; }
}
@media print {
  :root { --ground: #fff; --paper: #fff; --ink: #000; --quiet: #444; --line: #bbb; --link: #000; --code: #f4f4f4; --bad: #900; }
  body { font-size: 10.5pt; } nav details, .modebar-container, details.code { display: none; }
  main, header, nav, footer { max-width: none; padding: 0; }
  section { break-before: page; border: 0; margin: 0; padding: 0; }
  figure, table, pre { break-inside: avoid; } h2, h3, h4 { break-after: avoid; }
  .rich, pre { overflow: visible; white-space: pre-wrap; }
}
`;
