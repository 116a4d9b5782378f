import { batchDay, type DayPlan, type DayStep, replanDay } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { describe, expect, test } from "vitest";

/** The demo's kitchen as one that says nothing of its day. */
const kitchen = { ...loadKitchen(), day: {}, traces: [] };
const plan = batchDay({
  kitchen,
  batches: [{ variantId: "turkey-sage" }, { variantId: "pollock-dill" }],
  places: { freezerPlaces: 4 },
  tries: 60,
});

/** When hands are wanted, from the steps alone. */
function handSpans(steps: readonly DayStep[]): { start: number; end: number }[] {
  return steps.flatMap(({ hands, coatMin, startMin, endMin }) =>
    hands === "none"
      ? []
      : hands === "all"
        ? [{ start: startMin, end: endMin }]
        : [
            { start: startMin, end: startMin + coatMin + 2 },
            { start: endMin - 2, end: endMin },
          ],
  );
}

/** Steps that overlap at the start of one of them, at most. */
function most(spans: readonly { readonly start: number; readonly end: number }[]): number {
  return Math.max(
    0,
    ...spans.map(
      ({ start }) => spans.filter((one) => one.start <= start && start < one.end && one.end > one.start).length,
    ),
  );
}

function expectSound({ steps }: DayPlan, { hands, freezer }: { hands: number; freezer: number }): void {
  expect(most(handSpans(steps))).toBeLessThanOrEqual(hands);
  for (const { start, end } of handSpans(steps)) {
    const at = start % 1440;
    expect(at >= 480 && at + end - start <= 1020).toBe(true);
    expect(at + end - start <= 720 || at >= 765).toBe(true);
  }
  const of = (variantId: string, kind: DayStep["kind"]): readonly DayStep[] =>
    steps
      .filter((step) => step.variantId === variantId && step.kind === kind)
      .sort((a, b) => (a.part?.[0] ?? 1) - (b.part?.[0] ?? 1));
  const places: { start: number; end: number }[] = [];
  for (const variantId of new Set(steps.map((step) => step.variantId))) {
    const [freeze] = of(variantId, "freeze");
    const [cut] = of(variantId, "cut");
    const trays = of(variantId, "freeze pieces");
    const loads = [...of(variantId, "coat"), ...of(variantId, "cook")];
    const packed = of(variantId, "pack");
    expect(of(variantId, "mix")[0].endMin).toBeLessThanOrEqual(of(variantId, "spread")[0].startMin);
    expect(freeze.startMin - of(variantId, "spread")[0].endMin).toBeLessThanOrEqual(60);
    expect(cut.startMin).toBeGreaterThanOrEqual(freeze.endMin);
    places.push(
      { start: freeze.startMin, end: cut.startMin },
      ...trays.map(({ startMin }, at) => ({ start: startMin, end: packed[at].startMin })),
    );
    for (const load of loads) {
      expect(load.startMin).toBeGreaterThanOrEqual(cut.endMin);
      // it is in the freezer early enough for 21 °C within 2 h, and not before the steam is off
      const [which, count] = load.part ?? [1, 1];
      const tray = trays[Math.floor(((which - 1) * trays.length) / count)];
      expect(tray.startMin - load.endMin).toBeLessThan(120);
      if (load.kind === "cook") expect(tray.startMin - load.endMin).toBeGreaterThan(15);
    }
    if (loads.length > 1) places.push({ start: cut.startMin, end: Math.max(...loads.map(({ startMin }) => startMin)) });
    for (const [at, { endMin }] of trays.entries()) expect(packed[at].startMin).toBeGreaterThanOrEqual(endMin);
  }
  expect(most(places)).toBeLessThanOrEqual(freezer);
}

describe("batchDay", () => {
  test("nothing is booked twice, breaks and nights are kept, and so are the limits of the cold", () => {
    expectSound(plan, { hands: 1, freezer: 4 });
    expect(plan.breaches).toEqual([]);
    expect(plan.steps.filter(({ kind }) => kind === "cook")).toHaveLength(5);
    expect(plan.steps.some(({ kind, variantId }) => kind === "cook" && variantId === "pollock-dill")).toBe(false);
  });

  test("who leaves when they may misses nothing", () => {
    expect(plan.away.length).toBeGreaterThan(0);
    for (const { from, until } of plan.away)
      for (const { start, end } of handSpans(plan.steps)) expect(end <= from || start >= until).toBe(true);
  });

  test("a wait carries its doubt, and slow air ends the day no sooner", () => {
    const waits = plan.steps.filter(({ readyMin }) => readyMin !== null);
    expect(waits.length).toBeGreaterThanOrEqual(4);
    for (const { readyMin, endMin } of waits) {
      const [earliest, latest] = readyMin as readonly [number, number];
      expect(earliest).toBeLessThan(endMin);
      expect(latest).toBeGreaterThan(endMin);
    }
    expect(plan.slowEndMin as number).toBeGreaterThanOrEqual(plan.endMin);
  });

  test("says what stands in, and that a plan is no thermometer", () => {
    expect(plan.notes[0]).toMatch(/^Not said, and so as usual \(our judgement\): hands from 8:00 to 17:00/);
    expect(plan.notes[0]).not.toMatch(/places in the freezer/);
    expect(plan.notes.join(" ")).toMatch(/turkey and sage sticks: cooked for 5 min, a stand-in/);
    expect(plan.cautions.join(" ")).toMatch(/no thermometer.*3-501\.14.*Local food codes/s);
  });

  test("refuses what cannot be", () => {
    const of = (more: object) => () => batchDay({ kitchen, batches: [{ variantId: "beet-lentil" }], ...more });
    expect(of({ batches: [] })).toThrow(/batches must be 1 to 20 products, got 0/);
    expect(of({ places: { opens: "9:00", closes: "8:00" } })).toThrow(/closes must be later than 9:00, got "8:00"/);
    expect(of({ places: { hands: 0 } })).toThrow(/hands must be a whole number from 1 to 50, got 0/);
    expect(of({ places: { freezerC: 4 } })).toThrow(/freezerC must be between -60 and -10 °C/);
    expect(of({ batches: [{ variantId: "beet-lentil", pans: 0 }] })).toThrow(/pans of beet-lentil must be/);
    expect(of({ batches: [{ variantId: "beet-lentil", cookMin: -1 }] })).toThrow(/cookMin of beet-lentil must be/);
  });
});

describe("batchDay in a kitchen that says what it has", () => {
  const own = loadKitchen();

  test("takes hours, hands, shelves and minutes from day.csv, and says so no more", () => {
    const day = batchDay({ kitchen: own, batches: [{ variantId: "turkey-sage" }], tries: 40 });
    expect(day.places).toMatchObject({ hands: 2, freezerC: -20, storedKg: 18, freezerPlaces: 3, stackUpTo: 3 });
    expect(day.notes.join(" ")).not.toMatch(/Not said/);
    expect(day.breaches).toEqual([]);
    expect(day.limits[0].cooked?.verdict).toBe("passes");
    expect(day.limits[0].wash?.verdict).toBe("passes");
  });

  test("where shelves run out pans stand above each other, if that ends the day sooner", () => {
    const places = { freezerPlaces: 1, hands: 2, airflow: "fan" as const, shelf: undefined };
    const batches = [{ variantId: "beet-lentil", pans: 3 }];
    const of = (freezerPlaces: number, stackUpTo: number) =>
      batchDay({ kitchen, batches, places: { ...places, freezerPlaces, stackUpTo }, tries: 40 });
    expect(() => of(1, 1)).toThrow(/No plan was found that fits into three days/);
    const high = of(1, 3);
    expect(high.stacked).toBeGreaterThan(1);
    expect(high.breaches).toEqual([]);
    // room for all: pans above each other would only freeze more slowly
    const wide = of(8, 3);
    expect(wide.stacked).toBe(1);
    expect(wide.endMin).toBeLessThan(high.endMin);
  });

  test("a weak freezer takes pans one after the other, and what lies there stays colder", () => {
    const batches = [{ variantId: "beet-lentil", pans: 3 }];
    const of = (freezerRemovesW: number) =>
      batchDay({ kitchen, batches, places: { freezerPlaces: 6, hands: 2, storedKg: 5, freezerRemovesW }, tries: 40 });
    const [weak, strong] = [of(60), of(2000)];
    expect(strong.freezer.keepsUp).toBe(true);
    expect(weak.notes.join(" ")).toMatch(
      /Not everything goes into the freezer as soon as it could, so that it keeps up/,
    );
    expect(weak.breaches).toEqual([]);
    expect(weak.endMin).toBeGreaterThan(strong.endMin);
    const again = replanDay({ plan: weak, now: weak.startMin + 60, fewer: { hands: 1 }, tries: 20 });
    expect(again.breaches).toEqual([]);
    expect(again.freezer.removesW).toBe(60);
  });
});

describe("replanDay", () => {
  test("what has begun stays, the rest comes from now on and is as sound as before", () => {
    const now = 600;
    const later = replanDay({ plan, now: "10:00", freezerSlower: 1.4, fewer: { freezer: 1 }, tries: 40 });
    expectSound(later, { hands: 1, freezer: 3 });
    for (const step of later.steps) {
      const before = plan.steps.find(({ id }) => id === step.id) as DayStep;
      if (before.startMin < now) expect(step.startMin).toBe(before.startMin);
      else expect(step.startMin).toBeGreaterThanOrEqual(now);
      const slower = ["freeze", "freeze pieces"].includes(step.kind) && before.endMin > now ? 1.4 : 1;
      expect(step.endMin - step.startMin).toBe(Math.ceil((before.endMin - before.startMin) * slower));
    }
    expect(later.breaches).toEqual([]);
    expect(later.endMin).toBeGreaterThanOrEqual(plan.endMin);
  });

  test("where too few places are left, pans go above each other and take longer, and that is said", () => {
    const own = loadKitchen();
    const batches = own.variants.slice(0, 3).map(({ variantId }) => ({ variantId }));
    const day = batchDay({ kitchen: own, batches, places: { freezerPlaces: 3, stackUpTo: 3, hands: 2 }, tries: 40 });
    expect(day.stacked).toBe(1);
    const later = replanDay({ plan: day, now: day.startMin + 60, fewer: { freezer: 2 }, tries: 20 });
    expect(later.stacked).toBe(3);
    expect(later.notes[0]).toMatch(/^No place is left for all: pans and trays now stand above each other/);
    expect(later.problem.resources.find(({ id }) => id === "freezer")?.capacity).toBe(3);
    const frozen = (steps: readonly DayStep[]) => steps.find(({ kind }) => kind === "freeze pieces") as DayStep;
    const lasts = ({ startMin, endMin }: DayStep): number => endMin - startMin;
    expect(lasts(frozen(later.steps))).toBeGreaterThan(1.2 * lasts(frozen(day.steps)));
  });

  test("a slab that is past its time is said to be", () => {
    const early = ["mix", "spread", "freeze"];
    const steps = plan.steps.map((step) => (early.includes(step.kind) ? step : { ...step, startMin: 1000 }));
    const late = replanDay({ plan: { ...plan, steps }, now: 900, tries: 20 });
    expect(late.breaches.join(" ")).toMatch(/cut begins \d+ after .*freeze, \d+ at most/);
  });

  test("refuses what the kitchen does not have", () => {
    expect(() => replanDay({ plan, now: "10:00", fewer: { tongs: 1 } })).toThrow(/fewer must be of hands, freezer/);
    expect(() => replanDay({ plan, now: "noon" })).toThrow(/now must be a time of day/);
    expect(() => replanDay({ plan, now: "10:00", freezerSlower: 0 })).toThrow(/freezerSlower must be between/);
  });
});
