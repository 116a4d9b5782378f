import { packLabel, reheatCard } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { cardPage } from "slabwright/views";
import { describe, expect, test } from "vitest";

const kitchen = loadKitchen();
const variantId = "turkey-sage";
const label = packLabel({ kitchen, variantId, frozenOn: "2026-03-14", batch: "<T-1>" });
const card = reheatCard({ kitchen, variantId });

describe("cardPage", () => {
  test("a card that is not ready is not printed, whatever its label says", () => {
    const open = { ...card, ready: false, missing: ["read three more cores"] };
    expect(() => cardPage({ card: open, label })).toThrow(
      expect.objectContaining({
        name: "TooLittle",
        message: expect.stringMatching(/cannot be printed yet: read three more cores/),
      }),
    );
  });

  test("all lines, raw first, the thermometer, the caution and the date stand on it, escaped and without anything from elsewhere", () => {
    const page = cardPage({ card: { ...card, ready: true }, label });
    for (const line of card.lines) expect(page).toContain(line.replaceAll("&", "&amp;"));
    expect(page.indexOf("Raw. Cook")).toBeLessThan(page.indexOf(card.lines[0]));
    expect(page).toContain("Use a thermometer.");
    expect(page).toContain("Best before 2026-06-13");
    expect(page).toContain("&lt;T-1&gt;");
    expect(page).not.toMatch(/https?:|<script|<img|src=/);
  });

  test("the other language: the same amounts, its own sentences, and the page says which it is", () => {
    const spanish = { ...kitchen, language: "es" as const };
    const one = { card: { ...reheatCard({ kitchen: spanish, variantId }), ready: true } };
    const page = cardPage({ ...one, label: packLabel({ kitchen: spanish, variantId, frozenOn: "2026-03-14" }) });
    expect(page).toContain('<html lang="es">');
    for (const words of [
      "Crudo. Cocine",
      "Use un termómetro.",
      "Ingredientes:",
      "Alérgenos,",
      "hidratos de carbono",
      "Saque ",
      "11,7 mm",
    ])
      expect(page).toContain(words);
    expect(page).not.toMatch(/\b(Raw|Allergens|Take out|Best before|thick)\b/);
    expect(() => cardPage({ ...one, label })).toThrow(/label must be in the card's language, es, got en/);
  });

  test("nutrition stands in a table, each line with its amount", () => {
    const page = cardPage({ card: { ...card, ready: true }, label });
    expect(label.nutrition.lines).toHaveLength(9);
    for (const { name, amount } of label.nutrition.lines)
      expect(page).toContain(`<th scope="row">${name}</th><td>${amount}</td>`);
  });

  test("refuses the label of something else", () => {
    const other = packLabel({ kitchen, variantId: "beet-lentil" });
    expect(() => cardPage({ card: { ...card, ready: true }, label: other })).toThrow(
      /label must be of turkey-sage, got beet-lentil/,
    );
  });
});
