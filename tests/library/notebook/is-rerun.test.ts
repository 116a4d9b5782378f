import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { appendTrial, correctTrial, logTrial, mergeLog, undoLog } from "slabwright/notebook";
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { writeKitchenOf } from "../../notebooks/kitchen-of";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  writeKitchenOf(folder, { trials: { "beet-lentil": 2 }, pans: ["half-sheet"] });
  logTrial({ variant: "beet-lentil", thickness_mm: 9, time_min: 10 }, { folder, today: "2026-11-20" });
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

/** Every file of the kitchen's logs and their history, with what is in it. */
function onDisk(): unknown {
  const names = readdirSync(join(folder, "trials"), { recursive: true }).map(String).sort();
  return names.map((name) => {
    const path = join(folder, "trials", name);
    return [name, statSync(path).isFile() ? readFileSync(path, "utf8") : null];
  });
}

const log = "beet-lentil.csv";
const path = (name: string): string => join(folder, "trials", name);

/** Another kitchen's log, with one trial that this one lacks. */
function theirs(): string {
  const file = join(folder, "theirs.csv");
  writeFileSync(
    file,
    readFileSync(path(log), "utf8")
      .replaceAll(/^BL-02,2026-02-04/gm, "BL-77,2026-07-01")
      .replaceAll(/^BL-(?!77).*\n/gm, ""),
  );
  return file;
}

it.each<[string, () => unknown]>([
  ["logTrial", () => logTrial({ variant: "beet-lentil", thickness_mm: 9, time_min: 10 }, { folder }).sentence],
  ["correctTrial", () => correctTrial("BL-02", { core_c: 78 }, { why: "misread", folder }).sentence],
  ["undoLog", () => undoLog(log, { folder }).sentence],
  ["mergeLog", () => mergeLog(theirs(), { folder, into: log }).sentence],
])("%s changes nothing while all notebooks are run, and says so; else it does", (_, act) => {
  const before = onDisk();
  vi.stubEnv("SLABWRIGHT_RERUN", "1");
  expect(act()).toMatch(/^Nothing is (logged|corrected|taken back|merged) while all notebooks are run/);
  expect(onDisk()).toEqual(before);
  vi.stubEnv("SLABWRIGHT_RERUN", "");
  expect(act()).not.toMatch(/^Nothing/);
  expect(onDisk()).not.toEqual(before);
});

it("appendTrial adds nothing while all notebooks are run, and tells what is there; else it does", () => {
  const [trial] = loadKitchen(folder).trials;
  const before = onDisk();
  vi.stubEnv("SLABWRIGHT_RERUN", "1");
  expect(appendTrial(path(log), { ...trial, trialId: "BL-99" })).toBe(3);
  expect(onDisk()).toEqual(before);
  vi.stubEnv("SLABWRIGHT_RERUN", "");
  expect(appendTrial(path(log), { ...trial, trialId: "BL-99" })).toBe(4);
});

it("undoLog needs nothing to take back while all notebooks are run: it was taken back before", () => {
  undoLog(log, { folder });
  vi.stubEnv("SLABWRIGHT_RERUN", "1");
  expect(undoLog(log, { folder }).deed).toBeNull();
});
