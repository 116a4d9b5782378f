import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { cardOfWindow, reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { crispWindow, type KitchenWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { coreLimit } from "../../../../kernel-lib/library/src/safety/core-limit";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen();
const raw = demo.variants.filter(
  ({ formula }) => formula.foodClass === "poultry" || formula.foodClass === "groundMeat",
);
const [variant] = raw;
const { variantId, applianceId } = variant;
const own = demo.trials.filter((trial) => trial.variantId === variantId);

interface Card {
  readonly trials: readonly KitchenTrial[];
  readonly window: KitchenWindow;
}

const highest = ({ coreC, restedCoreC }: KitchenTrial): number | null =>
  coreC === null ? restedCoreC : Math.max(coreC, restedCoreC ?? coreC);
const unread = (trial: KitchenTrial): KitchenTrial => ({ ...trial, coreC: null, restedCoreC: null });
const without = (trials: readonly KitchenTrial[], holds: (core: number) => boolean): KitchenTrial[] =>
  trials.map((trial) => (holds(highest(trial) ?? 1e3) ? unread(trial) : trial));
const withWindow = (card: Card, change: Partial<KitchenWindow>): Card => ({
  ...card,
  window: { ...card.window, ...change },
});

/** One way to break each gate, by the name of its condition. */
const BREAKS: readonly (readonly [gate: string, how: (card: Card) => Card])[] = [
  ["enough trials", (card) => ({ ...card, trials: card.trials.slice(0, 5) })],
  ["two thicknesses", (card) => ({ ...card, trials: card.trials.map((trial) => ({ ...trial, thicknessMm: 12 })) })],
  [
    "cores still climbing",
    (card) => ({ ...card, trials: without(card.trials, (core) => core < card.window.limit.limitC + 10) }),
  ],
  [
    "cores at the limit",
    (card) => ({ ...card, trials: without(card.trials, (core) => core >= card.window.limit.limitC && core < 1e3) }),
  ],
  [
    "no cold core",
    (card) => {
      const { setting, recommended, limit } = card.window;
      const cold: KitchenTrial = {
        ...card.trials[0],
        trialId: "cold",
        applianceId,
        thicknessMm: setting.thicknessMm,
        setpointC: setting.setpointC,
        loadFraction: setting.loadFraction,
        startC: setting.startC,
        timeMin: Math.max(recommended.cardMin, 1),
        coreC: limit.limitC - 1,
        restedCoreC: null,
      };
      return { ...card, trials: [...card.trials, cold] };
    },
  ],
  ["inside what was logged", (card) => withWindow(card, { standing: "on the edge of what was tried" })],
  ["inside what was logged", (card) => withWindow(card, { extrapolation: ["something lies outside"] })],
  ["no contradiction", (card) => withWindow(card, { doubts: ["a doubt"] })],
  [
    "no contradiction",
    (card) => withWindow(card, { calibration: { ...card.window.calibration, converged: false, reason: "test" } }),
  ],
  [
    "no contradiction",
    (card) =>
      withWindow(card, {
        calibration: { ...card.window.calibration, contradictions: [{ trials: [], sentence: "they disagree" }] },
      }),
  ],
  ["window open in time", (card) => withWindow(card, { open: false })],
  [
    "window open in time",
    (card) =>
      withWindow(card, {
        recommended: { ...card.window.recommended, cardMin: card.window.setting.longestMin + 0.5 },
      }),
  ],
  ["chance of success", (card) => withWindow(card, { recommended: { ...card.window.recommended, success: 0.899 } })],
];

describe("the gates of a card for a raw product", () => {
  let whole: Card;
  beforeAll(() => {
    whole = { trials: own, window: crispWindow({ kitchen: demo, variantId, draws: 1000 }) };
  });
  const cardOf = ({ trials, window }: Card) => cardOfWindow({ kitchen: { ...demo, trials }, window });

  it("are all met by the demo's log, so that each break is what closes it", () => {
    expect(raw.length).toBeGreaterThan(0);
    expect(cardOf(whole).ready).toBe(true);
    for (const [gate, how] of BREAKS) {
      const unmet = cardOf(how(whole)).evidence.filter(({ met }) => !met);
      expect(unmet.map(({ name }) => name)).toContain(gate);
    }
    expect(new Set(BREAKS.map(([gate]) => gate))).toEqual(new Set(cardOf(whole).evidence.map(({ name }) => name)));
  });

  it("leave no card ready while any of them is broken, whatever else holds", () => {
    fc.assert(
      fc.property(fc.subarray([...BREAKS]), (breaks) => {
        const card = cardOf(breaks.reduce((so, [, how]) => how(so), whole));
        expect(card.ready).toBe(breaks.length === 0);
        expect(card.why.length > 0).toBe(breaks.length > 0);
        expect(card.missing.length).toBe(card.why.length);
      }),
    );
  });

  it("hold a printed time to the core of its raw class, with cores read on both sides, whatever part of the log there is", () => {
    const part = fc.record({
      trials: fc.subarray([...own], { minLength: 4 }),
      unread: fc.array(fc.boolean(), { minLength: own.length, maxLength: own.length }),
      thinner: fc.double({ min: 0.8, max: 1.2, noNaN: true }),
    });
    let ready = 0;
    fc.assert(
      fc.property(part, ({ trials, unread: skip, thinner }) => {
        const logged = trials.map((trial, at) => (skip[at] && skip[(at + 1) % skip.length] ? unread(trial) : trial));
        const kitchen: Kitchen = { ...demo, trials: logged };
        const card = reheatCard({
          kitchen,
          variantId,
          thicknessMm: thinner * whole.window.setting.thicknessMm,
          draws: 400,
        });
        const { limit, recommended, chances } = card.window;
        expect(limit.limitC).toBeGreaterThanOrEqual(coreLimit(variant.formula.foodClass).limitC);
        expect(recommended.cardMin).toBeGreaterThanOrEqual(chances.safeFromMin - 1e-9);
        if (!card.ready) return;
        ready++;
        const cores = logged
          .filter((trial) => trial.applianceId === applianceId)
          .map((trial) => highest(trial) ?? -1e3);
        expect(cores.filter((core) => core >= limit.limitC).length).toBeGreaterThanOrEqual(3);
        expect(cores.filter((core) => core > -1e3 && core < limit.limitC + 10).length).toBeGreaterThanOrEqual(3);
      }),
      { numRuns: 24 },
    );
    expect(ready).toBeGreaterThan(0);
  }, 60_000);
});
