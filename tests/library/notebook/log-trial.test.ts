import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { checkTrial, correctTrial, logTrial, newKitchen, trialHistory, undoLog } from "slabwright/notebook";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const text = (log: string): string => readFileSync(join(folder, "trials", log), "utf8");
const last = (trialId: string) => loadKitchen(folder).trials.find((trial) => trial.trialId === trialId);

describe("logTrial", () => {
  it("reads a day in the order that the logs' headings have, and asks where none has one", () => {
    const typed = { variant: "beet-lentil", date: "11/9/2026", time_min: 12, core_c: 90 };
    expect(() => checkTrial(typed, { folder, today: "2026-11-20" })).toThrow("2026-11-09 or 2026-09-11");
    for (const log of readdirSync(join(folder, "trials")))
      writeFileSync(join(folder, "trials", log), text(log).replace("trial,date,", "trial,date (m/d/y),"));
    expect(checkTrial(typed, { folder, today: "2026-11-20" }).trial.date).toBe("2026-11-09");
  });

  it("logs the usual trial in one line: what was measured; the rest is the variant's, and is said", () => {
    const before = text("beet-lentil.csv");
    const logged = logTrial(
      {
        variant: "Beet lentil",
        thickness_mm: "9.1; 8.8; 9.4",
        not_crisp_min: 8,
        crisp_min: "9:30",
        time_min: "10 min",
        core_f: 181,
        crisp_scores: [7, 8],
      },
      { folder, today: "2026-11-20" },
    );
    expect(logged).toMatchObject({
      kind: "logged trial",
      file: "trials/beet-lentil.csv",
      trial: {
        trialId: "BL-33",
        variantId: "beet-lentil",
        panId: "half-sheet",
        applianceId: "small-basket",
        setpointC: 200,
        startC: -18,
        batchG: null,
        probesMm: [9.1, 8.8, 9.4],
        crispMin: 9.5,
      },
    });
    expect(logged.assumed).toEqual([
      "the pan is half-sheet, as the variant's",
      "the appliance is small-basket, as the variant's",
      "the setpoint is 200 °C, as the variant's",
      "the trial's name is the next free one",
      "the pieces went in at -18 °C (0 °F), straight from the freezer",
      "the day is today, 2026-11-20",
    ]);
    expect(logged.notices.join("\n")).toMatch(/differs in capitals or blanks alone/);
    expect(logged.notices.join("\n")).toMatch(/minutes and seconds/);
    expect(text("beet-lentil.csv")).toBe(`${before}${logged.line}\n`);
    expect(last("BL-33")).toMatchObject({
      coreC: expect.closeTo(82.7778, 3),
      crispMin: 9.5,
      timeMin: 10,
      crispScores: [7, 8],
    });
  });

  it("checks without writing, and says what does not agree", () => {
    const before = text("beet-lentil.csv");
    const checked = checkTrial(
      {
        variant: "beet-lentil",
        thickness_mm: 9,
        time_min: 10,
        core_c: 120 / 1.2,
        before_g: 600,
        after_g: 520,
        pieces: 60,
      },
      { folder },
    );
    expect(checked.trial.trialId).toBe("BL-33");
    expect(checked.notices.join("\n")).toMatch(/BL-33/);
    expect(text("beet-lentil.csv")).toBe(before);
    expect(readdirSync(join(folder, "trials"))).not.toContain(".history");
  });

  it("logs under a heading without its unit, where each cell has its own", () => {
    const path = join(folder, "trials", "beet-lentil.csv");
    const [comment, headings, ...rows] = text("beet-lentil.csv").split("\n");
    const at = headings.split(",").indexOf("thickness_mm");
    const named = rows.map((row) => {
      const cells = row.split(",");
      return cells.length > at && cells[at] !== ""
        ? cells.with(at, cells[at].replace(/[\d.]+/g, "$& mm")).join(",")
        : row;
    });
    writeFileSync(path, [comment, headings.replace("thickness_mm", "thickness"), ...named].join("\n"));
    const { trial } = logTrial(
      { variant: "beet-lentil", thickness_in: "3/8; 0.4", time_min: 10, core_c: 82 },
      { folder },
    );
    expect(last(trial.trialId)?.probesMm).toEqual([expect.closeTo(9.525, 9), expect.closeTo(10.16, 9)]);
  });

  it("tells every problem at once, and changes nothing", () => {
    const before = text("beet-lentil.csv");
    expect(() => logTrial({ variant: "beet-lentl", thickness_mm: "nine", time_min: 10 }, { folder })).toThrow(
      /logTrial: variant must be one of beet-lentil, .*, got "beet-lentl"/,
    );
    expect(() =>
      logTrial({ variant: "beet-lentil", thickness_mm: "nine", time_min: "soon", pan: "tray" }, { folder }),
    ).toThrow(/thickness_mm: expected numbers.*\n.*time_min.*\n.*tray/);
    expect(() => logTrial({ variant: "beet-lentil", thickness: 9, time_min: 10 }, { folder })).toThrow(
      /heading that ends in its unit, such as thickness_mm/,
    );
    expect(() => logTrial({ variant: "beet-lentil", thicknes_mm: 9, time_min: 10 }, { folder })).toThrow(
      'a column must be known, thickness_mm perhaps, got "thicknes_mm"',
    );
    expect(() => logTrial({ variant: "beet-lentil", trial: "BL-01", time_min: 10 }, { folder })).toThrow(
      'must be a name that is not used yet, got "BL-01"',
    );
    expect(() => logTrial({ variant: "beet-lentil", time_min: 10, crisp_min: 12 }, { folder })).toThrow(
      /at most the time of taking out/,
    );
    expect(() => logTrial({ variant: "beet-lentil", time_min: 10 }, { folder, log: "../x.csv" })).toThrow(
      "must be a file of the folder trials",
    );
    expect(text("beet-lentil.csv")).toBe(before);
    expect(readdirSync(join(folder, "trials")).filter((name) => name.startsWith("."))).toEqual([]);
  });

  it("adds a column that the log lacks, and keeps every old row", () => {
    const kept = loadKitchen(folder).trials.map(({ trialId, coreC, crispScores }) => ({ trialId, coreC, crispScores }));
    const logged = logTrial(
      { variant: "beet-lentil", thickness_mm: 9, time_min: 10, oil_g: 4, place: "back" },
      { folder },
    );
    expect(logged.added).toEqual(["oil_g", "place"]);
    expect(last("BL-33")).toMatchObject({ oilG: 4, place: "back" });
    expect(
      loadKitchen(folder)
        .trials.filter(({ trialId }) => trialId !== "BL-33")
        .map(({ trialId, coreC, crispScores }) => ({ trialId, coreC, crispScores })),
    ).toEqual(kept);
  });

  it("writes into a log of semicolons and decimal commas as its people do", () => {
    const path = join(folder, "trials", "werk.csv");
    writeFileSync(
      path,
      "trial;date;variant;pan;appliance;batch_g;thickness_mm;setpoint_c;start_c;time_min;note\r\nW-01;2026-03-01;beet-lentil;half-sheet;fan-oven;1100;9,1 / 8,8;200;-18;12,5;\r\n",
    );
    const logged = logTrial(
      { trial: "W-02", variant: "beet-lentil", thickness_mm: "8.25; 9", time_min: 11.5, note: '9" wide; hot' },
      { folder, log: "werk.csv", today: "2026-11-20" },
    );
    expect(logged.line).toBe(
      'W-02;2026-11-20;beet-lentil;half-sheet;small-basket;;"8,25;9";200;-18;11,5;"9"" wide; hot"',
    );
    expect(text("werk.csv").endsWith(`\r\n${logged.line}\r\n`)).toBe(true);
    expect(last("W-02")).toMatchObject({ probesMm: [8.25, 9], timeMin: 11.5, note: '9" wide; hot' });
  });

  it("logs in US units, tab-separated and as JSON Lines, and reads back what was typed", () => {
    for (const log of ["us.tsv", "lines.jsonl"]) {
      const id = log.replace(/\W.*/, "-1");
      logTrial(
        {
          trial: id,
          variant: "turkey-sage",
          thickness_in: "7/16; 0.41",
          setpoint_f: 390,
          time_min: 12,
          before_oz: "4 3/8",
          after_oz: 4,
          pieces: 5,
        },
        { folder, log },
      );
      expect(last(id)).toMatchObject({
        setpointC: expect.closeTo(198.8889, 4),
        probesMm: [expect.closeTo(11.1125, 6), expect.closeTo(10.414, 6)],
        massBeforeG: expect.closeTo(124.0291, 3),
      });
    }
  });

  it("guards text that a spreadsheet would run, and gives it back as typed", () => {
    const note = '=HYPERLINK("x")';
    const logged = logTrial(
      { variant: "beet-lentil", thickness_mm: 9, time_min: 10, note, place: "@back" },
      { folder },
    );
    expect(logged.line).toContain(`"'=HYPERLINK(""x"")"`);
    expect(last("BL-33")).toMatchObject({ note, place: "@back" });
    expect(logged.notices.join("\n")).not.toMatch(/formula/);
    writeFileSync(
      join(folder, "trials", "beet-lentil.csv"),
      text("beet-lentil.csv").replace("'=HYPERLINK", "=HYPERLINK"),
    );
    expect(loadKitchen(folder).notices.join("\n")).toMatch(
      /column note: would run as a formula in a spreadsheet; kept as text/,
    );
  });

  it("begins a log in a kitchen that has none", () => {
    rmSync(folder, { recursive: true });
    newKitchen({ folder, units: "us" });
    for (const file of readdirSync(join(folder, "trials"))) rmSync(join(folder, "trials", file));
    const { variants } = loadKitchen(folder);
    const logged = logTrial({ thickness_in: 0.4, time_min: 14, core_f: 170 }, { folder });
    expect(logged.file).toBe("trials/log.csv");
    expect(logged.assumed[0]).toBe(`the variant is ${variants[0].variantId}, the only one`);
    expect(loadKitchen(folder).trials).toHaveLength(1);
  });
});

describe("correctTrial", () => {
  it("changes the cells that are given, leaves the others as they were typed, and keeps the old line with who and why", () => {
    writeFileSync(
      join(folder, "trials", "beet-lentil.csv"),
      text("beet-lentil.csv").replace(
        "BL-02,2026-02-04,beet-lentil,half-sheet,small-basket,760,",
        "BL-02,2026-02-04,Beet-Lentil,half-sheet,small-basket,760 g,",
      ),
    );
    const before = text("beet-lentil.csv");
    const old = before.split("\n").find((line) => line.startsWith("BL-02")) as string;
    const corrected = correctTrial("BL-02", { core_c: 79, note: "read again" }, { folder, why: "misread", by: "AB" });
    expect(corrected).toMatchObject({
      before: { coreC: 99.5 },
      after: { coreC: 79, note: "read again", trialId: "BL-02" },
      file: "trials/beet-lentil.csv",
    });
    const now = text("beet-lentil.csv");
    expect(now).toBe(before.replace(old, old.replace(",99.5,", ",79,").replace(/,$/, ",read again")));
    expect(trialHistory("BL-02", { folder })).toMatchObject([
      { what: "correct", by: "AB", why: "misread", before: old },
    ]);
    expect(undoLog("beet-lentil.csv", { folder }).sentence).toBe(
      "BL-02 in trials/beet-lentil.csv is as it was before its correction.",
    );
    expect(text("beet-lentil.csv")).toBe(before);
    expect(trialHistory("BL-02", { folder }).map(({ what }) => what)).toEqual(["correct", "undo"]);
  });

  it("takes a reading back with null, adds a column where there is none, and refuses what is not sound", () => {
    const before = text("beet-lentil.csv");
    expect(
      correctTrial("BL-03", { core_c: null, frost: "a little" }, { folder, why: "wrong piece" }).after,
    ).toMatchObject({ coreC: null, frost: "a little" });
    expect(last("BL-03")).toMatchObject({ coreC: null, frost: "a little" });
    expect(() => correctTrial("BL-04", { core_c: 300 }, { folder, why: "x" })).toThrow(
      "expected a core temperature of -30 to 115 °C",
    );
    expect(() => correctTrial("BL-04", { trial: "BL-05" }, { folder, why: "x" })).toThrow("must keep its name");
    expect(() => correctTrial("NO-1", { core_c: 70 }, { folder, why: "x" })).toThrow(
      'must be the name of a logged trial, got "NO-1"',
    );
    expect(() => correctTrial("BL-04", {}, { folder, why: "x" })).toThrow("must change something");
    expect(() => correctTrial("BL-04", { core_c: 70 }, { folder, why: " " })).toThrow("must say why");
    expect(undoLog("beet-lentil.csv", { folder }).deed?.trialId).toBe("BL-03");
    expect(last("BL-03")?.coreC).toBe(99.5);
    expect(
      text("beet-lentil.csv")
        .split("\n")
        .map((line) => line.replace(/,frost$/, "").replace(/^(BL-.*),$/, "$1")),
    ).toEqual(before.split("\n"));
  });

  it("takes out what was logged last, and keeps it in the history", () => {
    const before = text("turkey-sage.csv");
    logTrial({ variant: "turkey-sage", thickness_in: 0.4, time_min: 12 }, { folder });
    expect(text("turkey-sage.csv")).not.toBe(before);
    undoLog("turkey-sage.csv", { folder });
    expect(text("turkey-sage.csv")).toBe(before);
    expect(() => undoLog("turkey-sage.csv", { folder })).toThrow("must hold something to take back");
    expect(existsSync(join(folder, "trials", ".history", "turkey-sage.csv.jsonl"))).toBe(true);
  });
});
