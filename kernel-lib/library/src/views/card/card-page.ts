import { cardTexts } from "../../advice/card/card-texts";
import type { PackLabel } from "../../advice/card/pack-label";
import type { ReheatCard } from "../../advice/card/reheat-card";
import { tooLittle } from "../../check/too-little";
import { escapeHtml } from "../table/escape-html";
import { facesPage, paragraph } from "./faces-page";
import { labelFace } from "./label-page";

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
  const { language } = label;
  if (card.language !== language)
    throw new RangeError(`cardPage: label must be in the card's language, ${card.language}, got ${language}`);
  const line = (text: string): string => `<li>${escapeHtml(text)}</li>`;
  const face = `<h1>${escapeHtml(card.title)}</h1>
${paragraph(label.state, "state")}
<ul class="do">${card.lines.slice(0, -1).map(line).join("")}</ul>
${paragraph(`${cardTexts(language).thermometer} ${card.lines[card.lines.length - 1]}`)}
`;
  return facesPage({ language, title: card.title, faces: [face, labelFace(label)] });
}
