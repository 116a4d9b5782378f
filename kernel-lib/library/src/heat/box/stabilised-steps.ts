/** A system dy/dt = rates(t, y) whose stiffness comes from diffusion. */
export interface DiffusiveSystem {
  /** the state, changed in place */
  readonly y: Float64Array;
  /** writes dy/dt for a state into `into` */
  readonly rates: (t: number, y: Float64Array, into: Float64Array) => void;
  /** upper bound of the fastest rate of decay at the state that `rates` saw last [1/s] */
  readonly fastestDecay: () => number;
  /** size that counts as one unit of error for each entry; 0 leaves an entry out of the error estimate */
  readonly errorScale: Float64Array;
}

/** How to step, and when to stop. */
export interface StepOptions {
  readonly fromS: number;
  readonly toS: number;
  /** first step to try [s] */
  readonly firstStepS: number;
  /** a step of this size throughout instead of steps that adapt; for studies of convergence */
  readonly fixedStepS?: number;
  /** called after each accepted step with the time and dy/dt there; returns true to stop */
  readonly accepted: (t: number, rates: Float64Array) => boolean;
}

/** What the stepping came to. */
export interface StepOutcome {
  readonly t: number;
  /** the step that would have come next [s] */
  readonly nextStepS: number;
  readonly steps: number;
  readonly rejected: number;
  /** times that `rates` was called */
  readonly evaluations: number;
}

const MOST_STAGES = 400;
const DAMPING = 2 / 13;

/**
 * Integrates a diffusive system with the stabilised explicit Runge-Kutta-Chebyshev method of second order: each step
 * takes as many stages as its stability needs, about √(1.54·step·fastestDecay). No matrix is solved, sums that the
 * rates conserve stay conserved to rounding, and no memory is taken in the loop.
 *
 * Reference: Sommeijer B.P., Shampine L.F., Verwer J.G. (1998), "RKC: an explicit solver for parabolic PDEs", Journal of
 * Computational and Applied Mathematics 88:315-326.
 */
export function stabilisedSteps(system: DiffusiveSystem, work: StepWorkspace, options: StepOptions): StepOutcome {
  const { y, rates, fastestDecay, errorScale } = system;
  const { rate0, rate1, candidate } = work;
  const { fromS, toS, fixedStepS, accepted } = options;
  const size = y.length;
  let t = fromS;
  let steps = 0;
  let rejected = 0;
  let evaluations = 1;
  rates(t, y, rate0);
  let decay = fastestDecay();
  let step = fixedStepS ?? options.firstStepS;
  const spanS = toS - fromS;
  while (toS - t > 1e-12 * Math.max(1, Math.abs(toS))) {
    step = Math.min(step, (0.653 * MOST_STAGES ** 2) / decay, spanS);
    // two steps of equal size to the end rather than one full and one sliver
    const left = toS - t;
    const last = step >= left * (1 - 1e-9);
    const taken = last ? left : fixedStepS === undefined && step > 0.5 * left ? 0.5 * left : step;
    const stages = Math.max(2, 1 + Math.ceil(Math.sqrt(1.54 * taken * decay + 1)));
    advance(system, work, t, taken, stages);
    evaluations += stages;
    rates(t + taken, candidate, rate1);
    let error = 0;
    let counted = 0;
    for (let i = 0; i < size; i++) {
      if (errorScale[i] === 0) continue;
      const estimate = (0.8 * (y[i] - candidate[i]) + 0.4 * taken * (rate0[i] + rate1[i])) / errorScale[i];
      error += estimate * estimate;
      counted++;
    }
    error = Math.sqrt(error / Math.max(1, counted));
    if (fixedStepS === undefined && !(error <= 1)) {
      rejected++;
      step = taken * Math.max(0.1, Number.isFinite(error) ? 0.8 / Math.cbrt(error) : 0.1);
      if (step < 1e-9) throw new Error("stabilisedSteps: the step shrank to nothing; the rates are not finite");
      continue;
    }
    y.set(candidate);
    rate0.set(rate1);
    t = last ? toS : t + taken;
    steps++;
    decay = fastestDecay();
    if (fixedStepS === undefined) step = taken * Math.min(4, 0.8 / Math.cbrt(Math.max(error, 1e-4)));
    if (accepted(t, rate0)) break;
  }
  return { t, nextStepS: step, steps, rejected, evaluations };
}

/** Arrays that the stepping works in, made once. */
export interface StepWorkspace {
  /** dy/dt at the start of a step */
  readonly rate0: Float64Array;
  /** dy/dt at its end */
  readonly rate1: Float64Array;
  readonly rate: Float64Array;
  readonly candidate: Float64Array;
  readonly before: Float64Array;
  readonly beforeThat: Float64Array;
}

/** Makes the arrays for a state of the given size. */
export function stepWorkspace(size: number): StepWorkspace {
  const array = (): Float64Array => new Float64Array(size);
  return { rate0: array(), rate1: array(), rate: array(), candidate: array(), before: array(), beforeThat: array() };
}

/** One step of the given number of stages from `y` into `work.candidate`. */
function advance(system: DiffusiveSystem, work: StepWorkspace, t: number, step: number, stages: number): void {
  const { y, rates } = system;
  const { rate0, rate, candidate, before, beforeThat } = work;
  const size = y.length;
  const w0 = 1 + DAMPING / (stages * stages);
  const square = w0 * w0 - 1;
  const root = Math.sqrt(square);
  const arc = stages * Math.log(w0 + root);
  const w1 = (Math.sinh(arc) * square) / (Math.cosh(arc) * stages * root - w0 * Math.sinh(arc));
  let b1 = 1 / (4 * w0 * w0);
  let b2 = b1;
  let share = w1 * b1;
  let c1 = share;
  let c2 = 0;
  let z1 = w0;
  let z2 = 1;
  let dz1 = 1;
  let dz2 = 0;
  let ddz1 = 0;
  let ddz2 = 0;
  for (let i = 0; i < size; i++) {
    beforeThat[i] = y[i];
    before[i] = y[i] + step * share * rate0[i];
  }
  for (let stage = 2; stage <= stages; stage++) {
    const z = 2 * w0 * z1 - z2;
    const dz = 2 * w0 * dz1 - dz2 + 2 * z1;
    const ddz = 2 * w0 * ddz1 - ddz2 + 4 * dz1;
    const b = ddz / (dz * dz);
    const a1 = 1 - z1 * b1;
    const mu = (2 * w0 * b) / b1;
    const nu = -b / b2;
    share = (mu * w1) / w0;
    rates(t + step * c1, before, rate);
    const start = 1 - mu - nu;
    const scaled = step * share;
    const old = step * share * a1;
    for (let i = 0; i < size; i++) {
      const next = mu * before[i] + nu * beforeThat[i] + start * y[i] + scaled * rate[i] - old * rate0[i];
      beforeThat[i] = before[i];
      before[i] = next;
    }
    const c = mu * c1 + nu * c2 + share * (1 - a1);
    c2 = c1;
    c1 = c;
    b2 = b1;
    b1 = b;
    z2 = z1;
    z1 = z;
    dz2 = dz1;
    dz1 = dz;
    ddz2 = ddz1;
    ddz1 = ddz;
  }
  candidate.set(before);
}
