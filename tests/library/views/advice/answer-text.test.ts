import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answers } from "../../../../kernel-lib/library/src/advice/answer/answers";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { answerText } from "../../../../kernel-lib/library/src/views/advice/answer-text";

const demo = answers({ kitchen: loadKitchen() });
const bare = (text: string): string => text.replace(/\s/g, "");
const widest = (text: string): number => Math.max(...text.split("\n").map((line) => line.length));

describe("answerText", () => {
  it("fits 80 columns, and has a row a product before anything else is said", () => {
    const text = answerText(demo);
    expect(widest(text)).toBeLessThanOrEqual(80);
    const rows = text.slice(0, text.indexOf("Core by: ")).split("\n\n").slice(1, -1);
    expect(rows).toHaveLength(demo.products.length);
    for (const [at, { cardMin, coreByMin, limit }] of demo.products.entries()) {
      expect(rows[at]).toContain(String(cardMin));
      expect(rows[at]).toContain((coreByMin as number).toFixed(1));
      expect(rows[at]).toContain(`${limit.limitC} °C`);
      expect(rows[at]).toContain(`${limit.limitF} °F`);
    }
  });

  it("fits 80 columns with names of any length, and loses no text of them", () => {
    const name = fc.string({ minLength: 1, maxLength: 300, unit: "grapheme-ascii" });
    fc.assert(
      fc.property(name, name, name, (variantName, panName, applianceName) => {
        const [first] = demo.products;
        const one = { ...first, variantName, panName, applianceName, notices: [variantName], steps: [panName] };
        const text = answerText({ ...demo, kitchenName: panName, products: [one], notices: [applianceName] });
        expect(widest(text)).toBeLessThanOrEqual(80);
        for (const each of [variantName, panName, applianceName]) expect(bare(text)).toContain(bare(each));
      }),
    );
  });

  it("says each sentence of the cautions once, and none is dropped", () => {
    const text = bare(answerText(demo));
    for (const { limit } of demo.products)
      for (const sentence of limit.caution.split(/(?<=\.) (?=[A-Z])/))
        expect(text.split(bare(sentence)), sentence).toHaveLength(2);
  });

  it("lists what comes next and what to look at line by line, beside the product", () => {
    const text = answerText(demo);
    for (const { variantName, steps, notices } of demo.products) {
      const own = text
        .slice(text.indexOf(`\n${variantName} [`))
        .slice(1)
        .split("\n\n")[0];
      expect(own.match(/^ {4}- /gm)).toHaveLength(steps.length + notices.length);
      for (const each of [...steps, ...notices]) expect(bare(own)).toContain(bare(each));
    }
  });

  it("puts a time in brackets that is for no card yet, and none where none can be answered for", () => {
    const [first] = demo.products;
    const open = { ...first, state: "not ready" as const, missing: "2 more trials", cardMin: 47 };
    const none = { ...open, cardMin: null, coreByMin: null, success: null };
    expect(answerText({ ...demo, products: [open] })).toContain("(47)");
    expect(answerText({ ...demo, products: [first] })).not.toContain("(time)");
    expect(answerText({ ...demo, products: [none] })).toMatch(/small basket +- +- +-\n/);
    expect(answerText({ ...demo, products: [none] })).not.toContain("(time)");
  });

  it("speaks the kitchen's units first", () => {
    const [first] = demo.products;
    const us = answerText({ ...demo, products: [{ ...first, units: "us" }] });
    expect(us).toContain("395 °F (200 °C)");
    expect(us.indexOf("165 °F")).toBeLessThan(us.indexOf("74 °C"));
  });
});
