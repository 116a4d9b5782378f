import { fail } from "../../check/check";
import { freezeDeep } from "../../check/freeze-deep";
import { fitLinear, type LinearFit } from "../curve/fit-linear";

/** How far a surface may bend: planes, twists, or twists and squares. */
export type SurfaceForm = "linear" | "interactions" | "quadratic";

/** Trials to lay a surface through. */
export interface FitSurfaceOptions {
  /** names, in the order of a point's numbers */
  readonly factors: readonly string[];
  /** where each trial was, in coded units: 0 in the middle, −1 and 1 at the ends (`codePoint`) */
  readonly points: readonly (readonly number[])[];
  /** what was measured */
  readonly y: readonly number[];
  /** which block each trial belongs to, such as a morning; all one unless given */
  readonly blocks?: readonly (string | number)[];
  /** "quadratic" unless given */
  readonly form?: SurfaceForm;
}

/** A surface y = b₀ + block + bᵀx + xᵀBx through trials. */
export interface SurfaceFit extends LinearFit {
  readonly factors: readonly string[];
  readonly form: SurfaceForm;
  /** where each trial was, with its block */
  readonly x: readonly { readonly point: readonly number[]; readonly block: string }[];
  /** height at the middle, the blocks counted alike */
  readonly middle: number;
  /** b: slope of each factor at the middle */
  readonly slopes: readonly number[];
  /** B: squares on the diagonal, half of each product beside it */
  readonly bends: readonly (readonly number[])[];
}

/**
 * Fits a response surface in coded units by least squares: y = b₀ + Σ bᵢxᵢ + Σ bᵢⱼxᵢxⱼ + Σ bᵢᵢxᵢ², with a step for each block but the
 * first (Box & Wilson 1951). Terms are named as `polynomialTerms` names them: `"air*time"`, `"air^2"`, the constant `"intercept"`.
 *
 * For the test against repeated trials give it to `lackOfFit`: trials of different blocks do not count as repeats.
 *
 * @throws where a factor stands at too few levels for the form, or terms follow from each other
 * @example
 * const points = [[-1, -1], [1, -1], [-1, 1], [1, 1], [-1, 0], [1, 0], [0, -1], [0, 1], [0, 0], [0, 0]];
 * const y = points.map(([a, b]) => 5 + a - a * a - 2 * b * b + 0.1 * (a + b) ** 3);
 * fitSurface({ factors: ["air", "time"], points, y }).parameters["time^2"].estimate; // → -2
 */
export function fitSurface(options: FitSurfaceOptions): SurfaceFit {
  const where = "fitSurface";
  const { factors, points, y, form = "quadratic" } = options;
  if (factors.length === 0 || new Set(factors).size !== factors.length)
    fail(`${where}: factors`, "must be at least one name, each once", factors);
  if (!["linear", "interactions", "quadratic"].includes(form))
    fail(`${where}: form`, 'must be "linear", "interactions" or "quadratic"', form);
  if (points.length !== y.length)
    fail(`${where}: points and y`, "must be equally long, one entry a trial", [points.length, y.length]);
  const uneven = points.find((point) => point.length !== factors.length);
  if (uneven !== undefined) fail(`${where}: points`, `must hold a number for each of ${factors.join(", ")}`, uneven);
  const blocks = (options.blocks ?? y.map(() => "all")).map(String);
  if (blocks.length !== y.length) fail(`${where}: blocks`, "must hold one entry a trial", blocks.length);
  const levels = form === "quadratic" ? 3 : 2;
  for (const [at, name] of factors.entries()) {
    const given = new Set(points.map((point) => point[at])).size;
    if (given < levels)
      fail(
        `${where}: ${name}`,
        `must stand at ${levels} levels or more for a ${form} surface: run another level, or take ${form === "quadratic" ? '"interactions"' : "it out"}`,
        given,
      );
  }
  const terms = termsOf(factors, form);
  const column = (powers: readonly number[]): number[] =>
    points.map((point) => powers.reduce((product, at) => product * point[at], 1));
  const covariates = Object.fromEntries(terms.map(({ name, powers }) => [name, column(powers)]));
  const hasBlocks = new Set(blocks).size > 1;
  const fit = fitLinear({ covariates: hasBlocks ? { ...covariates, block: blocks } : covariates, y });
  const of = (name: string): number => fit.parameters[name].estimate;
  const steps = (fit.levels.block ?? []).slice(1).map((block) => of(`block[${block}]`));
  const size = factors.length;
  const bends = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (const { name, powers } of terms) {
    if (powers.length !== 2) continue;
    const [one, other] = powers;
    const share = one === other ? 1 : 0.5;
    bends[one][other] = bends[other][one] = share * of(name);
  }
  return freezeDeep({
    ...fit,
    model: `${form} surface`,
    factors: [...factors],
    form,
    x: points.map((point, at) => ({ point: [...point], block: blocks[at] })),
    middle: of("intercept") + steps.reduce((sum, step) => sum + step, 0) / Math.max(1, steps.length + 1),
    slopes: factors.map(of),
    bends,
  });
}

/** The terms of a form by name, each as the places of the factors that it multiplies. */
export function termsOf(
  factors: readonly string[],
  form: SurfaceForm,
): readonly { readonly name: string; readonly powers: readonly number[] }[] {
  const lines = factors.map((name, at) => ({ name, powers: [at] }));
  const products = factors.flatMap((one, at) =>
    factors.slice(at + 1).map((other, further) => ({ name: `${one}*${other}`, powers: [at, at + 1 + further] })),
  );
  const squares = factors.map((name, at) => ({ name: `${name}^2`, powers: [at, at] }));
  if (form === "linear") return lines;
  return form === "interactions" ? [...lines, ...products] : [...lines, ...products, ...squares];
}
