import { describe, expect, it } from "vitest";
import { otherPans } from "../../../../kernel-lib/library/src/advice/window/other-pans";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const pans = otherPans({ kitchen, variantId: "beet-lentil", draws: 300 });
const on = (panId: string) => pans.pans.find((pan) => pan.panId === panId)!;

describe("otherPans", () => {
  it("has a verdict for every pan of the kitchen, in its order", () => {
    expect(pans.pans.map((pan) => pan.panId)).toEqual(kitchen.pans.map((pan) => pan.id));
    for (const pan of pans.pans) expect(pan.verdict.length).toBeGreaterThan(5);
    expect(pans.limit.caution).toContain("Local food codes");
  });

  it("keeps the pan the batch was tuned on, and finds the small one too thick", () => {
    expect(on("half-sheet")).toMatchObject({ advice: "keep", remedies: [] });
    expect(on("quarter-sheet").advice).toBe("too thick");
    expect(on("quarter-sheet").verdict).toMatch(
      /^too thick: every core of 99 of 100 loads is safe only from [\d.]+ min and it is crisp only at [\d.]+ min, after the 14 min accepted$/,
    );
    expect(on("eighth-sheet").advice).toBe("does not fit");
    expect(on("mini-wells").advice).toBe("other kind of pan");
  });

  it("gives remedies in their order, each with its predicted effect", () => {
    const { remedies } = on("quarter-sheet");
    const order = ["reduce the batch", "split over pans", "cut smaller", "lower setpoint, longer", "less load", "turn"];
    const places = remedies.map((remedy) => order.indexOf(remedy.change));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(remedies.map((remedy) => remedy.change)).toEqual(
      expect.arrayContaining(["reduce the batch", "split over pans", "turn"]),
    );
    const [reduce, split] = remedies;
    for (const remedy of [reduce, split]) {
      expect(remedy.success).toBeGreaterThan(0.9);
      expect(remedy.cardMin).toBeLessThanOrEqual(14);
    }
    expect(split.sentence).toMatch(
      /^split over 2 quarter sheets, \d+\.\d mm thick: card [\d.]+ min, chance of success/,
    );
  });

  it("says what would do for a batch that no pan of the kitchen holds, its own neither", () => {
    const own = otherPans({ kitchen, variantId: "beet-lentil", batchG: 9000, panIds: ["half-sheet"], draws: 200 });
    expect(own.pans.map(({ panId, advice }) => [panId, advice])).toEqual([["half-sheet", "does not fit"]]);
    expect(own.pans[0].remedies[0].sentence).toMatch(/^reduce the batch to \d+ g/);
  });

  it("offers less load when the floor is crowded, and cutting smaller when the core is last", () => {
    const crowded = otherPans({ kitchen, variantId: "beet-lentil", loadFraction: 1, draws: 200 });
    const changes = crowded.pans.find((pan) => pan.panId === "quarter-sheet")!.remedies.map((remedy) => remedy.change);
    expect(changes).toContain("less load");
    const soft = otherPans({ kitchen, variantId: "turkey-sage", tooBrownScore: 0.5, draws: 200 });
    const thick = soft.pans.find((pan) => pan.panId === "quarter-sheet")!;
    expect(thick.remedies.some((remedy) => remedy.change === "cut smaller")).toBe(thick.window?.waitsFor === "core");
  });

  it("leaves out changes of hardly a chance, and says once where none promises success", () => {
    const hopeless = otherPans({ kitchen, variantId: "beet-lentil", tooBrownScore: 0.5, tooDryPercent: 4, draws: 200 });
    const sheet = hopeless.pans.find((pan) => pan.panId === "quarter-sheet")!;
    expect(sheet.window?.open).toBe(false);
    expect(sheet.remedies).toEqual([]);
    const told = hopeless.pans.filter(({ verdict }) => verdict.includes("no change that was tried promises success ("));
    expect(told.length).toBeGreaterThan(0);
    for (const { remedies, verdict } of told) {
      expect(remedies).toEqual([]);
      expect(verdict.match(/promises success \(([a-z ,;]+)\)$/)![1].length).toBeGreaterThan(3);
    }
    for (const { remedies } of [...pans.pans, ...hopeless.pans])
      for (const { standing, success } of remedies)
        expect(standing === "outside what was tried" || success >= 0.05).toBe(true);
  });
});
