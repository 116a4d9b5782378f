import { ofColumns, tableBlocks } from "./table-blocks";

/** Of a page with a summary that is printed without the working. (`:has` on the box itself would make later drawing slow.) */
const SUMMARY = "body.has-summary:not(.prints-all)";

/** The report's style sheet on paper, A4 or Letter: black on white, tables with their headings on every page, no figure cut. */
export const PRINT_STYLE: string = `
@page { margin: 13mm 13mm 16mm; @bottom-left { font: 8pt system-ui, sans-serif; color: #555; } @bottom-right { content: counter(page) " of " counter(pages); font: 8pt system-ui, sans-serif; color: #555; } }
@media print {
  :root { color-scheme: light; --ground: #fff; --paper: #fff; --ink: #000; --quiet: #444; --line: #bbb; --link: #000; --code: #f4f4f4; --bad: #900; --good: #000; --look: #eee; }
  body { font-size: 10pt; line-height: 1.4; }
  .skip, nav, p.tools, figure details, details.code { display: none; }
  main, header, footer, #answer { max-width: none; padding: 0; }
  h1 { font-size: 16pt; } h2 { font-size: 13pt; } h3 { font-size: 11pt; margin-top: 1rem; }
  p, ul, ol { margin-bottom: .5rem; }
  a { text-decoration: none; }
  .prose, .rich > p, .rich > blockquote, .error, figcaption { max-width: none; }
  .error details { display: none; }
  pre { font-size: 7pt; white-space: pre-wrap; break-inside: avoid; }
  table { font-size: 8.5pt; } th, td { padding: .2rem .4rem; }
  table${ofColumns(7)} { font-size: 7.5pt; } table${ofColumns(7)} :is(th, td) { padding: .15rem .3rem; }
  thead { display: table-header-group; }
  th > button { cursor: inherit; }
  th[aria-sort] > button::after { content: none; }
  tr, figure { break-inside: avoid; } h2, h3, h4, caption { break-after: avoid; }
  p, li { orphans: 2; widows: 2; }
  .rich, .prose, pre { overflow: visible; }
  .rich > p, .rich > blockquote { font-size: 9pt; margin-bottom: .35rem; }
  .rich > blockquote { padding: .3rem .7rem .1rem; break-inside: avoid; }
  section { border: 0; margin: 0; padding: 0; }
  main > section { break-before: page; }
  figure.plot { border: 0; padding: 0; margin: .3rem 0 .6rem; }
  .with-still .canvas { display: none; }
  .still { display: block; max-height: 225mm; break-inside: avoid; break-after: avoid; }
  figcaption { padding: .2rem 0 0; font-size: 8.5pt; }
  footer { margin-top: .8rem; padding-bottom: 0; }
  ${SUMMARY} footer .summary-only { display: block; }
  ${SUMMARY} main > section > :not(.brief), ${SUMMARY} main > .working { display: none; }
  ${SUMMARY} main .first-figure > :not(figure), ${SUMMARY} main .first-figure > figure ~ figure { display: none; }
  ${SUMMARY} main .opening > :not(:is(h2, h2 + p)), ${SUMMARY} main .brief.prose:not(.opening) > :not(blockquote) { display: none; }
  ${SUMMARY} main > section { break-before: auto; margin-top: .7rem; }
  ${SUMMARY} main .opening { break-after: avoid; break-inside: avoid; }
  ${SUMMARY} main figure { break-inside: auto; }
  ${SUMMARY} main .still { max-height: 62mm; }
  ${SUMMARY} main .still.tall { max-height: 145mm; }
  ${SUMMARY} main figcaption { font-size: 7.5pt; line-height: 1.3; }
  ${SUMMARY} main .opening p, ${SUMMARY} footer { font-size: 9pt; }
  ${SUMMARY} footer p { margin-bottom: .2rem; }
  ${SUMMARY} main blockquote { font-size: 9pt; break-inside: avoid; break-before: avoid; margin-bottom: 0; }
${tableBlocks(ofColumns(10))}
}
`;
