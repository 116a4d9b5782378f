import { freezeDeep } from "../../check/freeze-deep";
import {
  decomposeQr,
  inverseOfR,
  type QrDecomposition,
  qrWorkspace,
} from "../../statistics/linear-algebra/qr-decomposition";
import { symmetricEigen } from "../../statistics/linear-algebra/symmetric-eigen";
import { intervalFactor } from "../doubt/interval-factor";
import type { Fit, ParameterEstimate } from "../fit";
import { UNDETERMINED } from "./levenberg-marquardt";
import type { NamedSolution, ParameterSetting } from "./named-problem";

/** What `summariseFit` turns into a `Fit`. */
export interface FitParts<Name extends string> {
  readonly model: string;
  readonly names: readonly Name[];
  readonly settings: readonly ParameterSetting[];
  readonly solved: NamedSolution;
  readonly sdKnown: boolean;
  readonly rangeX: readonly [number, number] | null;
  /** sum of the logarithms of the weights; 0 without weights */
  readonly sumLogWeights: number;
  /** observed minus fitted, unweighted */
  readonly residuals: readonly number[];
  readonly notices: readonly string[];
}

/** Turns the end of a search into estimates with their doubt: covariance s²(JᵀJ)⁻¹ by QR, Wald intervals, criteria. */
export function summariseFit<Name extends string>(parts: FitParts<Name>): Fit<Name> {
  const { names, settings, solved, sdKnown } = parts;
  const { solution, values, free, atBound } = solved;
  const n = solution.residuals.length;
  const p = free.length;
  const notices = [...parts.notices];
  if (!solution.converged) notices.push(`The fit did not converge (${solution.reason}): do not use its numbers.`);

  const open = free.map((_, k) => k).filter((k) => atBound[free[k]] === null);
  const { columns, qr } = spaceOf(n, open.length);
  const norms = open.map((k, at) => {
    let square = 0;
    for (let i = 0; i < n; i++) square += solution.jacobian[k * n + i] ** 2;
    const norm = Math.sqrt(square) || 1;
    for (let i = 0; i < n; i++) columns[at * n + i] = solution.jacobian[k * n + i] / norm;
    return norm;
  });
  decomposeQr(qr, columns);
  let rank = 0;
  while (rank < open.length && Math.abs(qr.diagonal[rank]) > UNDETERMINED) rank++;
  const inverse = inverseOfR(qr, rank);

  const undetermined = new Set<number>();
  for (let k = rank; k < open.length; k++) {
    undetermined.add(qr.pivot[k]);
    for (let row = 0; row < rank; row++) {
      let share = 0;
      for (let c = row; c < rank; c++) share += inverse[row * open.length + c] * qr.packed[k * n + c];
      if (Math.abs(share) > 1e-6) undetermined.add(qr.pivot[row]);
    }
  }

  const degreesOfFreedom = n - p;
  const residualSd = degreesOfFreedom > 0 ? Math.sqrt(solution.rss / degreesOfFreedom) : 0;
  const unit = sdKnown ? 1 : residualSd;
  const factor = sdKnown || degreesOfFreedom > 0 ? intervalFactor({ degreesOfFreedom, sdKnown }) : Number.NaN;
  const covariance = names.map(() => names.map(() => 0));
  for (let s = 0; s < rank; s++) {
    for (let t = s; t < rank; t++) {
      const left = qr.pivot[s];
      const right = qr.pivot[t];
      if (undetermined.has(left) || undetermined.has(right)) continue;
      let sum = 0;
      for (let c = t; c < rank; c++) sum += inverse[s * open.length + c] * inverse[t * open.length + c];
      const i = free[open[left]];
      const j = free[open[right]];
      const onLog = (at: number): number => (settings[at].scale === "log" ? values[at] : 1);
      const value = ((sum * unit * unit) / norms[left] / norms[right]) * onLog(i) * onLog(j);
      covariance[i][j] = value;
      covariance[j][i] = value;
    }
  }

  const known = new Set(open.map((k) => free[k]).filter((_, at) => !undetermined.has(at)));
  const parameters = {} as Record<Name, ParameterEstimate>;
  names.forEach((name, j) => {
    const standardError = known.has(j) ? Math.sqrt(covariance[j][j]) : null;
    parameters[name] = {
      estimate: values[j],
      standardError,
      interval95: standardError === null ? null : waldInterval(values[j], standardError * factor, settings[j]),
      atBound: atBound[j],
      fixed: settings[j].fixed === true,
    };
    if (atBound[j] !== null) {
      notices.push(
        `${name} rests at its ${atBound[j]} bound ${values[j]}: it has no standard error, and the others are given as if it were known.`,
      );
    }
  });
  if (undetermined.size > 0) {
    const list = [...undetermined].map((k) => names[free[open[k]]]).join(", ");
    notices.push(`The data leave ${list} undetermined: fix one of them or measure over a wider range.`);
  }

  const correlation = names.map((_, i) =>
    names.map((__, j) => {
      const scale = Math.sqrt(covariance[i][i] * covariance[j][j]);
      return scale > 0 ? (i === j ? 1 : covariance[i][j] / scale) : 0;
    }),
  );
  for (let i = 0; i < names.length; i++) {
    for (let j = i + 1; j < names.length; j++) {
      if (Math.abs(correlation[i][j]) > 0.995) {
        notices.push(
          `${names[i]} and ${names[j]} are correlated ${correlation[i][j].toFixed(4)}: the data scarcely tell them apart, so read them together.`,
        );
      }
    }
  }

  const conditionNumber = conditionOf(columns, n, open.length);
  if (conditionNumber > 1e4 && undetermined.size === 0) {
    notices.push(
      `The parameters nearly depend on each other (condition number ${conditionNumber.toPrecision(2)}): measure over a wider range, or fix one.`,
    );
  }

  // one at its bound is held there, not estimated: the curve is that of the narrower form (Anraku 1999 counts likewise)
  const count = open.length + (sdKnown ? 0 : 1);
  const logLikelihood =
    0.5 * parts.sumLogWeights -
    0.5 * n * Math.log(2 * Math.PI) -
    (sdKnown ? 0.5 * solution.rss : 0.5 * n * (Math.log(solution.rss / n) + 1));
  return freezeDeep({
    kind: "fit",
    model: parts.model,
    names,
    parameters,
    covariance,
    correlation,
    n,
    degreesOfFreedom,
    sdKnown,
    rangeX: parts.rangeX,
    logLikelihood,
    aicc: correctedAic(logLikelihood, count, n),
    bic: -2 * logLikelihood + count * Math.log(n),
    converged: solution.converged && !solution.singular,
    reason: solution.singular ? `${solution.reason}, but the data leave a direction undetermined` : solution.reason,
    iterations: solution.iterations,
    notices,
    rss: solution.rss,
    residualSd,
    residuals: parts.residuals,
    leverage: leverages(qr.rows, open.length, rank, qr, inverse, columns),
    conditionNumber,
  });
}

/** AIC with the small-sample correction of Hurvich & Tsai (1989), `count` parameters (the sd among them). */
export function correctedAic(logLikelihood: number, count: number, n: number): number {
  if (n - count - 1 <= 0) return Number.POSITIVE_INFINITY;
  return -2 * logLikelihood + 2 * count + (2 * count * (count + 1)) / (n - count - 1);
}

const spaces = new Map<number, { readonly columns: Float64Array; readonly qr: QrDecomposition }>();

/** Room for one decomposition of this size, used again by the next fit of the same size. */
function spaceOf(rows: number, count: number): { readonly columns: Float64Array; readonly qr: QrDecomposition } {
  const key = rows * 65536 + count;
  let space = spaces.get(key);
  if (space === undefined) {
    if (spaces.size >= 16) spaces.clear();
    space = { columns: new Float64Array(rows * count), qr: qrWorkspace(rows, count) };
    spaces.set(key, space);
  }
  return space;
}

/** Estimate ± half-width, on the logarithm where the parameter is searched there, cut off at its bounds. */
export function waldInterval(value: number, half: number, setting: ParameterSetting): readonly [number, number] {
  const { lower = Number.NEGATIVE_INFINITY, upper = Number.POSITIVE_INFINITY } = setting;
  const ends =
    setting.scale === "log"
      ? [value * Math.exp(-half / value), value * Math.exp(half / value)]
      : [value - half, value + half];
  return [Math.max(lower, ends[0]), Math.min(upper, ends[1])];
}

function leverages(
  n: number,
  p: number,
  rank: number,
  qr: { readonly pivot: Int32Array },
  inverse: Float64Array,
  columns: Float64Array,
): number[] {
  const result: number[] = [];
  for (let i = 0; i < n; i++) {
    let total = 0;
    for (let c = 0; c < rank; c++) {
      let entry = 0;
      for (let s = 0; s <= c; s++) entry += columns[qr.pivot[s] * n + i] * inverse[s * p + c];
      total += entry * entry;
    }
    result.push(Math.min(1, total));
  }
  return result;
}

function conditionOf(columns: Float64Array, n: number, p: number): number {
  if (p < 2) return 1;
  const gram: number[][] = [];
  for (let a = 0; a < p; a++) {
    const row: number[] = [];
    for (let b = 0; b < p; b++) {
      let dot = 0;
      for (let i = 0; i < n; i++) dot += columns[a * n + i] * columns[b * n + i];
      row.push(dot);
    }
    gram.push(row);
  }
  const { values } = symmetricEigen(gram);
  const smallest = values[p - 1];
  return smallest > 0 ? Math.sqrt(values[0] / smallest) : Number.POSITIVE_INFINITY;
}
