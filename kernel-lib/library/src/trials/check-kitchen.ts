import { counted } from "../check/counted";
import { calmNotices, noticeLines } from "../check/notice";
import { type Slip, slipLines } from "../check/slip";
import { formulaTotals } from "../food/formula/formula-totals";
import { formulaSlips } from "../food/formula/read/formula-slips";
import { type ReadFormula, readFormula } from "../food/formula/read/read-formula";
import { settleIngredients } from "../food/formula/read/settle-ingredients";
import type { Ingredient } from "../food/ingredient/ingredient";
import { joinIngredients, type ReadIngredients, readIngredients } from "../food/ingredient/parse-ingredients";
import type { Sr28Food } from "../food/ingredient/parse-sr28";
import { mixDensity } from "../food/thermal/mix-density";
import { readPans } from "../pan/read-pans";
import { formulaLimit } from "../safety/formula-limit";
import { guessUnits } from "../units/columns/guess-units";
import { readAppliances } from "./appliance";
import { readKitchenDay } from "./day/read-kitchen-day";
import { type FitPansOptions, fitPans, type Mix } from "./fit-pans";
import type { Kitchen, KitchenFile } from "./kitchen";
import { type FolderFile, type FolderFindings, folderFindings, isKitchenFile } from "./kitchen-folder";
import { readKitchenJson } from "./kitchen-json";
import {
  formulaNames,
  ingredientNames,
  namesOf,
  repeatedFormulas,
  repeatedNames,
  repeatedTrials,
  unknownNames,
} from "./known-names";
import { readLogRows } from "./log/read-trials";
import { settleNames } from "./log/settle-names";
import { startNotices } from "./log/start-notices";
import { readTraces } from "./read-traces";
import { settleIds } from "./settle-ids";
import { type FreezerPack, readPacks } from "./stores/packs";
import { type PantryItem, readPantry } from "./stores/pantry";
import { readVariants, type Variant } from "./variant";

/** What came of reading a kitchen. */
export interface KitchenCheck {
  /** `null` when there is a problem */
  readonly kitchen: Kitchen | null;
  /** one sentence each, with file, row or line, column, what was expected, what was given and the nearest known name */
  readonly problems: readonly string[];
  /** what a person should look at, though it stops nothing */
  readonly notices: readonly string[];
  /** slips of `day.csv`, `pantry.csv` and `packs.csv` that were put aside; empty unless that was asked for */
  readonly aside: readonly string[];
  /** how much of everything there is, in one line */
  readonly summary: string;
}

/**
 * Reads a whole kitchen and holds its files against each other: every id that is used must exist, every name be used once,
 * every amount be weighable, every batch fit its pan. It stops at nothing: each problem of each file is listed, one slip of
 * the writer's once, whatever else is wrong.
 *
 * @param files the files of the kitchen's folder, as `pans.csv` or `trials/week.csv`; those that are not read without a text
 * @returns the kitchen when nothing is wrong, with the problems and the notices
 */
export function checkKitchen(files: readonly FolderFile[], options: CheckKitchenOptions = {}): KitchenCheck {
  const readable = files.flatMap(({ file, text, bytes }): readonly KitchenFile[] =>
    text !== null && isKitchenFile(file) ? [{ file, text, bytes }] : [],
  );
  const named = (name: string): KitchenFile | null => readable.find(({ file }) => file === name) ?? null;
  const inside = (folder: string): readonly KitchenFile[] =>
    readable.filter(({ file }) => file.startsWith(`${folder}/`));
  return examineKitchen({
    about: named("kitchen.json"),
    pans: named("pans.csv"),
    appliances: named("appliances.csv"),
    ingredients: named("ingredients.csv"),
    labels: named("labels.csv"),
    variants: named("variants.csv"),
    day: named("day.csv"),
    pantry: named("pantry.csv"),
    packs: named("packs.csv"),
    formulas: inside("formulas"),
    trials: inside("trials"),
    traces: inside("traces"),
    folder: folderFindings(files),
    today: options.today,
    foods: options.foods,
    trialsAlone: options.trialsAlone,
  });
}

/** What `checkKitchen` is told beside the files. */
export interface CheckKitchenOptions {
  /** today, as `2026-03-14`: days of trials that lie in the future are named; none is unless given */
  readonly today?: string;
  /** the foods among which an ingredient is looked for that the kitchen has not; none unless given */
  readonly foods?: () => readonly Sr28Food[];
  /** slips of `day.csv`, `pantry.csv` and `packs.csv`, on which no trial rests, stop nothing: such a file counts as none; default false */
  readonly trialsAlone?: boolean;
}

/** A kitchen's files by what they hold; `null` for one that is missing. */
export interface KitchenParts {
  readonly about: KitchenFile | null;
  readonly pans: KitchenFile | null;
  readonly appliances: KitchenFile | null;
  readonly ingredients: KitchenFile | null;
  /** ingredients as their packs print them; a kitchen may have none */
  readonly labels?: KitchenFile | null;
  readonly variants: KitchenFile | null;
  /** what may be missing: a batch day's hours and places, packs and prices of ingredients, packs in the freezer */
  readonly day?: KitchenFile | null;
  readonly pantry?: KitchenFile | null;
  readonly packs?: KitchenFile | null;
  readonly formulas: readonly KitchenFile[];
  readonly trials: readonly KitchenFile[];
  readonly traces: readonly KitchenFile[];
  readonly folder: FolderFindings;
  readonly today?: string;
  readonly foods?: CheckKitchenOptions["foods"];
  readonly trialsAlone?: boolean;
}

/** What `checkKitchen` does, once it is known which file holds what. */
export function examineKitchen(parts: KitchenParts): KitchenCheck {
  const about = readPart(parts.about, readKitchenJson);
  const inUnits = { units: about?.units ?? undefined };
  const pans = readPart(parts.pans, (text, file) => readPans(text, file, inUnits));
  const appliances = readPart(parts.appliances, (text, file) => readAppliances(text, file, inUnits));
  const ingredients = ingredientsOf(parts.ingredients, parts.labels);
  const asTyped = readPart(parts.variants, (text, file) => readVariants(text, file, inUnits));
  const formulas = parts.formulas.map(({ file, text }) =>
    settleIngredients(readFormula(text, file), ingredients?.ingredients ?? []),
  );
  const isBlank = ({ text }: KitchenFile): boolean => text.trim() === "";
  const { today, trialsAlone = false } = parts;
  const asWritten = parts.trials
    .filter((log) => !isBlank(log))
    .map(({ file, text, bytes }) => ({ ...readLogRows(bytes ?? text, file, { today, ...inUnits }), file }));
  const names = {
    formulaId: formulaNames(formulas),
    panId: namesOf(pans, "id"),
    applianceId: namesOf(appliances, "applianceId"),
  };
  const variants = asTyped === null ? null : settleIds<Variant>(asTyped, names);
  const pantryNames = { ingredientId: ingredientNames(ingredients) };
  const pantry = readFilled(parts.pantry, (text, file) => readPantry(text, file, inUnits));
  const stores = pantry === null ? null : settleIds<PantryItem>(pantry, pantryNames);
  const packNames = { variantId: namesOf(variants, "variantId") };
  const typedPacks = readFilled(parts.packs, (text, file) => readPacks(text, file, inUnits));
  const packs = typedPacks === null ? null : settleIds<FreezerPack>(typedPacks, packNames);
  const trialNames = { ...names, variantId: namesOf(variants, "variantId") };
  const logs = asWritten.map((log) => settleNames(log, trialNames));
  const logged = logs.map((log) => namesOf(log, "trialId"));
  const trialIds = logged.includes(null) ? null : logged.flatMap((log) => log?.known ?? []);
  const traced = readTraces(parts.traces, trialIds);
  const ofFormulas = formulas.flatMap((read) =>
    ingredients === null ? [] : formulaSlips({ read, ...ingredients, foods: parts.foods }),
  );
  const headings = [pans, appliances, variants, stores, packs, ...logs].flatMap((part) =>
    Object.values(part?.headings ?? {}),
  );
  const guessed = guessUnits(headings);
  const units = about?.units ?? guessed.units;
  const day = readFilled(parts.day, (text, file) => readKitchenDay(text, file, units));
  const inFiles = [
    parts.folder.slips,
    ...[about, pans, appliances, ingredients, variants, ...formulas, ...logs].map((part) => part?.slips ?? []),
    repeatedNames(pans, "id"),
    repeatedNames(appliances, "applianceId"),
    repeatedNames(variants, "variantId"),
    repeatedFormulas(formulas),
    repeatedTrials(logs),
    traced.slips,
    unknownNames(variants, names),
    ...logs.map((log) => unknownNames(log, trialNames)),
    ...ofFormulas,
  ].flat();
  const ofPantry = [
    stores?.slips ?? [],
    repeatedNames(stores, "ingredientId"),
    unknownNames(stores, pantryNames),
  ].flat();
  const ofPacks = [packs?.slips ?? [], repeatedNames(packs, "packId"), unknownNames(packs, packNames)].flat();
  const ofDay = day?.slips ?? [];
  const besideTrials = [...ofPantry, ...ofPacks, ...ofDay];
  const { mixes, slips: ofMixes } = mixesOf(formulas, ingredients, new Set(ofFormulas.map(({ file }) => file)));
  const fitted = fitPans({ pans, variants, logs, mixes, units });
  const given = [
    parts.about,
    parts.pans,
    parts.appliances,
    parts.ingredients,
    parts.labels,
    ...parts.formulas,
    parts.variants,
    parts.day,
    parts.pantry,
    parts.packs,
  ];
  const order = [...parts.folder.slips, ...given].flatMap((one) => one?.file ?? []);
  const problems = slipLines([...inFiles, ...(trialsAlone ? [] : besideTrials), ...ofMixes, ...fitted.slips], order);
  const aside = trialsAlone ? slipLines(besideTrials, order) : [];

  const guess = `as ${guessed.taken} of the ${guessed.of} headings with a unit have it; write "units": "${units}" to settle it`;
  const ofTables = [pans, appliances, ingredients, ...formulas, variants, stores, packs, day].flatMap(
    (part) => part?.notices ?? [],
  );
  const ofLogs = logs.flatMap((log) => [...log.notices, ...startNotices(log, variants?.records ?? [])]);
  const noticesWith = (ofRows: readonly string[]): readonly string[] =>
    Object.freeze([
      ...parts.folder.notices,
      ...parts.trials.filter(isBlank).map(({ file }) => `${file} is empty: it has not even headings`),
      ...(about === null || about.units !== null
        ? []
        : [`${about.file} does not say the units: taken as ${units}, ${guess}`]),
      ...ofRows,
      ...fitted.notices,
      ...traced.notices,
    ]);
  const notices = noticesWith(noticeLines([...ofTables, ...ofLogs]));
  const kitchen: Kitchen = Object.freeze({
    name: about?.name ?? "",
    units,
    language: about?.language ?? "en",
    pans: pans?.records ?? [],
    appliances: appliances?.records ?? [],
    ingredients: ingredients?.ingredients ?? [],
    variants: fitted.variants,
    trials: fitted.trials,
    traces: traced.traces,
    day: day === null || ofDay.length > 0 ? {} : day.day,
    pantry: stores === null || ofPantry.length > 0 ? [] : stores.records,
    packs: packs === null || ofPacks.length > 0 ? [] : packs.records,
    notices: noticesWith(calmNotices([...ofTables, ...ofLogs])),
  });
  const summary = [
    counted(pans?.drafts.length ?? 0, "pan"),
    counted(appliances?.drafts.length ?? 0, "appliance"),
    counted(ingredients?.ids.length ?? 0, "ingredient"),
    counted(formulas.length, "formula"),
    counted(variants?.drafts.length ?? 0, "variant"),
    counted(
      logs.reduce((sum, { drafts }) => sum + drafts.length, 0),
      "trial",
    ),
    `${units} units`,
  ].join(", ");
  return Object.freeze({ kitchen: problems.length === 0 ? kitchen : null, problems, notices, aside, summary });
}

/** The ingredients of a kitchen's table and of its labels, as one. */
function ingredientsOf(
  table: KitchenFile | null,
  labels: KitchenFile | null | undefined,
): (ReadIngredients & { file: string }) | null {
  if (table === null) return null;
  const files = labels == null || labels.text.trim() === "" ? [table] : [table, labels];
  const joined = joinIngredients(files.map(({ file, text }) => readIngredients(text, file)));
  return { ...joined, file: files.map(({ file }) => file).join(" or ") };
}

function readPart<T>(part: KitchenFile | null, read: (text: string, file: string) => T): (T & { file: string }) | null {
  return part === null ? null : { ...read(part.text, part.file), file: part.file };
}

/** A file that a kitchen may have; one that is empty counts as none. */
function readFilled<T>(
  part: KitchenFile | null | undefined,
  read: (text: string, file: string) => T,
): (T & { file: string }) | null {
  return part == null || part.text.trim() === "" ? null : readPart(part, read);
}

/** What the formulas that are sound make, by id; and those that call themselves milder than what is in them. */
function mixesOf(
  formulas: readonly ReadFormula[],
  ingredients: ReadIngredients | null,
  isWrong: ReadonlySet<string>,
): Pick<FitPansOptions, "mixes"> & { readonly slips: readonly Slip[] } {
  const sound: readonly Ingredient[] = ingredients?.ingredients ?? [];
  const ids = new Set(sound.map(({ id }) => id));
  const mixes = new Map<string, Mix>();
  const slips: Slip[] = [];
  for (const { file, formula, placeOf } of formulas) {
    if (formula === null || isWrong.has(file)) continue;
    const lines = [...formula.mix, ...formula.coating.flatMap((layer) => layer.lines)];
    if (lines.some(({ ingredient }) => !ids.has(ingredient))) continue;
    const { composition } = formulaTotals(formula, sound);
    const densityKgM3 = mixDensity(composition, { temperatureC: 5, airFraction: formula.airFraction });
    try {
      mixes.set(formula.id, { formula, composition, densityKgM3, limit: formulaLimit(formula, sound, file) });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      const expected = error.message.replace(/^.*? foodClass must be /, "").replace(/, got [^,]*$/, "");
      const got = JSON.stringify(formula.foodClass);
      const { row, at } = placeOf("foodClass");
      slips.push({ file, row, at, expected, got, nearest: null });
    }
  }
  return { mixes, slips };
}
