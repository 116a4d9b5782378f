import type { DayPlan } from "../../advice/day/batch-day";
import { svgOf } from "../figure/svg-of";
import { noteHtml } from "../note/note-html";
import { escapeHtml } from "../table/escape-html";
import { dayFigure } from "./day-figure";
import { dayNote } from "./day-note";

const DAY_STYLE = `
@page { margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; font: 9.5pt/1.25 system-ui, sans-serif; }
svg { width: 100%; height: auto; max-height: 75mm; }
blockquote { margin: 0; }
h4 { margin: 0 0 2mm; font-size: 13pt; }
h4 strong, h4 mark { font-size: 9pt; border: 0.3mm solid; border-radius: 1mm; padding: 0 1.2mm; vertical-align: middle; background: none; }
p { margin: 0 0 1.5mm; }
ul { margin: 0 0 2mm; padding-left: 5mm; columns: 88mm auto; column-gap: 6mm; }
li { break-inside: avoid; }
@media print { body { font-size: 7.6pt; line-height: 1.18; } svg { max-height: 58mm; } h4 { font-size: 11pt; } p, h4 { margin-bottom: 0.8mm; } ul { margin-bottom: 1.2mm; } }
@media screen { body { max-width: 190mm; margin: 4mm auto; padding: 0 3mm; } }`;

/** A batch day as a page of its own, to hang up or to read on a telephone: the bars, then the list; nothing from elsewhere in it. */
export function dayPage(plan: DayPlan): string {
  const note = dayNote(plan);
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escapeHtml(note.title)}</title><style>${DAY_STYLE}</style></head>
<body>${svgOf(dayFigure(plan))}
${noteHtml(note)}</body></html>
`;
}
