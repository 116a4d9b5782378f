import { describe, expect, it } from "vitest";
import { nextTrial } from "../../../../kernel-lib/library/src/advice/trial/next-trial";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen();
const variantId = "turkey-sage";
const own = demo.trials.filter((trial) => trial.variantId === variantId);

function after(count: number): Kitchen {
  return { ...demo, trials: [...demo.trials.filter((trial) => !own.includes(trial)), ...own.slice(0, count)] };
}

/** One pan and one setting, to value fewer trials. */
const few = { without: demo.pans.map(({ id }) => id).filter((id) => id !== "half-sheet"), setpointsC: [195] } as const;

describe("the questions of nextTrial", () => {
  it("asks of the pans which batch to make it on, and decides between batches", () => {
    const next = nextTrial({ ...few, kitchen: after(6), variantId, question: { kind: "pan" } });
    expect(next.decision?.name).toMatch(/^\d+ g on the half sheet$/);
    expect(next.stopping.gain).toBeGreaterThan(0);
    expect(next.candidates[0].reason).toMatch(/; it /);
  });

  it("asks of the dial which setting: candidates at each of them", () => {
    const setpointsC = [185, 205];
    const next = nextTrial({ kitchen: after(6), variantId, question: { kind: "setpoint" }, ...few, setpointsC });
    expect(next.decision?.name).toMatch(/^(185|205) °C$/);
    expect([...new Set(next.candidates.map(({ setpointC }) => setpointC))].toSorted()).toEqual(setpointsC);
  });

  it("asks of the card whether it can become ready: not by one trial where two are missing", () => {
    const early = nextTrial({ ...few, kitchen: after(4), variantId, question: { kind: "card" } });
    for (const { gain } of early.candidates) expect(gain).toBe(0);
    expect(early.stopping.stop).toBe(false);
    expect(early.candidates[0].reason).toContain("it brings");
  });

  it("asks of two variants which does better: nothing is gained where one is sure to", () => {
    const question = { kind: "difference", other: "beet-lentil" } as const;
    const next = nextTrial({ ...few, kitchen: after(3), variantId, question });
    expect(next.decision).toEqual({ name: "beet and lentil bites", timeMin: null, success: expect.any(Number) });
    expect(next.decision?.success).toBeGreaterThan(0.9);
    for (const { gain } of next.candidates) expect(gain).toBeLessThan(0.1);
    expect(() => nextTrial({ kitchen: demo, variantId, question: { kind: "difference", other: variantId } })).toThrow(
      'nextTrial: question must name another variant than the one that is asked about, got "turkey-sage"',
    );
  });

  it("chooses the question from what the log leaves open, and says why", () => {
    expect(nextTrial({ ...few, kitchen: after(2), variantId }).questionSentence).toMatch(
      /^The question: which time to print, as the best safe time does in \d+ % and a card asks for 90 %\.$/,
    );
    const long = demo.variants.map((variant) =>
      variant.variantId === variantId ? { ...variant, longestMin: 9 } : variant,
    );
    expect(nextTrial({ ...few, kitchen: { ...demo, variants: long }, variantId }).questionSentence).toBe(
      "The question: which pan and batch to make turkey and sage sticks on, as the batch is too thick for its window.",
    );
  });

  it("says what to change where a question cannot be put", () => {
    const sheet = demo.pans.filter(({ id }) => id === "half-sheet");
    const shallow = sheet.map((pan) => ({ ...pan, depthMm: 12.4 }));
    const variants = demo.variants.map((variant) => ({ ...variant, batchG: 1500 }));
    expect(() =>
      nextTrial({
        kitchen: { ...after(2), pans: shallow, variants },
        variantId,
        question: { kind: "pan" },
        without: ["half-sheet"],
      }),
    ).toThrow(
      "No pan of this kitchen takes turkey and sage sticks at a second thickness: add a deeper or larger pan to pans.csv, or ask which time to print.",
    );
    expect(() =>
      nextTrial({ kitchen: after(2), variantId, question: { kind: "setpoint" }, setpointsC: [195] }),
    ).toThrow(
      "The small basket has one setting to choose from, 195 °C: name a second one between 130 and 290 °C under setpointsC, or ask which time to print.",
    );
  });
});
