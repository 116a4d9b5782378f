import { describe, expect, it } from "vitest";
import { benchSheet } from "../../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { csvLine } from "../../../../kernel-lib/library/src/check/csv-line";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen } from "../../../../kernel-lib/library/src/trials/kitchen";
import { logHeadings } from "../../../../kernel-lib/library/src/trials/log/log-fields";
import { newTrial } from "../../../../kernel-lib/library/src/trials/log/new-trial";
import { readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import { logCells, writtenColumns } from "../../../../kernel-lib/library/src/trials/log/write/log-cells";
import { type Trial, TrialSchema } from "../../../../kernel-lib/library/src/trials/trial";

const demo = loadKitchen();
const kitchens: readonly Kitchen[] = [demo, { ...demo, units: "us" }];
const plans = [
  { variantId: "beet-lentil", thicknessMm: 9, timeMin: 10, looksMin: [8, 9, 10], loadFraction: 0.6 },
  { variantId: "turkey-sage", panId: "quarter-sheet" },
  { variantId: "beet-lentil" },
];

/** What a cook would write under each heading for a trial of the log. */
function writtenFor(trial: Trial, headings: readonly string[]): readonly string[] {
  return logCells({ ...trial, extra: {} }, writtenColumns(headings, "sheet"), { file: "sheet", places: "exact" });
}

describe("benchSheet", () => {
  it.each(kitchens)("has the headings of a new log and no other, in its order", (kitchen) => {
    const { rows } = benchSheet({ kitchen, trials: plans });
    expect(rows.map(({ heading }) => heading)).toEqual(logHeadings(kitchen.units));
    expect(rows.every(({ cells }) => cells.length === plans.length)).toBe(true);
  });

  it.each(kitchens)("gives a trial back that is written under its headings and read by name", (kitchen) => {
    const headings = benchSheet({ kitchen, trials: plans }).rows.map(({ heading }) => heading);
    for (const kitchenTrial of demo.trials.slice(0, 40)) {
      const trial = TrialSchema.parse({ ...kitchenTrial, thicknessMm: undefined, thicknessSdMm: undefined }) as Trial;
      const cells = writtenFor(trial, headings);
      // the columns of a person's log stand in an order of their own
      const order = headings.map((_, at) => at).reverse();
      const line = (texts: readonly string[]): string =>
        csvLine(
          order.map((at) => texts[at]),
          ",",
        );
      const { records, problems } = readTrials(`${line(headings)}\n${line(cells)}\n`, "log.csv");
      expect(problems).toEqual([]);
      expect(records).toEqual([trial]);
    }
  });

  it.each(kitchens)("prints names, pans and appliances that logTrial takes as they stand", (kitchen) => {
    const sheet = benchSheet({ kitchen, trials: plans });
    plans.forEach((plan, at) => {
      const printed = sheet.rows.flatMap(({ heading, cells }) => {
        const { printed: text } = cells[at];
        return text === null ? [] : [[heading, text] as const];
      });
      const typed = { ...Object.fromEntries(printed), time_min: 9, setpoint_c: 200, batch_g: 1000 };
      const { trial } = newTrial({ kitchen, typed, today: "2026-05-04" });
      expect(trial.trialId).toBe(sheet.trialIds[at]);
      expect(trial.variantId).toBe(plan.variantId);
      expect(trial.panId).toBe(plan.panId ?? "half-sheet");
    });
    expect(new Set(sheet.trialIds).size).toBe(plans.length);
  });

  it("prints nothing that must be measured: its plan stands beside the blank", () => {
    const { rows } = benchSheet({ kitchen: demo, trials: plans });
    const printed = rows.filter(({ cells }) => cells.some((cell) => cell.printed !== null));
    expect(printed.map(({ heading }) => heading)).toEqual(["trial", "variant", "pan", "appliance"]);
    expect(rows.find(({ heading }) => heading === "looks_min")?.cells[0].plan).toBe("plan 8; 9; 10 min");
    expect(rows.find(({ heading }) => heading === "looks_min")?.cells[1].plan).toBeNull();
  });

  it("has the core limit beside every core, and the cautions of all", () => {
    const { rows, cautions } = benchSheet({ kitchen: demo, trials: plans });
    expect(rows.find(({ heading }) => heading === "core_c")?.cells.map(({ plan }) => plan)).toEqual(
      Array(3).fill("to be eaten: 74 °C or more"),
    );
    expect(cautions.join("\n")).toContain("Check the thickest piece");
    expect(cautions.find((one) => one.includes("The pieces are raw"))).toMatch(/^turkey and sage sticks: /);
    const fish = benchSheet({ kitchen: { ...demo, units: "us" }, trials: [{ variantId: "pollock-dill" }] });
    expect(fish.rows.find(({ heading }) => heading === "core_f")?.cells[0].plan).toBe(
      "to be eaten: 155 °F or more, for 17 s",
    );
  });

  it("refuses what cannot be planned", () => {
    expect(() => benchSheet({ kitchen: demo, trials: [] })).toThrow("must hold a trial to run");
    expect(() => benchSheet({ kitchen: demo, trials: [{ variantId: "beet-lentil", panId: "no-pan" }] })).toThrow(
      "no-pan",
    );
    expect(() => benchSheet({ kitchen: demo, trials: [{ variantId: "beet-lentil", timeMin: -1 }] })).toThrow(
      "benchSheet: timeMin of BL-33 must be > 0 min, got -1",
    );
  });
});
