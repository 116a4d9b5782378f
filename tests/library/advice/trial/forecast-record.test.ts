import { describe, expect, it } from "vitest";
import { forecastRecord } from "../../../../kernel-lib/library/src/advice/trial/forecast-record";
import { LOOSE_LOAD } from "../../../../kernel-lib/library/src/crisp/clocks/load-effect";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { forecastFigure } from "../../../../kernel-lib/library/src/views/crisp/forecast-figure";
import { forecastTable } from "../../../../kernel-lib/library/src/views/crisp/forecast-table";

const kitchen = loadKitchen();
const variantId = "pollock-dill";
const own = kitchen.trials.filter((trial) => trial.variantId === variantId);
const record = forecastRecord({ kitchen, variantId });

describe("forecastRecord", () => {
  it("forecasts from earlier mornings only", () => {
    for (const forecast of record.forecasts) {
      const trial = own.find((each) => each.trialId === forecast.trialId)!;
      expect(forecast.from).toBe(own.filter((each) => each.date < trial.date).length);
      expect(forecast.from).toBeGreaterThanOrEqual(3);
    }
    const first = own.map((trial) => trial.date).sort()[0];
    expect(record.forecasts.some(({ trialId }) => own.find((each) => each.trialId === trialId)!.date === first)).toBe(
      false,
    );
  });

  it("does not see what it forecasts: a trial's own numbers change only what it is held against", () => {
    const last = own.toSorted((a, b) => a.date.localeCompare(b.date)).at(-1)!;
    const wrong = {
      ...kitchen,
      trials: kitchen.trials.map((trial) =>
        trial.date === last.date && trial.variantId === variantId ? { ...trial, coreC: 20 } : trial,
      ),
    };
    const changed = forecastRecord({ kitchen: wrong, variantId });
    const of = (all: typeof record) =>
      all.forecasts.filter((each) => each.trialId === last.trialId && each.of === "core (°C)");
    expect(of(changed).map((each) => each.interval90)).toEqual(of(record).map((each) => each.interval90));
    expect(of(changed).every((each) => !each.held)).toBe(true);
    expect(changed.held).toBeLessThan(record.held);
  });

  it("forecasts a trial whose load was not logged as a loose single layer", () => {
    const unlogged = (loadFraction: number | null) => ({
      ...kitchen,
      trials: own.map((trial) => ({ ...trial, loadFraction })),
    });
    expect(forecastRecord({ kitchen: unlogged(null), variantId })).toEqual(
      forecastRecord({ kitchen: unlogged(LOOSE_LOAD), variantId }),
    );
  });

  it("counts by what the trial changed, and says so in one sentence", () => {
    expect(record.byKind.reduce((sum, { made }) => sum + made, 0)).toBe(record.made);
    expect(record.sentence).toBe(
      `Of ${record.made} forecasts at 90 %, ${record.held} held (${Math.round((100 * record.held) / record.made)} %).`,
    );
    const young = { ...kitchen, trials: own.slice(0, 2) };
    expect(forecastRecord({ kitchen: young, variantId }).sentence).toMatch(/^No trial could be forecast yet: /);
  });

  it("takes a card that was followed into its score", () => {
    const [one, two] = own;
    const trials = [
      { ...one, card: "card of March", coreC: 80, crispMin: 9 },
      { ...two, card: "card of March", coreC: 60, crispMin: null, notCrispMin: 9 },
    ];
    const { cards, sentence } = forecastRecord({ kitchen: { ...kitchen, trials }, variantId });
    expect(cards).toEqual([
      { trialId: one.trialId, card: "card of March", safe: true, crisp: true },
      { trialId: two.trialId, card: "card of March", safe: false, crisp: false },
    ]);
    const variants = kitchen.variants.map((variant) => ({ ...variant, limit: { ...variant.limit, limitC: 85 } }));
    const stricter = forecastRecord({ kitchen: { ...kitchen, trials, variants }, variantId });
    expect(stricter.cards.map((card) => card.safe)).toEqual([false, false]);
    expect(sentence).toContain("Cards followed 2 times: core at its limit in 1 of 2 read, crisp in 1 of 2 looked at.");
  });
});

describe("forecastFigure and forecastTable", () => {
  it("show every forecast, with the misses outside ±1", () => {
    const marks = forecastFigure(record).data as unknown as { y: number[] }[];
    const misses = marks.flatMap((trace) => trace.y);
    expect(misses).toHaveLength(record.made);
    expect(misses.filter((miss) => Math.abs(miss) > 1 + 1e-9)).toHaveLength(record.made - record.held);
    const table = forecastTable(record);
    expect(table.rows.at(-1)).toEqual(["all", record.made, record.held, (100 * record.held) / record.made]);
  });
});
