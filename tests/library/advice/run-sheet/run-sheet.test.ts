import { describe, expect, it } from "vitest";
import { runSheet } from "../../../../kernel-lib/library/src/advice/run-sheet/run-sheet";
import { trialPlan } from "../../../../kernel-lib/library/src/advice/run-sheet/trial-plan";
import { csvLine } from "../../../../kernel-lib/library/src/check/csv-line";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import { logCells, writtenColumns } from "../../../../kernel-lib/library/src/trials/log/write/log-cells";
import { type Trial, TrialSchema } from "../../../../kernel-lib/library/src/trials/trial";
import { runSheetCsv } from "../../../../kernel-lib/library/src/views/plan/run-sheet-csv";
import { runSheetPage } from "../../../../kernel-lib/library/src/views/plan/run-sheet-page";
import { runSheetTable } from "../../../../kernel-lib/library/src/views/plan/run-sheet-table";

const demo = loadKitchen();
const trials = [1, 2, 3, 4, 5].map((at) => ({
  variantId: at < 4 ? "beet-lentil" : "turkey-sage",
  batchG: 700 + at,
  timeMin: 10 + at,
  looksMin: [8, 9],
  purpose: at === 1 ? 'what, if "early"?' : undefined,
  session: at < 4 ? 1 : 2,
}));
const planOf = (kitchen: typeof demo) => trialPlan({ kitchen, name: "monday", trials, today: "2026-05-04" });

describe("runSheet", () => {
  it.each([demo, { ...demo, units: "us" as const }])(
    "says batch, pan, cut, setting and looks of every trial",
    (kitchen) => {
      const plan = planOf(kitchen);
      const { lines, sheet, cautions } = runSheet({ kitchen, plan });
      expect(lines.map(({ trialId }) => trialId)).toEqual(plan.trials.map(({ trialId }) => trialId));
      expect(lines[0].batch).toMatch(
        kitchen.units === "us" ? /oz \(701 g\) on the half sheet/ : /^701 g .*on the half sheet/,
      );
      expect(lines[0].cut).toMatch(/^cut \d+ by \d+ into \d+$/);
      expect(lines[0].times).toBe("look at 8, 9 min; out at 11 min");
      expect(sheet.sessions).toEqual([1, 1, 1, 2, 2]);
      expect(cautions.length).toBeGreaterThan(2);
    },
  );
});

describe("runSheetCsv", () => {
  it.each([demo, { ...demo, units: "us" as const }])("filled in, reads back trial for trial", (kitchen) => {
    const csv = runSheetCsv(runSheet({ kitchen, plan: planOf(kitchen) }));
    const lines = csv.trimEnd().split("\n");
    const at = lines.findIndex((line) => line.startsWith("trial,"));
    const headings = lines[at].split(",");
    const logged = demo.trials.filter(({ variantId }) => variantId === "beet-lentil").slice(0, 3);
    const filled = logged.map((trial, run) => {
      const [own] = lines
        .slice(at + 1)
        .filter((line) => !line.startsWith("#"))
        .slice(run);
      const id = own.split(",")[0];
      const known = TrialSchema.parse({
        ...trial,
        trialId: id,
        thicknessMm: undefined,
        thicknessSdMm: undefined,
      }) as Trial;
      return {
        known,
        line: csvLine(
          logCells({ ...known, extra: {} }, writtenColumns(headings, "sheet"), { file: "sheet", places: "exact" }),
          ",",
        ),
      };
    });
    const text = [...lines.slice(0, at + 1), ...filled.flatMap(({ line }) => ["# turn, as planned", line])].join("\n");
    const { records, problems } = readTrials(`${text}\n`, "monday.csv");
    expect(problems).toEqual([]);
    expect(records).toEqual(filled.map(({ known }) => known));
  });

  it("prints names and leaves blank what is measured; cautions stand above", () => {
    const csv = runSheetCsv(runSheet({ kitchen: demo, plan: planOf(demo) }));
    const rows = csv.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
    expect(rows.length).toBe(6);
    expect(rows[1]).toMatch(/^BL-\d+,,beet-lentil,half-sheet,small-basket,,,/);
    expect(rows[1]).toContain('"what, if ""early""?"');
    expect(csv).toContain("# turn 1, morning 1, BL-33: 701 g (");
    expect(csv).toMatch(/^# .*74 °C/m);
  });
});

describe("runSheetPage", () => {
  const page = runSheetPage(runSheet({ kitchen: { ...demo, name: "Nook & <b>Cranny</b>" }, plan: planOf(demo) }));
  const count = (what: RegExp): number => (page.match(what) ?? []).length;

  it("has an overview a morning, then two trials a page, never of two mornings", () => {
    expect(count(/<section class="overview">/g)).toBe(2);
    expect(count(/<section>/g)).toBe(3);
    const parts = [...page.matchAll(/<section>.*?<\/section>/gs)].map(([text]) => [
      ...new Set(text.match(/\b(BL|TS)-\d+\b/g)),
    ]);
    expect(parts.map((ids) => ids.length)).toEqual([2, 1, 2]);
    expect(parts.slice(0, 2).flat()).toEqual(["BL-33", "BL-34", "BL-35"]);
    expect(parts[2].every((id) => id.startsWith("TS-"))).toBe(true);
  });

  it("carries the cautions on every page, takes nothing from elsewhere, and escapes names", () => {
    expect(count(/Local food codes/g)).toBeGreaterThanOrEqual(5);
    expect(page).not.toMatch(/<script|<link|<img|https?:|url\(/);
    expect(page).not.toContain("<b>");
  });

  it("shows one morning alone where that is asked", () => {
    const run = runSheet({ kitchen: demo, plan: planOf(demo) });
    expect(runSheetTable(run).rows.length).toBe(5);
    expect(runSheetTable(run, 2).rows.map(([turn]) => turn)).toEqual([4, 5]);
    expect(runSheetTable(run, 2).title).toContain("morning 2");
  });
});
