import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareVariants } from "../../../../kernel-lib/library/src/advice/compare/compare-variants";
import { crispCurve } from "../../../../kernel-lib/library/src/advice/curve/crisp-witness";
import { reheatYield } from "../../../../kernel-lib/library/src/advice/curve/reheat-yield";
import { variantCrispTime } from "../../../../kernel-lib/library/src/advice/curve/variant-crisp-time";
import { isTooLittle } from "../../../../kernel-lib/library/src/check/too-little";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";
import { fitLoss } from "../../../../kernel-lib/library/src/yield/fit-loss";

const demo = loadKitchen("data");
/** Which few of the demo's trials of a variant a young log holds. */
const youngLogs = fc.record({
  variantId: fc.constantFrom(...demo.variants.map((variant) => variant.variantId)),
  size: fc.integer({ min: 0, max: 7 }),
  seed: fc.nat({ max: 1000 }),
});

function youngKitchen({ variantId, size, seed }: { variantId: string; size: number; seed: number }): Kitchen {
  const own = demo.trials.filter((trial) => trial.variantId === variantId);
  const step = 1 + (seed % (own.length - 1));
  return { ...demo, trials: own.filter((_, at) => (at * step + seed) % own.length < size) };
}

/** What came of it: "done", or the sentence of too little; every other error passes. */
function outcome(work: () => unknown): string {
  try {
    work();
    return "done";
  } catch (error) {
    if (isTooLittle(error)) return error.message;
    throw error;
  }
}

const isForCooks = (sentence: string): boolean =>
  /^[A-Z\d].*\.$/.test(sentence) &&
  /\b(log|reheat|weigh)\b/.test(sentence) &&
  !/coefficient|covariate|fit[A-Z]|must hold/.test(sentence);

describe("a young log", () => {
  it("gives a curve, or a sentence that says what to log", () => {
    fc.assert(
      fc.property(youngLogs, (log) => {
        const [kitchen, variantId] = [youngKitchen(log), log.variantId];
        const said = outcome(() => variantCrispTime({ kitchen, variantId }));
        return said === "done" || isForCooks(said);
      }),
    );
  });

  it("gives a yield, or a sentence that says what to log", () => {
    const crispTimes = new Map(
      demo.variants.map(({ variantId }) => [variantId, variantCrispTime({ kitchen: demo, variantId })]),
    );
    fc.assert(
      fc.property(youngLogs, (log) => {
        const [kitchen, variantId] = [youngKitchen(log), log.variantId];
        const said = outcome(() => reheatYield({ kitchen, variantId, crispTime: crispTimes.get(variantId) }));
        return said === "done" || isForCooks(said);
      }),
    );
  });

  it("gives a loss, or a sentence that says what to weigh", () => {
    fc.assert(
      fc.property(youngLogs, (log) => {
        const kitchen = youngKitchen(log);
        const weighed = kitchen.trials.filter((trial) => trial.massBeforeG !== null && trial.massAfterG !== null);
        const said = outcome(() => fitLoss(weighed as Parameters<typeof fitLoss>[0]));
        return said === "done" || isForCooks(said);
      }),
    );
  });

  it("counts what is missing", () => {
    const { variantId, name } = demo.variants[0];
    const own = demo.trials.filter(
      (trial) => trial.variantId === variantId && trial.setpointC === demo.variants[0].setpointC,
    );
    const timed = own.filter(
      (trial) =>
        trial.notCrispMin !== null &&
        trial.crispMin !== null &&
        trial.applianceId === demo.variants[0].applianceId &&
        (trial.loadFraction ?? 0) <= 0.7,
    );
    const saidOf = (trials: Kitchen["trials"]): string =>
      outcome(() => variantCrispTime({ kitchen: { ...demo, trials }, variantId }));
    expect(saidOf([])).toMatch(new RegExp(`^No crisp time of ${name} .* 3 times in all`));
    expect(saidOf(timed.slice(0, 1))).toMatch(
      /^One crisp time .* log 2 more trials of a slab a third thicker or thinner/,
    );
    const alike = [0, 1, 2].map(() => ({ ...timed[0] }));
    expect(saidOf(alike)).toMatch(/^3 crisp times .* log one more trial of a slab a third thicker or thinner/);
    const apart = [timed[0], timed.at(-1) as (typeof timed)[number]];
    expect(saidOf(apart)).toMatch(/^2 crisp times .* log one more trial of another thickness/);
    expect(saidOf([timed[0], ...apart])).toBe("done");
    expect(crispCurve({ kitchen: { ...demo, trials: [] }, variantId })).toMatch(/^too few/);
  });

  it("asks for a second variant before it compares", () => {
    const alone: Kitchen = { ...demo, variants: demo.variants.slice(0, 1) };
    expect(outcome(() => compareVariants({ kitchen: alone }))).toBe(
      `The kitchen has one variant, ${demo.variants[0].name}: a second one, with trials of its own, gives something to compare.`,
    );
    expect(outcome(() => compareVariants({ kitchen: { ...demo, variants: [] } }))).toMatch(
      /^The kitchen has no variant: /,
    );
  });
});
