import { packLabel, reheatCard } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { cardPage, labelPage } from "slabwright/views";
import { expect, test } from "vitest";

const kitchen = loadKitchen();

test("what is in the pack can be printed without a trial, gives no time, and is the card's other face", () => {
  for (const { variantId } of kitchen.variants) {
    const page = labelPage(packLabel({ kitchen: { ...kitchen, trials: [] }, variantId, batch: "<b>" }));
    expect(page.match(/<section>/g)).toHaveLength(1);
    expect(page).toContain("Ingredients: ");
    expect(page).toContain("&lt;b&gt;");
    expect(page).not.toMatch(/Take out|\d min\b|<script|https?:/);
  }
  const variantId = "turkey-sage";
  const label = packLabel({ kitchen, variantId });
  const face = /<section>([\s\S]*)<\/section>/.exec(labelPage(label))?.[1] as string;
  expect(cardPage({ card: { ...reheatCard({ kitchen, variantId }), ready: true }, label })).toContain(face);
});
