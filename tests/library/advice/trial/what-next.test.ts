import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { whatNext } from "../../../../kernel-lib/library/src/advice/trial/what-next";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { limitText } from "../../../../kernel-lib/library/src/safety/limit-text";
import { checkKitchen } from "../../../../kernel-lib/library/src/trials/check-kitchen";
import { starterFiles } from "../../trials/starter-files";
import { generatedKitchen } from "./generated-kitchen";

const demo = loadKitchen();

describe("whatNext", () => {
  it("answers whatever the number of trials, in whole sentences, with the core probed and the caution below", () => {
    fc.assert(
      fc.property(generatedKitchen(5), ({ kitchen, variant }) => {
        const next = whatNext({ kitchen, variantId: variant.variantId });
        expect(next.trials).toBe(kitchen.trials.length);
        expect(next.stage).toBe(kitchen.trials.length === 0 ? "first morning" : "next trial");
        expect([next.morning === null, next.next === null]).toEqual(
          kitchen.trials.length === 0 ? [false, true] : [true, false],
        );
        for (const text of [...next.known, ...next.steps.map(({ sentence }) => sentence), ...next.cautions]) {
          expect(text).toMatch(/^[A-Z0-9].*\.$/);
          expect(text).not.toMatch(/NaN|Infinity|undefined|null| {2}|\d{7}|\d\.\d{3}|fit[A-Z]|coefficient/);
        }
        const loads = next.steps.filter((step) => step.of === "load").map(({ sentence }) => sentence);
        expect(loads[0]).toContain("read the core");
        expect(loads[0]).toMatch(new RegExp(`[Bb]elow ${limitText(variant.limit, kitchen.units)} put them back`));
        expect(next.missing.length).toBeGreaterThan(0);
        expect(next.sentence).toContain(next.cautions[0]);
        expect(kitchen.pans.some(({ name }) => next.sentence.includes(name))).toBe(true);
        expect(next.sentence).not.toMatch(/small-basket|fan-oven/);
      }),
      { numRuns: 10 },
    );
  });

  it("is ready once a card asks for nothing more", () => {
    const { stage, missing, known } = whatNext({ kitchen: demo, variantId: "beet-lentil" });
    expect([stage, missing]).toEqual(["ready", []]);
    expect(known.join(" ")).toMatch(/32 trials .* Of 32 cores read, \d+ were at 74 °C or more\./);
  });

  it.each([
    ["us", 0],
    ["metric", 0],
    ["us", 2],
    ["metric", 4],
  ] as const)("speaks to a new kitchen in its own units: %s, %i trials", (units, trials) => {
    const { kitchen, problems } = checkKitchen(starterFiles(units, trials));
    expect(problems).toEqual([]);
    const next = whatNext({ kitchen: kitchen!, variantId: "first-variant" });
    expect(next.units).toBe(units);
    expect(next.sentence).toMatch(units === "us" ? /Weigh out \d+ lb/ : /Weigh out \d+ g/);
    if (trials > 0) expect(next.known[0]).toContain(`${trials} trials of `);
  });
});
