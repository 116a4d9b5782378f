import { fail, positive } from "../../check/check";
import { parseAmount } from "../../units/typed/parse-amount";
import type { Ingredient } from "../ingredient/ingredient";
import { ingredientOf } from "../ingredient/ingredient-of";
import { type FormulaLine, MOST_G } from "./formula";
import { gramsOf, type MeasuredMass } from "./grams-of";

/** One line of a formula in grams. */
export interface WeighedLine {
  readonly ingredient: Ingredient;
  /** as the formula writes it */
  readonly amount: string;
  readonly massG: number;
  readonly by: "scale" | "household measure" | "percentage";
  /** `"weighed"`, the household weight with its source, or the percentage and what it is of */
  readonly how: string;
}

/** What `weighLines` works from. */
export interface WeighLinesOptions {
  readonly lines: readonly FormulaLine[];
  readonly ingredients: readonly Ingredient[];
  /** total (g), needed when every line is a percentage of the mix */
  readonly totalG?: number;
  /** named in errors: `"oat-bars mix"` */
  readonly where: string;
}

/** The most that one line may be of another (%): our judgement, water on a dry thickener. */
const MOST_PERCENT = 10_000;

const PERCENT = /^%\s*(?:of\s+(.+))?$/;

/**
 * Turns the lines of a mix or a coating layer into grams: weights are converted, household measures are looked up,
 * a percentage is of the base ingredient it names (`1.5 % of turkey-ground-93`) or of the whole (`12 % of mix`).
 * Percentages of the mix beside weighed lines share the whole with them: total = weighed / (1 − Σ percentages).
 */
export function weighLines(options: WeighLinesOptions): readonly WeighedLine[] {
  const { lines, ingredients, totalG, where } = options;
  const weighed = new Map<number, WeighedLine>();
  const ofBase: { at: number; percent: number; base: string }[] = [];
  const ofMix: { at: number; percent: number }[] = [];
  lines.forEach((line, at) => {
    const place = `${where}: amount of ${line.ingredient}`;
    const ingredient = ingredientOf(ingredients, line.ingredient, `${where}: ingredient`);
    const { amount, rest } = parseAmount(line.amount, place);
    const percent = PERCENT.exec(rest);
    if (!percent) {
      const measured = measuredIn(where, ingredient, line.amount);
      atMost(measured.massG, place);
      weighed.set(at, { ingredient, amount: line.amount, ...measured });
      return;
    }
    positive(amount, place, "%");
    if (amount > MOST_PERCENT) fail(place, `must be at most ${MOST_PERCENT} %`, amount);
    if (!percent[1]) fail(place, 'must say what the percentage is of, as in "1.5 % of mix"', line.amount);
    if (percent[1] === "mix") ofMix.push({ at, percent: amount });
    else ofBase.push({ at, percent: amount, base: percent[1] });
  });

  const mixPercent = ofMix.reduce((sum, { percent }) => sum + percent, 0);
  const basePercentOfMix = shareOfMixThroughBases(lines, ofMix, ofBase, where);
  const allPercent = mixPercent + basePercentOfMix;
  const weighBases = (): void => {
    for (const { at, percent, base } of ofBase) {
      if (weighed.has(at)) continue;
      const baseAt = lines.findIndex((line) => line.ingredient === base);
      const baseLine = weighed.get(baseAt);
      if (baseLine) set(at, (baseLine.massG * percent) / 100, `${percent} % of ${base}`);
    }
  };
  const set = (at: number, massG: number, how: string): void => {
    const ingredient = ingredientOf(ingredients, lines[at].ingredient);
    atMost(massG, `${where}: amount of ${lines[at].ingredient}`);
    weighed.set(at, { ingredient, amount: lines[at].amount, massG, by: "percentage", how });
  };

  weighBases();
  if (ofMix.length > 0) {
    const weighedG = [...weighed.values()].reduce((sum, line) => sum + line.massG, 0);
    const total = totalOf({ allPercent, weighedG, totalG, where });
    for (const { at, percent } of ofMix) set(at, (total * percent) / 100, `${percent} % of mix`);
    weighBases();
  }
  for (const { at, base } of ofBase) {
    if (!weighed.has(at)) {
      fail(
        `${where}: amount of ${lines[at].ingredient}`,
        "must be a percentage of a line that is not one itself",
        base,
      );
    }
  }
  return Object.freeze(lines.map((_, at) => Object.freeze(weighed.get(at)!)));
}

function atMost(massG: number, place: string): void {
  positive(massG, place, "g");
  if (massG > MOST_G) fail(place, `must be at most ${MOST_G} g`, massG);
}

/** `gramsOf`, with the formula named in its error. */
function measuredIn(where: string, ingredient: Ingredient, amount: string): MeasuredMass {
  try {
    return gramsOf(ingredient, amount);
  } catch (error) {
    throw error instanceof RangeError ? new RangeError(`${where}: ${error.message}`) : error;
  }
}

/** Percentage of the mix held by lines that are percentages of lines that are percentages of the mix. */
function shareOfMixThroughBases(
  lines: readonly FormulaLine[],
  ofMix: readonly { at: number; percent: number }[],
  ofBase: readonly { at: number; percent: number; base: string }[],
  where: string,
): number {
  let sum = 0;
  for (const { at, percent, base } of ofBase) {
    const places = lines.filter((line) => line.ingredient === base);
    if (places.length !== 1) {
      fail(
        `${where}: amount of ${lines[at].ingredient}`,
        "must be a percentage of an ingredient that stands in it exactly once",
        base,
      );
    }
    const inMix = ofMix.find((one) => lines[one.at].ingredient === base);
    if (inMix) sum += (inMix.percent * percent) / 100;
  }
  return sum;
}

function totalOf(options: { allPercent: number; weighedG: number; totalG: number | undefined; where: string }): number {
  const { allPercent, weighedG, totalG, where } = options;
  if (weighedG === 0) {
    if (Math.abs(allPercent - 100) > 0.05) {
      fail(
        `${where}: percentages of the mix`,
        `must sum to 100 when no line is weighed (off by ${(allPercent - 100).toFixed(2)})`,
        allPercent,
      );
    }
    if (totalG === undefined)
      fail(`${where}: mixG`, "must give the total when every line is a percentage of the mix", totalG);
    return positive(totalG, `${where}: mixG`, "g");
  }
  if (allPercent >= 100) {
    fail(`${where}: percentages of the mix`, "must sum to less than 100 beside weighed lines", allPercent);
  }
  return weighedG / (1 - allPercent / 100);
}
