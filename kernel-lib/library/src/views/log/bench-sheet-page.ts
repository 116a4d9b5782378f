import type { BenchSheet } from "../../advice/trial/bench-sheet";
import { escapeHtml } from "../table/escape-html";
import { benchSheetParts } from "./bench-sheet-html";

/** Two trials a page on A4 (297 mm high) and Letter (279 mm): lines of 8.4 mm are written on with floury hands; our judgement. */
export const SHEET_STYLE = `
@page { margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; font: 9pt/1.15 system-ui, sans-serif; }
section { break-after: page; }
section:last-child { break-after: auto; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; }
caption { text-align: left; font-weight: 600; font-size: 12pt; padding-bottom: 1.5mm; }
th, td { border: 0.3mm solid #444; padding: 0.4mm 1.2mm; text-align: left; vertical-align: middle; height: 5mm; overflow-wrap: anywhere; }
th:first-child { width: 50mm; font-weight: 600; }
thead th { background: #eee; }
tr { break-inside: avoid; }
th small { font-weight: 400; font-size: 7pt; color: #333; }
td[data-label="write here"] { height: 8.4mm; text-align: right; vertical-align: top; }
td small { font-size: 7.5pt; color: #333; }
.note { margin: 1mm 0 0; font-size: 7.5pt; }
@media screen { body { max-width: 194mm; margin: 8mm auto; } section { margin-bottom: 12mm; } }`;

/** A bench sheet as a page of its own, to print on A4 or Letter: two trials a sheet, nothing from elsewhere in it. */
export function benchSheetPage(sheet: BenchSheet): string {
  const title = escapeHtml(`${sheet.kitchenName}: bench sheet`);
  const sections = benchSheetParts(sheet).map((part) => `<section>${part}</section>`);
  return `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>${title}</title><style>${SHEET_STYLE}</style></head>\n<body>${sections.join("\n")}</body></html>\n`;
}
