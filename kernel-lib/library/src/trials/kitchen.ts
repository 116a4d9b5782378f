import { clipped } from "../check/check";
import { failAll } from "../check/csv";
import type { Composition } from "../food/composition/composition";
import type { Formula } from "../food/formula/formula";
import { formulaTotals } from "../food/formula/formula-totals";
import { parseFormula } from "../food/formula/parse-formula";
import type { Ingredient } from "../food/ingredient/ingredient";
import { parseIngredients } from "../food/ingredient/parse-ingredients";
import { mixDensity } from "../food/thermal/mix-density";
import type { Pan } from "../pan/pan";
import { readPans } from "../pan/read-pans";
import { slabMassG } from "../pan/slab-mass";
import type { CoreLimit } from "../safety/core-limit";
import { formulaLimit } from "../safety/formula-limit";
import type { ReadRecords } from "../units/read-records";
import { type Appliance, readAppliances } from "./appliance";
import { thicknessOfTrial } from "./thickness-of-trial";
import { readTrials, type Trial } from "./trial";
import { readVariants, type Variant } from "./variant";

/** A variant with what its formula says of the mix. */
export interface KitchenVariant extends Variant {
  readonly formula: Formula;
  readonly composition: Composition;
  /** density of the mix as spread, at 5 °C with its air (kg/m³) */
  readonly densityKgM3: number;
  /** what its core must reach, from class and state of the formula and its ingredients */
  readonly limit: CoreLimit;
}

/** A trial whose slab thickness is settled: from its probes, or from its batch mass. */
export interface KitchenTrial extends Trial {
  readonly thicknessMm: number;
  /** standard deviation between the probe readings (mm); unknown with fewer than two */
  readonly thicknessSdMm: number | null;
}

/** Everything that one test kitchen has and has logged. */
export interface Kitchen {
  readonly name: string;
  readonly pans: readonly Pan[];
  readonly appliances: readonly Appliance[];
  readonly ingredients: readonly Ingredient[];
  readonly variants: readonly KitchenVariant[];
  readonly trials: readonly KitchenTrial[];
  /** what a person should look at before trusting the logs, one sentence each */
  readonly notices: readonly string[];
}

/** One file of a kitchen. */
export interface KitchenFile {
  /** as errors name it: `"trials/beet-lentil.csv"` */
  readonly file: string;
  readonly text: string;
}

/** The files of a kitchen, read but not yet understood. */
export interface KitchenFiles {
  readonly name: string;
  readonly pans: KitchenFile;
  readonly appliances: KitchenFile;
  readonly ingredients: KitchenFile;
  readonly variants: KitchenFile;
  readonly formulas: readonly KitchenFile[];
  readonly trials: readonly KitchenFile[];
}

/**
 * Puts a kitchen together from the texts of its files and holds them against each other: every id that is used must
 * exist, every name be used once, every batch fit its pan. Throws one error that lists every problem of every file;
 * doubts that do not stop the work (probes against batch mass) become `notices`.
 */
export function buildKitchen(files: KitchenFiles): Kitchen {
  const problems: string[] = [];
  const take = <T>(read: ReadRecords<T>): ReadRecords<T> => {
    for (const problem of read.problems) problems.push(problem);
    return read;
  };
  const pans = take(readPans(files.pans.text, files.pans.file));
  const appliances = take(readAppliances(files.appliances.text, files.appliances.file));
  const variantRows = take(readVariants(files.variants.text, files.variants.file));
  const logs = files.trials.map(({ file, text }) => ({ file, ...take(readTrials(text, file)) }));
  const ingredients = caught(() => parseIngredients(files.ingredients.text, files.ingredients.file), problems) ?? [];
  const formulas = files.formulas.flatMap(
    ({ file, text }) => caught(() => ({ file, formula: parseFormula(text, file) }), problems) ?? [],
  );

  const panIds = pans.records.map((pan) => pan.id);
  const applianceIds = appliances.records.map((appliance) => appliance.applianceId);
  const variantIds = variantRows.records.map((variant) => variant.variantId);
  for (const [file, column, ids, rows] of [
    [files.pans.file, "pan", panIds, pans.rows],
    [files.appliances.file, "appliance", applianceIds, appliances.rows],
    [files.variants.file, "variant", variantIds, variantRows.rows],
  ] as const)
    for (const problem of repeated(file, column, ids, rows)) problems.push(problem);
  // an id is looked up only among files that could be read whole, lest one problem be told twice
  const known = (where: string, column: string, id: string, ids: ReadonlySet<string> | null): void => {
    if (ids !== null && !ids.has(id))
      problems.push(`${where}, column ${column}: expected one of ${clipped([...ids].join(", "))}, got "${id}"`);
  };
  const whole = (ids: readonly string[], read: ReadRecords<unknown>): ReadonlySet<string> | null =>
    read.problems.length === 0 ? new Set(ids) : null;
  const allPans = whole(panIds, pans);
  const allAppliances = whole(applianceIds, appliances);
  const allVariants = whole(variantIds, variantRows);
  const allFormulas =
    formulas.length === files.formulas.length ? new Set(formulas.map(({ formula }) => formula.id)) : null;
  for (const [at, variant] of variantRows.records.entries()) {
    const where = `${files.variants.file} row ${variantRows.rows[at]}`;
    known(where, "formula", variant.formulaId, allFormulas);
    known(where, "pan", variant.panId, allPans);
    known(where, "appliance", variant.applianceId, allAppliances);
  }
  const seen = new Map<string, string>();
  for (const { file, records, rows } of logs)
    for (const [at, trial] of records.entries()) {
      const where = `${file} row ${rows[at]}`;
      known(where, "variant", trial.variantId, allVariants);
      known(where, "pan", trial.panId, allPans);
      known(where, "appliance", trial.applianceId, allAppliances);
      const earlier = seen.get(trial.trialId);
      if (earlier !== undefined)
        problems.push(
          `${where}, column trial: expected a name not used before, got "${trial.trialId}", which ${earlier} has`,
        );
      seen.set(trial.trialId, where);
    }
  failAll(problems);

  const variants = variantRows.records.flatMap(
    (variant) => caught(() => withMix(variant, formulas, ingredients), problems) ?? [],
  );
  failAll([...new Set(problems)]);

  const panById = new Map(pans.records.map((pan) => [pan.id, pan]));
  const variantById = new Map(variants.map((variant) => [variant.variantId, variant]));
  const notices: string[] = [];
  const trials: KitchenTrial[] = [];
  for (const { file, records, rows } of logs)
    for (const [at, trial] of records.entries()) {
      const pan = panById.get(trial.panId) as Pan;
      const { densityKgM3 } = variantById.get(trial.variantId) as KitchenVariant;
      const brimG = slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3 });
      if (trial.batchG !== null && trial.batchG > brimG) {
        problems.push(
          `${file} row ${rows[at]}, column batch: expected at most ${Math.floor(brimG)} g, which is what ${pan.id} holds, got ${Math.round(trial.batchG)} g`,
        );
        continue;
      }
      const slab = thicknessOfTrial({ trial, pan, densityKgM3 });
      if (slab.notice !== null) notices.push(slab.notice);
      trials.push(Object.freeze({ ...trial, thicknessMm: slab.thicknessMm, thicknessSdMm: slab.sdMm }));
    }
  failAll(problems);
  return Object.freeze({
    name: files.name,
    pans: pans.records,
    appliances: appliances.records,
    ingredients,
    variants,
    trials,
    notices,
  });
}

interface FormulaFile {
  readonly file: string;
  readonly formula: Formula;
}

function withMix(
  variant: Variant,
  formulas: readonly FormulaFile[],
  ingredients: readonly Ingredient[],
): KitchenVariant {
  const { file, formula } = formulas.find((each) => each.formula.id === variant.formulaId) as FormulaFile;
  const { composition } = formulaTotals(formula, ingredients);
  const densityKgM3 = mixDensity(composition, { temperatureC: 5, airFraction: formula.airFraction });
  const limit = formulaLimit(formula, ingredients, file);
  return Object.freeze({ ...variant, formula, composition, densityKgM3, limit });
}

function caught<T>(work: () => T, problems: string[]): T | null {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    problems.push(error.message);
    return null;
  }
}

function repeated(file: string, column: string, ids: readonly string[], rows: readonly number[]): string[] {
  const seen = new Set<string>();
  return ids.flatMap((id, at) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [`${file} row ${rows[at]}, column ${column}: expected each id once, got "${id}" again`];
  });
}
