import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { whatNext } from "../../../../kernel-lib/library/src/advice/trial/what-next";
import { otherPans } from "../../../../kernel-lib/library/src/advice/window/other-pans";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { limitText } from "../../../../kernel-lib/library/src/safety/limit-text";
import { checkKitchen } from "../../../../kernel-lib/library/src/trials/check-kitchen";
import type { KitchenVariant } from "../../../../kernel-lib/library/src/trials/kitchen";
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

  it("gives no trial that is worth nothing: it says what to change, in time and with the greatest chance", () => {
    const of = (change: Partial<KitchenVariant>) => {
      const variants = demo.variants.map((one) => (one.variantId === "turkey-sage" ? { ...one, ...change } : one));
      const next = whatNext({ kitchen: { ...demo, variants }, variantId: "turkey-sage" });
      const [own] = otherPans({
        kitchen: { ...demo, variants },
        variantId: "turkey-sage",
        panIds: ["half-sheet"],
        calibration: next.next!.window.calibration,
      }).pans;
      return { next, own };
    };
    const slow = of({ longestMin: 10 });
    expect(slow.next.next!.stopping).toMatchObject({ worthwhile: false });
    expect(slow.next.missing).toHaveLength(1);
    const [no, change, ...more] = slow.next.steps;
    expect(no.sentence).toBe("Run no further trial like this: it would hardly change the decision.");
    const inTime = slow.own.remedies.filter(({ late, standing }) => !late && standing !== "outside what was tried");
    const best = inTime.toSorted((a, b) => b.success - a.success)[0];
    expect(change.sentence).toBe(`Change something instead: ${best.sentence}.`);
    expect(more).toEqual([]);
    expect(slow.next.sentence).toContain(`2. ${change.sentence}`);
    expect(slow.next.sentence).not.toMatch(/Weigh out|The next trial:/);
  });

  it("says so where no change promises success either, after what the log must first be looked at for", () => {
    const trials = demo.trials.map((trial) => ({
      ...trial,
      brownScores: trial.brownScores.map(() => 8.8),
      crispScores: trial.crispScores.map((score) => score / 2),
      crispMin: null,
    }));
    const { missing, steps, next } = whatNext({ kitchen: { ...demo, trials }, variantId: "beet-lentil" });
    expect(next!.stopping.worthwhile).toBe(false);
    expect(missing).toContain("readings that agree");
    expect(steps.map(({ sentence }) => sentence)).toEqual([
      expect.stringMatching(/^Readings that agree: /),
      "Run no further trial like this: it would hardly change the decision.",
      expect.stringMatching(/^Too thick: .*; no change that was tried promises success \(.*\)\.$/),
      "Change what was not tried here: the mix, the coating or the appliance.",
    ]);
  });

  it("keeps the steps of a trial while the log lacks what a card must rest on, whatever it gains", () => {
    const kept = demo.trials.filter(({ variantId }) => variantId !== "beet-lentil");
    const few = demo.trials.filter(({ variantId }) => variantId === "beet-lentil").slice(0, 5);
    const next = whatNext({ kitchen: { ...demo, trials: [...kept, ...few] }, variantId: "beet-lentil" });
    expect(next.next!.stopping.worthwhile).toBe(true);
    expect(next.steps).toEqual(next.next!.steps);
    expect(next.sentence).toMatch(/The next trial:\n1\. Weigh out/);
  });

  it("is ready once a card asks for nothing more", () => {
    const { stage, missing, known, next, steps } = whatNext({ kitchen: demo, variantId: "beet-lentil" });
    expect(next!.stopping.stop).toBe(true);
    expect(steps.map(({ sentence }) => sentence).join(" ")).toMatch(/^Run no further trial .* Print the card, /);
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
