import { loadChoices } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { wholePieces } from "slabwright/pan";
import { loadChoicesTable } from "slabwright/views";
import { describe, expect, test } from "vitest";

const kitchen = loadKitchen();
const of = (more: Partial<Parameters<typeof loadChoices>[0]> = {}) =>
  loadChoices({ kitchen, variantId: "beet-lentil", pieces: 60, draws: 200, ...more });

describe("loadChoices", () => {
  test("loads hold all pieces, no more than lie whole on the floor, and minutes add up", () => {
    const places = { minutes: { fillOven: 2, emptyOven: 3, recover: 4 } };
    const quiet = { ...kitchen, traces: [] };
    const { choices } = of({ kitchen: quiet, places });
    expect(choices.map(({ totalMin }) => totalMin)).toEqual(
      [...choices.map(({ totalMin }) => totalMin)].sort((a, b) => a - b),
    );
    for (const one of choices) {
      expect(one.loads * one.piecesPerLoad).toBeGreaterThanOrEqual(60);
      expect((one.loads - 1) * one.piecesPerLoad).toBeLessThan(60);
      expect(one.totalMin).toBeCloseTo(one.loads * (5 + one.cookMin) + (one.loads - 1) * 4, 9);
      expect(one.handsMin).toBe(5 * one.loads);
      expect(one.waitsMin).toBeCloseTo(one.totalMin - 5 - one.cookMin, 9);
    }
  });

  test("a fuller floor takes longer and fewer loads", () => {
    const { choices } = of();
    const longer: number[] = [];
    for (const applianceId of ["small-basket", "fan-oven"]) {
      const [loose, full] = ["loose", "full"].map((fill) =>
        choices.find((one) => one.applianceId === applianceId && one.fill === fill),
      );
      longer.push((full?.cookMin as number) - (loose?.cookMin as number));
      expect(full?.loads as number).toBeLessThan(loose?.loads as number);
    }
    // times are told to half a minute: a little more may not show
    for (const min of longer) expect(min).toBeGreaterThanOrEqual(0);
    expect(longer[0] + longer[1]).toBeGreaterThan(0);
  });

  test("a round floor holds whole pieces, not its area", () => {
    const round = { shape: "round" as const, diameterMm: 228 };
    const appliances = kitchen.appliances.map((one) => ({ ...one, floorCm2: 408, floorShape: round }));
    const { choices } = of({ kitchen: { ...kitchen, appliances } });
    const full = choices.find(({ fill }) => fill === "full");
    const [lengthMm, widthMm] = [41.2, 40.714];
    expect(full?.piecesPerLoad).toBeLessThanOrEqual(wholePieces({ floor: round, piece: { lengthMm, widthMm } }).pieces);
    expect(full?.byArea as number).toBeGreaterThan(full?.piecesPerLoad as number);
    const flat = kitchen.appliances.map(({ floorShape, ...one }) => one);
    expect(of({ kitchen: { ...kitchen, appliances: flat } }).notes.join(" ")).toMatch(/counted by area/);
  });

  test("several of an appliance work side by side", () => {
    const one = of({ places: { appliances: { "small-basket": 1 } } }).choices.filter(({ fill }) => fill === "loose");
    const two = of({ places: { appliances: { "small-basket": 2 } } }).choices.filter(({ fill }) => fill === "loose");
    const basket = (all: typeof one) => all.find(({ applianceId }) => applianceId === "small-basket");
    expect(basket(two)?.totalMin as number).toBeLessThan(basket(one)?.totalMin as number);
    expect(basket(two)?.handsMin).toBe(basket(one)?.handsMin);
  });

  test("its sentence and its table say loads, minutes, hands and how often it is right; strangers are refused", () => {
    const choices = of();
    expect(choices.sentence).toMatch(
      /^60 pieces of .*, soonest: .* min in all, hands for \d+, \d+ of 100 pieces right\./,
    );
    expect(loadChoicesTable(choices).rows[0]).toHaveLength(loadChoicesTable(choices).columns.length);
    expect(() => of({ pieces: 0 })).toThrow(/pieces must be a whole number/);
  });
});
