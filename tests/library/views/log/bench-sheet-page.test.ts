import { describe, expect, it } from "vitest";
import { benchSheet } from "../../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { benchSheetHtml } from "../../../../kernel-lib/library/src/views/log/bench-sheet-html";
import { benchSheetPage } from "../../../../kernel-lib/library/src/views/log/bench-sheet-page";
import { benchSheetText } from "../../../../kernel-lib/library/src/views/log/bench-sheet-text";

const kitchen = { ...loadKitchen(), name: "Nook & <b>Cranny</b>" };
const sheet = benchSheet({ kitchen, trials: [1, 2, 3].map(() => ({ variantId: "turkey-sage", timeMin: 12 })) });
const page = benchSheetPage(sheet);
const count = (text: string, what: RegExp): number => (text.match(what) ?? []).length;

describe("benchSheetPage", () => {
  it("has two trials a page, every heading and every caution on each", () => {
    expect(count(page, /<section>/g)).toBe(2);
    for (const { heading } of sheet.rows)
      expect(count(page, new RegExp(`<th scope="row">${heading}(<|$)`, "g"))).toBe(2);
    expect(sheet.cautions.length).toBeGreaterThan(2);
    expect(count(page, /<p class="note">/g)).toBe(2 * sheet.cautions.length);
  });

  it("has a blank for each trial and each line that nothing is printed in", () => {
    const blanks = sheet.rows.flatMap(({ cells }) => cells).filter(({ printed }) => printed === null).length;
    expect(count(page, /<td data-label="write here">/g)).toBe(blanks);
  });

  it("takes nothing from elsewhere, runs nothing, and escapes names", () => {
    expect(page).not.toMatch(/<script|<link|<img|https?:|url\(/);
    expect(page).toContain("Nook &amp; &lt;b&gt;Cranny&lt;/b&gt;");
    expect(page).not.toContain("<b>");
  });
});

describe("benchSheetHtml and benchSheetText", () => {
  it("hold the core limit and the cautions too", () => {
    for (const text of [benchSheetHtml(sheet), benchSheetText(sheet)]) {
      const plain = text.replaceAll("\u00a0", " ");
      expect(plain).toContain("to be eaten: 74 °C or more");
      for (const caution of sheet.cautions) expect(plain).toContain(caution);
    }
  });
});
