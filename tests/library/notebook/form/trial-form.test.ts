import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { checkDraft, logDraft, logQuestions, logTrial, newKitchen, trialForm } from "slabwright/notebook";
import { describe, expect, it } from "vitest";

const kitchen = (units: "us" | "metric"): string => {
  const folder = join(mkdtempSync(join(tmpdir(), "kitchen-")), "corner");
  newKitchen({ folder, units });
  return folder;
};

describe.each(["us", "metric"] as const)("trialForm of a kitchen in %s units", (units) => {
  it("has the kitchen's headings, choices, and a core limit with every product", () => {
    const folder = kitchen(units);
    const form = trialForm(folder);
    const [thickness] = form.fields.filter(({ name }) => name === "probesMm");
    expect([thickness.heading, thickness.unit, thickness.many]).toEqual(
      units === "us" ? ["thickness_in", "in", true] : ["thickness_mm", "mm", true],
    );
    const [variant] = form.variants;
    expect(form.pans.map(({ id }) => id)).toContain(variant.cells.pan);
    expect(form.appliances.map(({ id }) => id)).toContain(variant.cells.appliance);
    expect(variant.caution).toMatch(/Core at least .* °.*Local food codes .* come first.*thickest piece/);
  });

  it("begins with cells that are the variant's own", () => {
    const folder = kitchen(units);
    const [{ cells, variantId, nextId }] = trialForm(folder).variants;
    const thickness: Record<string, string> = units === "us" ? { thickness_in: "0.35" } : { thickness_mm: "9" };
    expect(checkDraft({ ...cells, ...thickness }, { folder }).problems).toEqual([]);
    logDraft({ ...cells, ...thickness, trial: nextId, time_min: "12" }, { folder });
    const { trials, variants } = loadKitchen(folder);
    expect(trials[0].trialId).toBe(nextId);
    expect(trials[0].setpointC).toBeCloseTo(variants[0].setpointC, 1);
    expect(trials[0].startC).toBeCloseTo(variants[0].startC, 1);
    expect(trialForm(folder).variants.find((one) => one.variantId === variantId)?.nextId).not.toBe(nextId);
  });
});

it("throws every problem of a kitchen that is not sound", () => {
  const folder = kitchen("metric");
  const file = join(folder, "variants.csv");
  writeFileSync(file, readFileSync(file, "utf8").replace("half-sheet", "halv-sheet"));
  expect(() => trialForm(folder)).toThrow('got "halv-sheet"');
});

describe("a kitchen whose day, pantry and packs have slips", () => {
  const slipped = (): string => {
    const folder = kitchen("us");
    const [{ variantId }] = trialForm(folder).variants;
    writeFileSync(join(folder, "day.csv"), "what,value\nopens,half past noon\n");
    writeFileSync(join(folder, "pantry.csv"), "ingredient,pack_g,price,priced\nunobtainium,500,2,soon\n");
    writeFileSync(join(folder, "packs.csv"), `pack,variant,packed,pieces\nA,${variantId},soon,24\n`);
    return folder;
  };
  const bench = { thickness_in: "0.35", time_min: "12" };

  it("logs trials all the same, and says the slips once", () => {
    const folder = slipped();
    const { notices, variants } = trialForm(folder);
    expect(notices).toEqual([
      expect.stringMatching(/^day\.csv row 2.*"half past noon".*; trials are logged all the same$/),
      expect.stringMatching(/^pantry\.csv row 2, column priced: .*soon/),
      expect.stringMatching(/^pantry\.csv row 2, column ingredient: .*unobtainium/),
      expect.stringMatching(/^packs\.csv row 2, column packed: .*soon/),
    ]);
    const [{ cells, nextId }] = variants;
    expect(checkDraft({ ...cells, ...bench }, { folder })).toMatchObject({ problems: [], notices: [] });
    expect(logDraft({ ...cells, ...bench, trial: nextId }, { folder })).toMatchObject({ kind: "logged", notices: [] });
    expect(logTrial({ ...cells, ...bench, time_min: "13" }, { folder }).notices).toEqual(notices);
    expect(logQuestions(folder).variants).toHaveLength(1);
    expect(trialForm(folder).variants[0].nextId).not.toBe(nextId);
    expect(() => loadKitchen(folder)).toThrow("unobtainium");
  });

  it("still throws what is wrong in the files that trials rest on, and that alone", () => {
    const folder = slipped();
    const file = join(folder, "pans.csv");
    writeFileSync(file, readFileSync(file, "utf8").replace("half-sheet", "half*sheet"));
    expect(() => trialForm(folder)).toThrow(/half\*sheet/);
    expect(() => trialForm(folder)).not.toThrow(/unobtainium/);
  });
});
