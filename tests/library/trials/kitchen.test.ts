import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { buildKitchen } from "../../../kernel-lib/library/src/trials/build-kitchen";
import type { KitchenFile, KitchenFiles } from "../../../kernel-lib/library/src/trials/kitchen";
import { applianceOf, panOf, trialOf, variantOf } from "../../../kernel-lib/library/src/trials/kitchen-lookup";

const file = (name: string): KitchenFile => ({ file: name, text: readFileSync(`data/${name}`, "utf8") });
const demo: KitchenFiles = {
  name: "demo",
  units: "metric",
  pans: file("pans.csv"),
  appliances: file("appliances.csv"),
  ingredients: file("ingredients.csv"),
  variants: file("variants.csv"),
  formulas: readdirSync("data/formulas").map((name) => file(`formulas/${name}`)),
  trials: readdirSync("data/trials").map((name) => file(`trials/${name}`)),
};
const changed = (field: "pans" | "variants" | "appliances", from: string, to: string): KitchenFiles => ({
  ...demo,
  [field]: { ...demo[field], text: demo[field].text.replaceAll(from, to) },
});

describe("buildKitchen", () => {
  it("puts the demo kitchen together with a thickness for every trial", () => {
    const kitchen = buildKitchen(demo);
    expect(kitchen.variants.length).toBeGreaterThanOrEqual(4);
    expect(kitchen.pans.length).toBeGreaterThanOrEqual(5);
    expect(kitchen.appliances.length).toBeGreaterThanOrEqual(2);
    expect(kitchen.trials.length).toBeGreaterThanOrEqual(60);
    for (const trial of kitchen.trials) expect(trial.thicknessMm).toBeGreaterThan(2);
    for (const variant of kitchen.variants)
      expect(
        new Set(kitchen.trials.filter((trial) => trial.variantId === variant.variantId).map((trial) => trial.batchG))
          .size,
      ).toBeGreaterThanOrEqual(3);
  });

  it("gives each variant the core limit of its formula", () => {
    const limits = buildKitchen(demo).variants.map(({ variantId, limit }) => [
      variantId,
      limit.foodClass,
      limit.limitC,
    ]);
    expect(limits).toEqual([
      ["beet-lentil", "plant", 74],
      ["turkey-sage", "poultry", 74],
      ["pollock-dill", "fish", 68.5],
      ["chickpea-carrot", "plant", 74],
      ["corn-puff", "egg", 74],
    ]);
  });

  it("refuses a class milder than the ingredients ask for, once, with file, ingredient and class", () => {
    const formulas = demo.formulas.map((one) => ({ ...one, text: one.text.replace('"poultry"', '"fish"') }));
    const second = demo.variants.text.match(/^turkey-sage,.*$/m)![0].replace("turkey-sage", "turkey-two");
    const variants = { ...demo.variants, text: `${demo.variants.text.trimEnd()}\n${second}\n` };
    expect(() => buildKitchen({ ...demo, formulas, variants })).toThrow(
      /^formulas\/turkey-sage\.json line 5, foodClass: expected poultry or as strict since turkey-ground-93 is raw poultry, got "fish"$/,
    );
  });

  it("notices the one batch mass that the demo logs wrongly, and no other", () => {
    const { notices } = buildKitchen(demo);
    expect(notices).toHaveLength(1);
    expect(notices[0]).toMatch(/^trial BL-14: the probes say 8\.\d mm, but 762 g on half-sheet make 5\.\d mm/);
  });

  it("names every use of an id that does not exist", () => {
    expect(() => buildKitchen(changed("pans", "\nhalf-sheet,", "\nsheet-half,"))).toThrow(
      /^variants.csv rows 3 to 6, trials\/beet-lentil.csv rows 3 to 16, .*, column pan: expected one of .*sheet-half, .*, got "half-sheet", which pans.csv does not hold$/,
    );
    expect(() => buildKitchen(changed("variants", "beet-lentil,slab", "beet,slab"))).toThrow(
      /column formula: expected one of .*beet-lentil.*got "beet"/,
    );
    expect(() => buildKitchen(changed("appliances", "fan-oven,fan", "oven,fan"))).toThrow(
      /column appliance: expected one of small-basket, oven, got "fan-oven"/,
    );
  });

  it("refuses an id, or a trial name, that is used twice", () => {
    expect(() => buildKitchen(changed("pans", "eighth-sheet,", "quarter-sheet,"))).toThrow(
      /^pans.csv row 6, column pan: expected each id once, and row 5 has this one, got "quarter-sheet"$/,
    );
    const twice = { ...demo, trials: [...demo.trials, { ...demo.trials[0], file: "trials/again.csv" }] };
    expect(() => buildKitchen(twice)).toThrow(
      /^trials\/again.csv rows 3 to \d+, column trial: expected a name not used before, and trials\/beet-lentil.csv has this one, got "BL-01", "BL-02", "BL-03" and \d+ others$/,
    );
  });

  it("refuses a batch that its pan cannot hold", () => {
    const heavy = demo.trials.map((log) => ({ ...log, text: log.text.replace(",760,", ",7600,") }));
    expect(() => buildKitchen({ ...demo, trials: heavy })).toThrow(
      /^trials\/beet-lentil.csv row 3, column batch_g: expected at most \d+ g, which is what half-sheet holds of this mix, got "7600"$/,
    );
    expect(() => buildKitchen(changed("variants", "half-sheet,1150", "half-sheet,11500"))).toThrow(
      /^variants.csv row 3, column batch_g: expected at most \d+ g, which is what half-sheet holds of this mix, got "11500"$/,
    );
  });

  it("blames the pan when no batch on it fits", () => {
    expect(() =>
      buildKitchen(
        changed("pans", "half-sheet,half sheet,rectangle,420,293", "half-sheet,half sheet,rectangle,110,93"),
      ),
    ).toThrow(
      /^pans.csv row 4: expected sizes of a pan that holds what is spread on it, 760 to 1500 g, got sizes that hold 2\d\d g$/,
    );
  });

  it("names strange ids beside unreadable cells in one reading", () => {
    const damaged = demo.trials.map(({ file: name, text }) => ({
      file: name,
      text: text
        .replace("BL-02,2026-02-04,beet-lentil,half-sheet", "BL-02,2026-02-04,beet-lentil,haf-sheet")
        .replace(",200,0.6,", ",400,0.6,"),
    }));
    expect(() => buildKitchen({ ...demo, trials: damaged })).toThrow(
      /row 3, column setpoint_c: expected a setpoint[\s\S]*row 4, column pan: expected one of .*got "haf-sheet"/,
    );
  });

  it("lists the problems of all files at once, each once", () => {
    const broken = changed("pans", "rectangle", "square");
    expect(() =>
      buildKitchen({
        ...broken,
        appliances: { ...broken.appliances, text: broken.appliances.text.replace("420", "2") },
      }),
    ).toThrow(
      /^pans.csv rows 3 to 7, column shape: expected rectangle, round or wells, got "square"\nappliances.csv row 3, column floor_cm2: expected a floor of 20 to 20000 cm² \(3 to 3100 in²\), the part that pieces lie on, got "2"$/,
    );
  });
});

describe("loadKitchen", () => {
  it("finds the nearest data folder", () => {
    expect(loadKitchen().name).toBe("Quarry Lane test kitchen (invented)");
  });
  it("names the file that is missing", () => {
    expect(() => loadKitchen("tests")).toThrow(
      'loadKitchen: folder must hold kitchen.json, pans.csv, appliances.csv, ingredients.csv, variants.csv and a folder formulas, got "tests"',
    );
    expect(() => loadKitchen("no-such-folder")).toThrow('loadKitchen: folder must exist, got "no-such-folder"');
  });
});

describe("lookups", () => {
  it("find by id, or name the known ones", () => {
    const kitchen = loadKitchen();
    expect(variantOf(kitchen, "corn-puff").form).toBe("batter");
    expect(panOf(kitchen, "gn-1-2-40").depthMm).toBe(40);
    expect(applianceOf(kitchen, "fan-oven").kind).toBe("fan oven");
    const loggedIn = Number(/TS-01,.*?,([\d.]+);/.exec(file("trials/turkey-sage.csv").text)?.[1]);
    expect(trialOf(kitchen, "TS-01").probesMm[0]).toBeCloseTo(loggedIn * 25.4, 9);
    expect(() => variantOf(kitchen, "beet")).toThrow(/variantOf: variantId must be one of beet-lentil, .*got "beet"/);
  });
});
