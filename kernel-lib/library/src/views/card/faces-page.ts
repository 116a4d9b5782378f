import type { CardLanguage } from "../../trials/card-language";
import { escapeHtml } from "../table/escape-html";

/** A6 lying on its side, one face to do by and one to read; sizes are our judgement. */
const CARD_STYLE = `
@page { size: 148mm 105mm; margin: 5mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff; font: 8pt/1.25 system-ui, sans-serif; }
section { break-after: page; break-inside: avoid; }
section:last-child { break-after: auto; }
h1 { margin: 0 0 1mm; font-size: 13pt; }
.state { margin: 0 0 2mm; font-weight: 700; font-size: 10pt; }
.do { margin: 0 0 2mm; padding: 0; list-style: none; font-size: 11pt; line-height: 1.28; }
p { margin: 0 0 1.5mm; }
.contents { display: grid; grid-template-columns: 1fr 47mm; gap: 4mm; }
table { width: 100%; border-collapse: collapse; align-self: start; }
caption { text-align: left; font-weight: 700; padding-bottom: 0.5mm; }
th { text-align: left; font-weight: 400; }
td { text-align: right; white-space: nowrap; }
th, td { padding: 0.35mm 0; border-top: 0.2mm solid #999; }
.small { margin-top: 1.5mm; font-size: 6.8pt; line-height: 1.18; }
@media screen { section { width: 138mm; margin: 8mm auto; } }`;

/** Faces of A6 as a page of its own, nothing from elsewhere in it. */
export function facesPage(options: {
  readonly language: CardLanguage;
  /** plain text */
  readonly title: string;
  /** HTML of what stands on each */
  readonly faces: readonly string[];
}): string {
  const faces = options.faces.map((face) => `<section>${face}</section>`).join("\n");
  return `<!doctype html>
<html lang="${options.language}"><head><meta charset="utf-8"><title>${escapeHtml(options.title)}</title><style>${CARD_STYLE}</style></head>
<body>${faces}</body></html>
`;
}

/** A paragraph of plain text, with a class where one is given. */
export function paragraph(text: string, name = ""): string {
  return `<p${name === "" ? "" : ` class="${name}"`}>${escapeHtml(text)}</p>`;
}
