import { describe, expect, it } from "vitest";
import { reheatCard } from "../../../../kernel-lib/library/src/advice/card/reheat-card";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { celsius } from "../../../../kernel-lib/library/src/units/kitchen-units";
import type { KitchenUnits } from "../../../../kernel-lib/library/src/units/unit-table";

const kitchen = loadKitchen();

describe("reheatCard", () => {
  it("prints setting, load, time and the caution, and is ready when the window is", () => {
    const card = reheatCard({ kitchen, variantId: "turkey-sage" });
    expect(card.ready).toBe(true);
    expect(card.lines[0]).toBe("From frozen, pre-heat to 195 °C (385 °F).");
    expect(card.lines).toContain(`Take out after ${card.window.recommended.cardMin} min.`);
    expect(card.lines).toContain(
      "For pieces of a slab 11.7 mm (15/32 in) thick: 1500 g (3 lb 4.9 oz) on one half sheet.",
    );
    expect(card.lines).toContain("Tested in small basket only.");
    expect(card.lines.at(-1)).toMatch(/^Core at least 74 °C \(165 °F\) in every piece\. Raw inside/);
  });

  it("prints a setting in the kitchen's unit first, never a lower one in the other", () => {
    const first = (setpointC: number, units: KitchenUnits): string =>
      reheatCard({ kitchen: { ...kitchen, units }, variantId: "turkey-sage", setpointC, draws: 100 }).lines[0];
    expect(first(celsius("390 °F"), "us")).toBe("From frozen, pre-heat to 390 °F (199 °C).");
    expect(first(celsius("390 °F"), "metric")).toBe("From frozen, pre-heat to 199 °C (390 °F).");
    expect(first(200, "metric")).toBe("From frozen, pre-heat to 200 °C (395 °F).");
    expect(first(200, "us")).toBe("From frozen, pre-heat to 395 °F (200 °C).");
  });

  it("prints the start and the core in the kitchen's unit first", () => {
    const us = { ...kitchen, units: "us" as const };
    const card = reheatCard({ kitchen: us, variantId: "turkey-sage", startC: celsius("40 °F"), draws: 100 });
    expect(card.lines[0]).toMatch(/^From 40 °F \(4 °C\), pre-heat to /);
    expect(card.lines.at(-1)).toMatch(/^Core at least 165 °F \(74 °C\) in every piece\. Raw inside/);
  });

  it("speaks of no pan where a thickness was given, and of no test where there was none", () => {
    const untried = { ...kitchen, trials: kitchen.trials.filter(({ applianceId }) => applianceId !== "fan-oven") };
    const options = {
      kitchen: untried,
      variantId: "turkey-sage",
      thicknessMm: 10,
      applianceId: "fan-oven",
      draws: 100,
    };
    const { lines } = reheatCard(options);
    expect(lines).toContain("For pieces of a slab 10.0 mm (13/32 in) thick.");
    expect(lines).toContain("Not tested in fan oven yet.");
  });

  it("names the turn when there is one", () => {
    const card = reheatCard({ kitchen, variantId: "beet-lentil", turned: true });
    const turn = card.lines.find((line) => line.startsWith("Turn after "))!;
    expect(Number(/\d+/.exec(turn)?.[0])).toBeGreaterThan(card.window.recommended.cardMin / 2);
  });

  it("is not ready past the accepted time or beyond the trials, and says why", () => {
    const late = reheatCard({ kitchen, variantId: "beet-lentil", longestMin: 5 });
    expect(late.ready).toBe(false);
    expect(late.why.join("; ")).toContain("5 min accepted");
    expect(reheatCard({ kitchen, variantId: "beet-lentil", setpointC: 225 }).why.join("; ")).toContain(
      "outside the trials",
    );
  });
});
