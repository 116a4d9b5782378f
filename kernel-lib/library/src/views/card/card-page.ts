import { cardNumber, cardTexts } from "../../advice/card/card-texts";
import type { PackLabel } from "../../advice/card/pack-label";
import type { ReheatCard } from "../../advice/card/reheat-card";
import { tooLittle } from "../../check/too-little";
import { ownMassText } from "../../units/mass-text";
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

/** What `cardPage` prints. */
export interface CardPageOptions {
  readonly card: ReheatCard;
  /** of the same variant, from `packLabel` */
  readonly label: PackLabel;
}

/**
 * A reheat card and what is in the pack as two faces of A6 on its side, in the kitchen's language, nothing from elsewhere in it. A card that is not
 * ready is not made: what is missing is said.
 *
 * @throws too little, in words, where the log does not carry the card
 * @returns HTML
 */
export function cardPage({ card, label }: CardPageOptions): string {
  if (!card.ready)
    tooLittle("cardPage", `The card of ${label.variantName} cannot be printed yet: ${card.missing.join("; ")}.`);
  if (card.window.variantId !== label.variantId)
    throw new RangeError(`cardPage: label must be of ${card.window.variantId}, got ${label.variantId}`);
  const { units, language } = label;
  if (card.language !== language)
    throw new RangeError(`cardPage: label must be in the card's language, ${card.language}, got ${language}`);
  const texts = cardTexts(language);
  const freezer = units === "us" ? "0 °F (−18 °C)" : "−18 °C (0 °F)";
  const line = (text: string): string => `<li>${escapeHtml(text)}</li>`;
  const nutrient = ({ name, amount }: PackLabel["nutrition"]["lines"][number]): string =>
    `<tr><th scope="row">${escapeHtml(name)}</th><td>${escapeHtml(amount)}</td></tr>`;
  const paragraph = (text: string, name = ""): string =>
    `<p${name === "" ? "" : ` class="${name}"`}>${escapeHtml(text)}</p>`;
  const made = [
    ...(label.batch === null ? [] : [texts.batch(label.batch)]),
    ...(label.frozenOn === null ? [] : [texts.frozenOn(label.frozenOn)]),
    label.bestBefore === null ? texts.bestWithin(label.lifeDays, freezer) : texts.bestBefore(label.bestBefore, freezer),
  ];
  const title = escapeHtml(card.title);
  return `<!doctype html>
<html lang="${language}"><head><meta charset="utf-8"><title>${title}</title><style>${CARD_STYLE}</style></head>
<body><section><h1>${title}</h1>
${paragraph(label.state, "state")}
<ul class="do">${card.lines.slice(0, -1).map(line).join("")}</ul>
${paragraph(`${texts.thermometer} ${card.lines[card.lines.length - 1]}`)}
</section><section><h1>${escapeHtml(label.variantName)}</h1>
${paragraph(label.state, "state")}
${paragraph(`${texts.serving(label.piecesPerServing, cardNumber(ownMassText(label.pieceG, units), language, units))} ${made.join(" ")}`)}
<div class="contents"><div>
${paragraph(texts.ingredients(label.ingredients))}
${paragraph(texts.allergens(label.allergens))}
</div><table><caption>${escapeHtml(label.nutrition.of)}</caption><tbody>${label.nutrition.lines.map(nutrient).join("")}</tbody></table></div>
${paragraph(label.cautions.join(" "), "small")}
</section></body></html>
`;
}
