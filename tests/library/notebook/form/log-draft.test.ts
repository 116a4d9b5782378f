import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { correctTrial, logDraft, logTrial, undoLog } from "slabwright/notebook";
import { afterEach, beforeEach, describe, expect, it } from "vitest";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const log = (): string => readFileSync(join(folder, "trials", "beet-lentil.csv"), "utf8");
const draft = {
  trial: "BL-40",
  date: "2026-11-20",
  variant: "beet-lentil",
  thickness_mm: "9.1; 8.8; 9.4",
  start_c: "-18",
  time_min: "10.25",
  core_c: "81",
  before_g: "401.3",
  after_g: "350.7",
  pieces: "40",
  crisp_scores: "AB:7; CD:6.5",
};

describe("logDraft", () => {
  it("logs a trial once, however often it is sent", () => {
    expect(logDraft(draft, { folder })).toMatchObject({
      kind: "logged",
      trialId: "BL-40",
      file: "trials/beet-lentil.csv",
      coldCore: null,
    });
    const once = log();
    for (let again = 0; again < 2; again++)
      expect(logDraft(draft, { folder })).toMatchObject({
        kind: "already logged",
        trialId: "BL-40",
        file: "trials/beet-lentil.csv",
      });
    expect(log()).toBe(once);
    expect(loadKitchen(folder).trials.filter(({ trialId }) => trialId === "BL-40")).toHaveLength(1);
  });

  it("knows its trial again after a correction of it", () => {
    logDraft(draft, { folder });
    correctTrial("BL-40", { core_c: 83 }, { folder, why: "misread" });
    const corrected = log();
    expect(logDraft(draft, { folder }).kind).toBe("already logged");
    expect(log()).toBe(corrected);
  });

  it("tells another trial of the same name apart, and in what it differs", () => {
    logDraft(draft, { folder });
    const once = log();
    expect(() => logDraft({ ...draft, core_c: "70", note: "another" }, { folder })).toThrow(
      /must be a name that no other trial has \(that of trials\/beet-lentil\.csv differs in core, note\), got "BL-40"/,
    );
    expect(log()).toBe(once);
  });

  it("does not take another trial for one that was taken back, or that the log lost", () => {
    logDraft(draft, { folder });
    undoLog("beet-lentil.csv", { folder, trialId: "BL-40" });
    logTrial({ ...draft, core_c: "70" }, { folder });
    expect(() => logDraft(draft, { folder })).toThrow("differs in core");
    writeFileSync(join(folder, "trials", "beet-lentil.csv"), log().replace("BL-40", "BL-39").replace("BL-32", "BL-40"));
    expect(() => logDraft(draft, { folder })).toThrow("that no other trial has");
  });

  it("throws what logTrial throws", () => {
    expect(() => logDraft({ ...draft, time_min: "soon" }, { folder })).toThrow(/column time_min/);
    logDraft(draft, { folder });
    expect(() => logDraft({ ...draft, time_min: "soon" }, { folder })).toThrow(/column time_min/);
  });

  it("says that a cold core is not safe, however crisp", () => {
    expect(logDraft({ ...draft, core_c: "73.5; 80" }, { folder }).coldCore).toMatch(
      /^The core of 73\.5 °C .* is below 74 °C \(165 °F\), .*: not safe/,
    );
  });
});

describe("undoLog of one trial", () => {
  it("takes back that trial alone, and nothing when another was logged since", () => {
    const before = log();
    logDraft(draft, { folder });
    logTrial({ variant: "beet-lentil", trial: "BL-41", thickness_mm: 9, time_min: 10 }, { folder });
    const both = log();
    expect(() => undoLog("beet-lentil.csv", { folder, trialId: "BL-40" })).toThrow(
      'must have been done to BL-40, got "BL-41"',
    );
    expect(log()).toBe(both);
    undoLog("beet-lentil.csv", { folder, trialId: "BL-41" });
    undoLog("beet-lentil.csv", { folder, trialId: "BL-40" });
    expect(log()).toBe(before);
  });
});
