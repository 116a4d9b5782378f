import { fail } from "../../check/check";
import type { CodedPoint } from "../factor/factor";
import type { DesignModel } from "./design-model";

/** Terms in named factors. */
export interface TermsModelOptions {
  /** names, in the order of a point's numbers */
  readonly factors: readonly string[];
  /** `"1"`, or products of factors and whole powers: `"air"`, `"air*time"`, `"air^2"`, `"air^2*time"` */
  readonly terms: readonly string[];
}

/**
 * A model from its terms: the regressor of `"air^2*time"` at a point is air² · time, in the point's (coded) numbers.
 *
 * @param options factors and terms
 * @returns terms, and the row of regressors at a point
 * @example
 * const model = termsModel({ factors: ["air", "time"], terms: ["1", "air", "air*time", "time^2"] });
 * model.row([0.5, -1]); // → [1, 0.5, -0.5, 1]
 */
export function termsModel({ factors, terms }: TermsModelOptions): DesignModel<CodedPoint> {
  const where = "termsModel: terms";
  if (new Set(factors).size !== factors.length || factors.length === 0)
    fail("termsModel: factors", "must be at least one name, each once", factors);
  if (terms.length === 0) fail(where, "must hold at least one term", terms);
  const powers = terms.map((term) => powersOf(where, factors, term));
  const keys = powers.map(String);
  const twice = terms.find((_, at) => keys.indexOf(keys[at]) !== at);
  if (twice !== undefined) fail(where, "must hold each term once", twice);
  return Object.freeze({
    terms: Object.freeze([...terms]),
    row: (point: CodedPoint): readonly number[] => {
      if (point.length !== factors.length)
        fail("termsModel: point", `must hold one number for each of ${factors.join(", ")}`, point);
      return powers.map((ofTerm) => ofTerm.reduce((product, power, at) => product * point[at] ** power, 1));
    },
  });
}

function powersOf(where: string, factors: readonly string[], term: string): readonly number[] {
  const powers = factors.map(() => 0);
  if (term === "1") return powers;
  for (const part of term.split("*")) {
    const [name, power = "1", more] = part.trim().split("^");
    const at = factors.indexOf(name.trim());
    if (at < 0 || more !== undefined || !/^[1-9]$/.test(power.trim()))
      fail(where, `must be "1" or products of ${factors.join(", ")} and their powers 1 to 9`, term);
    powers[at] += Number(power);
  }
  return powers;
}
