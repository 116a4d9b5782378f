import { cardNumber, cardTexts } from "../../advice/card/card-texts";
import type { PackLabel } from "../../advice/card/pack-label";
import { ownMassText } from "../../units/mass-text";
import { escapeHtml } from "../table/escape-html";
import { facesPage, paragraph } from "./faces-page";

/**
 * What is in the pack as a page of its own, one face of A6 on its side, in the kitchen's language: it needs no trials, and gives no
 * time.
 *
 * @returns HTML
 * @example
 * const label = packLabel({ kitchen: loadKitchen(), variantId: "turkey-sage" });
 * labelPage(label).includes("Raw. Cook until every core is at 74 °C"); // → true
 */
export function labelPage(label: PackLabel): string {
  return facesPage({ language: label.language, title: label.variantName, faces: [labelFace(label)] });
}

/** The face that says what is in the pack. */
export function labelFace(label: PackLabel): string {
  const { units, language } = label;
  const texts = cardTexts(language);
  const freezer = units === "us" ? "0 °F (−18 °C)" : "−18 °C (0 °F)";
  const nutrient = ({ name, amount }: PackLabel["nutrition"]["lines"][number]): string =>
    `<tr><th scope="row">${escapeHtml(name)}</th><td>${escapeHtml(amount)}</td></tr>`;
  const made = [
    texts.serving(label.piecesPerServing, cardNumber(ownMassText(label.pieceG, units), language, units)),
    ...(label.batch === null ? [] : [texts.batch(label.batch)]),
    ...(label.frozenOn === null ? [] : [texts.frozenOn(label.frozenOn)]),
    label.bestBefore === null ? texts.bestWithin(label.lifeDays, freezer) : texts.bestBefore(label.bestBefore, freezer),
  ];
  return `<h1>${escapeHtml(label.variantName)}</h1>
${paragraph(label.state, "state")}
${paragraph(made.join(" "))}
<div class="contents"><div>
${paragraph(texts.ingredients(label.ingredients))}
${paragraph(texts.allergens(label.allergens))}
</div><table><caption>${escapeHtml(label.nutrition.of)}</caption><tbody>${label.nutrition.lines.map(nutrient).join("")}</tbody></table></div>
${paragraph(label.cautions.join(" "), "small")}
`;
}
