import { fail, finite, positive } from "../../check/check";

/** Where a run stands in coded units: one number a factor, −1 at its low value, 1 at its high one, 0 half-way. */
export type CodedPoint = readonly number[];

/** Something that a plan sets on purpose. */
export interface Factor {
  /** with its unit: `"airC"` */
  readonly name: string;
  /** real value at −1 */
  readonly low: number;
  /** real value at 1, above `low` */
  readonly high: number;
  /** what can be set lies on whole multiples of this, such as 5 on a dial; any value unless given */
  readonly step?: number;
}

/** Throws where factors cannot be coded: none, a name twice, low not below high, a step that parts nothing. */
export function checkFactors(where: string, factors: readonly Factor[]): void {
  if (factors.length === 0) fail(`${where}: factors`, "must name at least one factor", factors);
  const names = factors.map(({ name }) => name);
  for (const [at, { name, low, high, step }] of factors.entries()) {
    if (names.indexOf(name) !== at) fail(`${where}: factors`, "must each have a name of its own", name);
    finite(low, `${where}: low of ${name}`, "");
    finite(high, `${where}: high of ${name}`, "");
    if (!(low < high)) fail(`${where}: low of ${name}`, `must be below its high ${high}`, low);
    if (step === undefined) continue;
    positive(step, `${where}: step of ${name}`, "");
    if (step > high - low) fail(`${where}: step of ${name}`, `must be at most ${high - low}, from low to high`, step);
  }
}
