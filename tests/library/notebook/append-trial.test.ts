import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { appendTrial } from "../../../kernel-lib/library/src/notebook/append-trial";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { readTrials } from "../../../kernel-lib/library/src/trials/log/read-trials";
import type { Trial } from "../../../kernel-lib/library/src/trials/trial";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const log = (name: string): string => join(folder, "trials", name);
const trials = (name: string): readonly Trial[] => readTrials(readFileSync(log(name), "utf8"), name).records;

describe("appendTrial", () => {
  it.each(["beet-lentil.csv", "turkey-sage.csv"])(
    "writes %s in its own units, and reads back the same trial",
    (name) => {
      const before = readFileSync(log(name), "utf8");
      const trial: Trial = { ...trials(name)[0], trialId: "NEW-1", note: 'crumb "loose", #2 tray' };
      expect(appendTrial(log(name), trial)).toBe(trials(name).length);
      expect(readFileSync(log(name), "utf8").startsWith(before)).toBe(true);
      const last = trials(name).at(-1)!;
      expect(last.probesMm).toHaveLength(trial.probesMm.length);
      for (const [at, reading] of last.probesMm.entries()) expect(reading).toBeCloseTo(trial.probesMm[at], 9);
      expect(last.setpointC).toBeCloseTo(trial.setpointC, 9);
      expect({ ...last, probesMm: 0, setpointC: 0, batchG: 0, coreC: 0 }).toEqual({
        ...trial,
        probesMm: 0,
        setpointC: 0,
        batchG: 0,
        coreC: 0,
      });
      expect(loadKitchen(folder).trials.some((one) => one.trialId === "NEW-1")).toBe(true);
      expect(readdirSync(join(folder, "trials")).filter((file) => file.endsWith(".part"))).toEqual([]);
    },
  );

  it("writes nothing when the name is taken, the trial unsound, the log damaged, or a column missing", () => {
    const path = log("beet-lentil.csv");
    const before = readFileSync(path, "utf8");
    const [trial] = trials("beet-lentil.csv");
    expect(() => appendTrial(path, trial)).toThrow('appendTrial: trialId must be new in beet-lentil.csv, got "BL-01"');
    expect(() => appendTrial(path, { ...trial, trialId: "N", setpointC: 400 })).toThrow(
      /column setpoint_c: expected a setpoint of 100 to 290 °C/,
    );
    expect(readFileSync(path, "utf8")).toBe(before);
    writeFileSync(path, before.replace(",core_c,", ",kern,"));
    expect(() => appendTrial(path, { ...trial, trialId: "N" })).toThrow(
      "beet-lentil.csv: column core must exist, as the record holds it",
    );
  });
});
