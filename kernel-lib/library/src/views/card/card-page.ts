import type { PackLabel } from "../../advice/card/pack-label";
import type { ReheatCard } from "../../advice/card/reheat-card";
import { tooLittle } from "../../check/too-little";
import { ownMassText } from "../../units/mass-text";
import { escapeHtml } from "../table/escape-html";

/** A6 lying on its side has room for a card and what is in the pack; sizes are our judgement. */
const CARD_STYLE = `
@page { size: 148mm 105mm; margin: 5mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; font: 7.6pt/1.22 system-ui, sans-serif; }
h1 { margin: 0 0 1mm; font-size: 12pt; }
.state { margin: 0 0 1.5mm; font-weight: 700; font-size: 9pt; }
.do { margin: 0 0 1.5mm; padding: 0; list-style: none; font-size: 10pt; line-height: 1.2; }
p { margin: 0 0 1mm; }
.small { font-size: 6.4pt; line-height: 1.15; }
@media screen { body { width: 138mm; margin: 8mm auto; } }`;

/** What `cardPage` prints. */
export interface CardPageOptions {
  readonly card: ReheatCard;
  /** of the same variant, from `packLabel` */
  readonly label: PackLabel;
}

/**
 * A reheat card and what is in the pack as a page of its own, A6 on its side, nothing from elsewhere in it. A card that is not
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
  const { units } = card.window.setting;
  const line = (text: string): string => `<li>${escapeHtml(text)}</li>`;
  const paragraph = (text: string, name = ""): string =>
    `<p${name === "" ? "" : ` class="${name}"`}>${escapeHtml(text)}</p>`;
  const made = [
    ...(label.batch === null ? [] : [`Batch ${label.batch}.`]),
    ...(label.frozenOn === null ? [] : [`Frozen ${label.frozenOn}.`]),
    label.bestBefore === null
      ? `Best within ${label.lifeDays} days at −18 °C (0 °F).`
      : `Best before ${label.bestBefore}, kept at −18 °C (0 °F).`,
  ];
  const title = escapeHtml(card.title);
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>${title}</title><style>${CARD_STYLE}</style></head>
<body><h1>${title}</h1>
${paragraph(label.state, "state")}
<ul class="do">${card.lines.slice(0, -1).map(line).join("")}</ul>
${paragraph(`Use a thermometer. ${card.lines[card.lines.length - 1]}`)}
${paragraph(`A serving: ${label.piecesPerServing} ${label.piecesPerServing === 1 ? "piece" : "pieces"} of about ${ownMassText(label.pieceG, units)}. ${made.join(" ")}`)}
${paragraph(`Ingredients: ${label.ingredients.join("; ")}.`)}
${paragraph(`Allergens, check the label of every ingredient: ${label.allergens.length === 0 ? "none is marked" : label.allergens.join("; ")}.`)}
${paragraph(label.cautions.join(" "), "small")}
</body></html>
`;
}
