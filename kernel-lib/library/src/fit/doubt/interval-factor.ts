import { studentTQuantile } from "../../statistics/distributions/student-t-distribution";
import type { Estimates } from "../fit";

const known = new Map<number, number>();

/** Half-width of an interval in standard errors: Student's t, or the normal where the scatter is known. */
export function intervalFactor(fit: Pick<Estimates, "degreesOfFreedom" | "sdKnown">, confidence = 0.95): number {
  const df = fit.sdKnown ? Number.POSITIVE_INFINITY : fit.degreesOfFreedom;
  if (confidence !== 0.95) return studentTQuantile(0.5 + confidence / 2, df);
  let factor = known.get(df);
  if (factor === undefined) {
    factor = studentTQuantile(0.975, df);
    known.set(df, factor);
  }
  return factor;
}
