import { describe, expect, it } from "vitest";
import { crispWindow } from "../../../../kernel-lib/library/src/advice/window/crisp-window";
import { otherPans } from "../../../../kernel-lib/library/src/advice/window/other-pans";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { windowPansTable } from "../../../../kernel-lib/library/src/views/advice/window-pans-table";
import { windowConstantsTable } from "../../../../kernel-lib/library/src/views/crisp/window-constants-table";
import { windowTable } from "../../../../kernel-lib/library/src/views/crisp/window-table";
import { tableText } from "../../../../kernel-lib/library/src/views/table/table-text";

const kitchen = loadKitchen();
const window = crispWindow({ kitchen, variantId: "turkey-sage", draws: 300 });

describe("windowTable", () => {
  it("has every moment with its interval, and the caution under it", () => {
    const table = windowTable(window);
    const crisp = table.rows.find(([name]) => name === "crisp")!;
    expect(crisp.slice(1)).toEqual([window.crisp.min, ...window.crisp.interval95]);
    expect(table.notes).toContain(window.limit.caution);
    for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    expect(tableText(table)).toContain("card time");
  });
});

describe("windowConstantsTable", () => {
  it("has one row a constant, with what the prior said and what would tell more", () => {
    const table = windowConstantsTable(window.calibration);
    expect(table.rows).toHaveLength(window.calibration.constants.length);
    const turn = table.rows.find(([label]) => String(label).includes("turning"))!;
    expect(turn.at(-1)).toContain("with and without a turn");
    expect(Number(turn[5])).toBeLessThan(1);
    const coefficient = table.rows.find(([label]) => String(label).includes("small-basket"))!;
    expect(Number(coefficient[5])).toBeGreaterThan(90);
    expect(coefficient.at(-1)).toBe(null);
  });
});

describe("windowPansTable", () => {
  it("has one row a pan, remedies numbered in order", () => {
    const pans = otherPans({ kitchen, variantId: "turkey-sage", calibration: window.calibration, draws: 200 });
    const table = windowPansTable(pans);
    expect(table.rows.map(([name]) => name)).toEqual(pans.pans.map((pan) => pan.panName));
    const quarter = pans.pans.find((pan) => pan.panId === "quarter-sheet")!;
    expect(table.rows.find(([name]) => name === "quarter sheet")?.at(-1)).toBe(quarter.remedies[0].sentence);
    const note = table.notes.find((each) => each.startsWith("quarter sheet: 1. "))!;
    quarter.remedies.forEach((remedy, at) => {
      expect(note).toContain(`${at + 1}. ${remedy.sentence}`);
    });
    expect(table.notes.join(" ")).toContain("Core at least 74 °C");
  });
});
