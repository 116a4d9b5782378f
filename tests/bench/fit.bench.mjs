/**
 * Curve fits: certified sets solved, and times beside ml-levenberg-marquardt (relative central differences) and scipy's
 * curve_fit (its defaults).
 * Ratio = peer's time / ours: above 1, ours is faster. Both peers fit parameters alone or with a covariance; ours gives
 * standard errors, intervals, leverage, criteria and notices in the time shown.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { bootstrapCurve, curveModel, fitCurve } from "slabwright/fit";

const nist = JSON.parse(readFileSync(new URL("../published/nist-strd/nonlinear.json", import.meta.url), "utf8")).sets;
const { exp, cos, sin, atan, PI } = Math;

const cubicRatio = (x, [a, b, c, d, e, f, g]) =>
  (a + b * x + c * x ** 2 + d * x ** 3) / (1 + e * x + f * x ** 2 + g * x ** 3);
const chwirut = (x, [a, b, c]) => exp(-a * x) / (b + c * x);
const gauss = (x, [a, b, c, d, e, f, g, h]) =>
  a * exp(-b * x) + c * exp(-((x - d) ** 2) / e ** 2) + f * exp(-((x - g) ** 2) / h ** 2);
const lanczos = (x, [a, b, c, d, e, f]) => a * exp(-b * x) + c * exp(-d * x) + e * exp(-f * x);
const MODELS = {
  Bennett5: (x, [a, b, c]) => a * (b + x) ** (-1 / c),
  BoxBOD: (x, [a, b]) => a * (1 - exp(-b * x)),
  Chwirut1: chwirut,
  Chwirut2: chwirut,
  DanWood: (x, [a, b]) => a * x ** b,
  ENSO: (x, [a, b, c, d, e, f, g, h, i]) =>
    a +
    b * cos((2 * PI * x) / 12) +
    c * sin((2 * PI * x) / 12) +
    e * cos((2 * PI * x) / d) +
    f * sin((2 * PI * x) / d) +
    h * cos((2 * PI * x) / g) +
    i * sin((2 * PI * x) / g),
  Eckerle4: (x, [a, b, c]) => (a / b) * exp(-0.5 * ((x - c) / b) ** 2),
  Gauss1: gauss,
  Gauss2: gauss,
  Gauss3: gauss,
  Hahn1: cubicRatio,
  Kirby2: (x, [a, b, c, d, e]) => (a + b * x + c * x ** 2) / (1 + d * x + e * x ** 2),
  Lanczos1: lanczos,
  Lanczos2: lanczos,
  Lanczos3: lanczos,
  MGH09: (x, [a, b, c, d]) => (a * (x ** 2 + x * b)) / (x ** 2 + x * c + d),
  MGH10: (x, [a, b, c]) => a * exp(b / (x + c)),
  MGH17: (x, [a, b, c, d, e]) => a + b * exp(-x * d) + c * exp(-x * e),
  Misra1a: (x, [a, b]) => a * (1 - exp(-b * x)),
  Misra1b: (x, [a, b]) => a * (1 - (1 + (b * x) / 2) ** -2),
  Misra1c: (x, [a, b]) => a * (1 - (1 + 2 * b * x) ** -0.5),
  Misra1d: (x, [a, b]) => (a * b * x) / (1 + b * x),
  Nelson: ([hours, celsius], [a, b, c]) => a - b * hours * exp(-c * celsius),
  Rat42: (x, [a, b, c]) => a / (1 + exp(b - c * x)),
  Rat43: (x, [a, b, c, d]) => a / (1 + exp(b - c * x)) ** (1 / d),
  Roszman1: (x, [a, b, c, d]) => a - b * x - atan(c / (x - d)) / PI,
  Thurber: cubicRatio,
};

const digits = (got, wanted) =>
  Math.min(
    ...got.map((value, i) =>
      value === wanted[i] ? 15 : -Math.log10(Math.abs(value - wanted[i]) / Math.abs(wanted[i])),
    ),
  );
const observed = (name) => (name === "Nelson" ? nist[name].y.map(Math.log) : nist[name].y);
const estimates = (fit) => fit.names.map((name) => fit.parameters[name].estimate);

/** Median time of one call once it is warm, ms. */
function timeOf(work, calls) {
  for (let i = 0; i < 10 * calls; i++) work();
  const batches = Array.from({ length: 9 }, () => {
    const start = performance.now();
    for (let i = 0; i < calls; i++) work();
    return (performance.now() - start) / calls;
  });
  return batches.sort((one, other) => one - other)[4];
}

// Twelve invented points on end + (start - end) e^(-rate x).
const twelve = {
  x: [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 22],
  y: [31.2, 44.1, 54.8, 63.1, 72.2, 78.6, 89.1, 97.9, 103.2, 109.8, 112.9, 116.8],
  start: [100, 10, 0.1],
};
const approach = curveModel({
  name: "approach",
  evaluate: (x, { end, start, rate }) => end + (start - end) * Math.exp(-rate * x),
  start: { end: 100, start: 10, rate: 0.1 },
});
const thurber = curveModel({
  name: "Thurber",
  evaluate: (x, { a, b, c, d, e, f, g }) => (a + x * (b + x * (c + x * d))) / (1 + x * (e + x * (f + x * g))),
  start: Object.fromEntries([..."abcdefg"].map((letter, k) => [letter, nist.Thurber.start2[k]])),
});
const thurberArray = (x, [a, b, c, d, e, f, g]) => (a + x * (b + x * (c + x * d))) / (1 + x * (e + x * (f + x * g)));
const approachArray = (x, [end, start, rate]) => end + (start - end) * Math.exp(-rate * x);

/**
 * The peer on one problem: with its default maximum of 100 steps, which it always takes because it stops at nothing but
 * an absolute error, and with the fewest steps that would have given 6 digits, which nobody knows beforehand.
 */
function mlFit(levenbergMarquardt, data, evaluate, start, wanted) {
  const of = (parameters) => (x) => evaluate(x, parameters);
  const runWith = (maxIterations) => () =>
    levenbergMarquardt(data, of, {
      initialValues: start,
      gradientDifference: start.map((value) => 1e-6 * Math.abs(value)),
      centralDifference: true,
      maxIterations,
      errorTolerance: 1e-30,
      improvementThreshold: 1e-12,
    });
  const digitsOf = (work) => {
    try {
      return digits(work().parameterValues, wanted);
    } catch {
      return 0;
    }
  };
  for (let steps = 2; steps < 500; steps++) {
    const least = runWith(steps);
    if (digitsOf(least) < 6) continue;
    const usual = runWith(100);
    return { steps, least, usual, digits: digitsOf(usual) };
  }
  return null;
}

const PYTHON = `
import json, sys, time
import numpy as np
from scipy.optimize import curve_fit
import scipy
data = json.load(sys.stdin)
def approach(x, end, start, rate): return end + (start - end) * np.exp(-rate * x)
def thurber(x, a, b, c, d, e, f, g): return (a + x * (b + x * (c + x * d))) / (1 + x * (e + x * (f + x * g)))
out = {"version": scipy.__version__}
for name, f in (("twelve", approach), ("thurber", thurber)):
    x = np.array(data[name]["x"]); y = np.array(data[name]["y"]); p0 = data[name]["start"]
    work = lambda: curve_fit(f, x, y, p0)
    p, _ = work()
    times = []
    for _ in range(9):
        t = time.perf_counter()
        for _ in range(50): work()
        times.append((time.perf_counter() - t) / 50)
    out[name] = {"ms": 1000 * sorted(times)[4], "parameters": list(p)}
p, _ = curve_fit(approach, np.array(data["twelve"]["x"]), np.array(data["twelve"]["y"]), data["twelve"]["start"])
x = np.array(data["twelve"]["x"]); fitted = approach(x, *p); r = np.array(data["twelve"]["y"]) - fitted
rng = np.random.default_rng(1); t = time.perf_counter()
for _ in range(1000): curve_fit(approach, x, fitted + rng.choice(r, len(r)), p)
out["bootstrapMs"] = 1000 * (time.perf_counter() - t)
print(json.dumps(out))
`;

function scipy() {
  const input = JSON.stringify({
    twelve,
    thurber: { x: nist.Thurber.x, y: nist.Thurber.y, start: nist.Thurber.start2 },
  });
  const run = spawnSync("python3", ["-c", PYTHON], { input, encoding: "utf8", timeout: 120_000 });
  return run.status === 0 ? JSON.parse(run.stdout) : null;
}

export async function rows() {
  let peer = null;
  try {
    peer = (await import("ml-levenberg-marquardt")).levenbergMarquardt;
  } catch {}
  const python = scipy();

  let solved = 0;
  let errorsGood = 0;
  let peerSolved = 0;
  for (const [name, set] of Object.entries(nist)) {
    const x = set.x;
    const y = observed(name);
    for (const which of ["start1", "start2"]) {
      const names = set[which].map((_, k) => `b${k}`);
      const start = Object.fromEntries(names.map((one, k) => [one, set[which][k]]));
      const model = curveModel({
        name,
        start,
        evaluate: (at, p) =>
          MODELS[name](
            at,
            names.map((one) => p[one]),
          ),
      });
      const fit = fitCurve(model, { x, y });
      const good = digits(estimates(fit), set.certified) >= 6;
      if (good) solved++;
      const errors = fit.names.map((one) => fit.parameters[one].standardError ?? Number.NaN);
      if (good && name !== "Lanczos1" && digits(errors, set.standardDeviations) >= 4) errorsGood++;
      if (!peer) continue;
      try {
        const { parameterValues } = peer({ x, y }, (p) => (at) => MODELS[name](at, p), {
          initialValues: set[which],
          gradientDifference: set[which].map((value) => 1e-6 * Math.abs(value)),
          centralDifference: true,
          maxIterations: 5000,
          errorTolerance: 1e-30,
          improvementThreshold: 1e-12,
        });
        if (digits(parameterValues, set.certified) >= 6) peerSolved++;
      } catch {}
    }
  }

  const fit = fitCurve(approach, twelve);
  const twelveMs = timeOf(() => fitCurve(approach, twelve), 1000);
  const bootstrapMs = timeOf(() => bootstrapCurve(approach, fit, { seed: 1 }), 2);
  const thurberData = { x: nist.Thurber.x, y: nist.Thurber.y };
  const thurberMs = timeOf(() => fitCurve(thurber, thurberData), 60);
  const thurberDigits = digits(estimates(fitCurve(thurber, thurberData)), nist.Thurber.certified);

  const ml = peer && {
    twelve: mlFit(peer, twelve, approachArray, twelve.start, estimates(fit)),
    thurber: mlFit(peer, thurberData, thurberArray, nist.Thurber.start2, nist.Thurber.certified),
  };
  const boot =
    ml?.twelve &&
    mlFit(
      peer,
      twelve,
      approachArray,
      estimates(fit).map((v) => v * 1.01),
      estimates(fit),
    );

  const none = "peer not installed";
  const row = (name, value, unit, peerName, peerValue, note) => ({
    name,
    value,
    unit,
    peer: peerValue === null ? null : peerName,
    peerValue,
    ratio: peerValue === null ? null : unit === "ms" ? peerValue / value : value / peerValue,
    note,
  });
  const mlRow = (name, value, one, calls, times = 1) => {
    if (!one) return row(name, value, "ms", null, null, peer ? "peer never reaches 6 digits" : none);
    const usual = timeOf(one.usual, calls) * times;
    const least = timeOf(one.least, calls) * times;
    return row(
      name,
      value,
      "ms",
      "ml-levenberg-marquardt 5.1.0",
      usual,
      `peer: 100 steps, ${one.digits.toFixed(1)} digits, no covariance; ${one.steps} steps, the fewest for 6 digits, would take ${least.toPrecision(3)} ms`,
    );
  };
  const pyRow = (name, value, ms, note) =>
    row(
      name,
      value,
      "ms",
      python ? `scipy ${python.version} curve_fit` : null,
      python ? ms : null,
      python ? note : "no python3 with scipy here",
    );
  const pyDigits = (one, wanted) => (one ? `peer's defaults, ${digits(one.parameters, wanted).toFixed(1)} digits` : "");
  return [
    row(
      "fit.nist.runs6",
      solved,
      "of 54",
      "ml-levenberg-marquardt 5.1.0",
      peer ? peerSolved : null,
      peer ? "peer: 5000 steps" : none,
    ),
    row("fit.nist.sd4", errorsGood, "of 52", null, null, "Lanczos1 left out; peer gives no standard errors"),
    mlRow("fit.12pt.ms", twelveMs, ml?.twelve, 20),
    pyRow("fit.12pt.ms", twelveMs, python?.twelve.ms, pyDigits(python?.twelve, estimates(fit))),
    mlRow("fit.bootstrap1000.ms", bootstrapMs, boot, 20, 1000),
    pyRow("fit.bootstrap1000.ms", bootstrapMs, python?.bootstrapMs, "peer's defaults"),
    mlRow("fit.thurber.ms", thurberMs, ml?.thurber, 10),
    pyRow(
      "fit.thurber.ms",
      thurberMs,
      python?.thurber.ms,
      `ours ${thurberDigits.toFixed(1)} digits; ${pyDigits(python?.thurber, nist.Thurber.certified)}`,
    ),
  ];
}
