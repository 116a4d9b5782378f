import { ofColumns, tableBlocks } from "./table-blocks";

/** The report's own style sheet on a screen: plain, one column beside the contents, readable on a phone and in the dark. */
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
:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: .5rem; top: -4rem; background: var(--paper); padding: .5rem .8rem; z-index: 2; }
.skip:focus { top: .5rem; }
.unseen { position: fixed; left: -100vw; top: 0; width: 1px; height: 1px; }
header { padding-top: 1.6rem; }
header p { margin-bottom: .6rem; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .2rem; overflow-wrap: anywhere; }
h2 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 .8rem; }
h3 { font-size: 1.18rem; margin: 2rem 0 .5rem; }
h4, h5, h6, .rich :is(h2, h3) { font-size: 1rem; margin: 1.5rem 0 .4rem; }
h1, h2, h3, h4, h5, h6 { overflow-wrap: anywhere; }
p, ul, ol { margin: 0 0 .9rem; }
a { color: var(--link); }
.quiet, footer, .absent { color: var(--quiet); }
summary { cursor: pointer; }
nav { margin-top: 1.6rem; overflow-wrap: anywhere; }
nav ul { list-style: none; padding-left: 0; margin: .15rem 0 .6rem; font-size: .94rem; }
nav > details > summary { font-weight: 600; }
nav a[aria-current] { color: var(--ink); font-weight: 600; }
nav li > details > summary, details.code summary, figure details > summary { color: var(--quiet); font-size: .88rem; }
.print-choice { font-size: .88rem; color: var(--quiet); }
#answer { border: 0; margin-top: 0; padding-top: 0; }
section { border-top: 1px solid var(--line); margin-top: 2.6rem; padding-top: 2rem; }
section.failed > .opening h2, section.failed > h2 { color: var(--bad); }
details.code { margin: .9rem 0 .4rem; }
pre { margin: .3rem 0 .9rem; padding: .7rem .9rem; overflow-x: auto; background: var(--code); border-radius: 6px; font: 13px/1.5 ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; }
code { font: .9em ui-monospace, SFMono-Regular, Menlo, Consolas, monospace; background: var(--code); padding: .08em .3em; border-radius: 4px; }
pre code { background: none; padding: 0; font: inherit; }
pre.stderr { border-left: 3px solid var(--line); }
.error { border-left: 3px solid var(--bad); padding: .1rem 0 .1rem .9rem; margin: .4rem 0 .9rem; overflow-wrap: anywhere; }
.error p { margin: 0 0 .2rem; }
.error summary { color: var(--quiet); font-size: .88rem; }
.error pre { white-space: pre-wrap; }
blockquote { margin: 0 0 .9rem; padding: .1rem 0 .1rem 1rem; border-left: 3px solid var(--line); }
blockquote p:last-child { margin-bottom: 0; }
figure.plot { margin: .8rem 0 1.6rem; padding: .6rem; background: var(--paper); border: 1px solid var(--line); border-radius: 8px; }
figure.plot .canvas { width: 100%; }
.still { display: none; margin: 0 auto; }
.undrawn .canvas { display: none; }
.undrawn .still { display: block; }
figure details { padding: .2rem .4rem; }
figure details > p { color: var(--quiet); font-size: .88rem; max-width: 50rem; margin: .3rem 0 .6rem; overflow-wrap: anywhere; }
.figure-data { max-height: 24rem; overflow: auto; }
figcaption { color: var(--quiet); font-size: .9rem; padding: .4rem .4rem .1rem; }
img { max-width: 100%; height: auto; }
.rich, .prose, pre { overflow-x: auto; }
.rich, .prose { margin-bottom: .8rem; }
.rich > p { font-size: .88rem; color: var(--quiet); margin: .5rem 0; }
.rich > blockquote { background: var(--paper); border: 1px solid var(--line); border-left-width: 3px; border-radius: 6px; padding: .7rem 1rem .2rem; }
.rich > blockquote > :is(h2, h3, h4, h5, h6) { margin: 0 0 .4rem; }
.rich > blockquote p:has(> strong) { margin: 0; font-size: .88rem; }
.rich > blockquote ul { padding-left: 1.3rem; margin-bottom: .6rem; }
:is(h2, h3, h4, h5, h6) > strong, :is(h2, h3, h4, h5, h6) > mark { font-size: .85em; padding: .1em .5em; border-radius: 4px; margin-left: .3em; font-weight: 600; }
.rich :is(h2, h3, h4, h5, h6) > strong { color: var(--good); border: 1px solid currentColor; }
mark { background: var(--look); color: inherit; }
th small { font-weight: 400; color: var(--quiet); }
td[data-label="write here"] { min-width: min(17rem, 50vw); height: 2.6rem; border: 1px solid var(--line); text-align: right; }
td[data-label="card"] { font-weight: 700; white-space: nowrap; }
table { border-collapse: collapse; font-size: .88rem; font-variant-numeric: tabular-nums; background: var(--paper); }
caption { text-align: left; font-weight: 600; padding: .2rem 0 .4rem; background: var(--ground); }
figure caption { background: none; }
th, td { border-bottom: 1px solid var(--line); padding: .34rem .6rem; text-align: left; vertical-align: top; }
th { border-bottom-width: 2px; }
th > button { all: unset; cursor: pointer; border-radius: 3px; }
th > button:hover { text-decoration: underline; }
th > button:focus-visible { outline: 2px solid var(--link); outline-offset: 2px; }
th[aria-sort] > button::after { content: " \\2191" / ""; }
th[aria-sort="descending"] > button::after { content: " \\2193" / ""; }
p.tools { display: flex; gap: .2rem .9rem; flex-wrap: wrap; margin: .25rem 0 .9rem; font-size: .82rem; color: var(--quiet); }
.tools button, .tools select { font: inherit; color: var(--link); background: none; border: 1px solid var(--line); border-radius: 4px; padding: .1rem .5rem; cursor: pointer; max-width: 12rem; }
.tools option { background: var(--paper); color: var(--ink); }
.sort-list { display: none; }
${tableBlocks(ofColumns(10))}
footer { border-top: 1px solid var(--line); margin-top: 3rem; padding-top: 1rem; padding-bottom: 3rem; font-size: .88rem; }
.summary-only { display: none; }
@media screen and (max-width: 54rem) {${tableBlocks(ofColumns(7))}
}
@media screen and (max-width: 40rem) {${tableBlocks(ofColumns(4))}
  header { padding-top: .8rem; }
  main, header, nav, footer, #answer { padding-left: .9rem; padding-right: .9rem; }
  h1 { font-size: 1.35rem; } h2 { font-size: 1.3rem; }
  table { font-size: .8rem; } th, td { padding: .3rem .4rem; }
  figure.plot { margin-left: -.5rem; margin-right: -.5rem; padding: .25rem; }
  .tools button, .tools select { padding: .3rem .6rem; }
}
@media screen and (max-width: 74.99rem) {
  html { scroll-padding-top: 3.5rem; }
  nav { position: sticky; top: 0; z-index: 1; background: var(--ground); border-bottom: 1px solid var(--line); }
  nav > details > summary { padding: .55rem 0; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
  nav > details[open] { max-height: 75vh; overflow-y: auto; }
  .here:not(:empty)::before { content: ": "; }
  .here { font-weight: 400; color: var(--quiet); }
  nav a { display: inline-block; padding: .2rem 0; }
}
@media screen and (min-width: 75rem) {
  body { display: grid; grid-template-columns: 16rem minmax(0, 68rem); justify-content: center; column-gap: 1rem; }
  body > * { grid-column: 2; width: 100%; }
  body > nav { grid-area: 1 / 1 / span 4; position: sticky; top: 0; align-self: start; max-height: 100vh; overflow-y: auto; margin: 0; padding: 1.9rem .5rem 1rem 1.25rem; scrollbar-width: thin; }
  .here { display: none; }
  nav > details > summary { list-style: none; pointer-events: none; }
  nav li { padding: .12rem 0; line-height: 1.35; }
  nav li li { font-size: .88rem; padding-left: .8rem; }
  nav li > details:not([open]) { display: none; }
  nav li > details > summary { display: none; }
  nav a { text-decoration: none; }
  nav a:hover { text-decoration: underline; }
  nav a[aria-current] { box-shadow: -.6rem 0 var(--ground), -.75rem 0 var(--link); }
}
`;
