/** The 27 functions of the NIST StRD nonlinear sets; x is a number, or a pair for Nelson (whose y is taken as log y). */
export type NistModel = (x: number | readonly number[], b: Readonly<Record<string, number>>) => number;

const { exp, cos, sin, atan, PI } = Math;
type OfX = (x: number, b: Readonly<Record<string, number>>) => number;

const cubicRatio: OfX = (x, { b1, b2, b3, b4, b5, b6, b7 }) =>
  (b1 + b2 * x + b3 * x ** 2 + b4 * x ** 3) / (1 + b5 * x + b6 * x ** 2 + b7 * x ** 3);
const chwirut: OfX = (x, { b1, b2, b3 }) => exp(-b1 * x) / (b2 + b3 * x);
const gauss: OfX = (x, { b1, b2, b3, b4, b5, b6, b7, b8 }) =>
  b1 * exp(-b2 * x) + b3 * exp(-((x - b4) ** 2) / b5 ** 2) + b6 * exp(-((x - b7) ** 2) / b8 ** 2);
const lanczos: OfX = (x, { b1, b2, b3, b4, b5, b6 }) => b1 * exp(-b2 * x) + b3 * exp(-b4 * x) + b5 * exp(-b6 * x);

const OF_X: Readonly<Record<string, OfX>> = {
  Bennett5: (x, { b1, b2, b3 }) => b1 * (b2 + x) ** (-1 / b3),
  BoxBOD: (x, { b1, b2 }) => b1 * (1 - exp(-b2 * x)),
  Chwirut1: chwirut,
  Chwirut2: chwirut,
  DanWood: (x, { b1, b2 }) => b1 * x ** b2,
  ENSO: (x, { b1, b2, b3, b4, b5, b6, b7, b8, b9 }) =>
    b1 +
    b2 * cos((2 * PI * x) / 12) +
    b3 * sin((2 * PI * x) / 12) +
    b5 * cos((2 * PI * x) / b4) +
    b6 * sin((2 * PI * x) / b4) +
    b8 * cos((2 * PI * x) / b7) +
    b9 * sin((2 * PI * x) / b7),
  Eckerle4: (x, { b1, b2, b3 }) => (b1 / b2) * exp(-0.5 * ((x - b3) / b2) ** 2),
  Gauss1: gauss,
  Gauss2: gauss,
  Gauss3: gauss,
  Hahn1: cubicRatio,
  Kirby2: (x, { b1, b2, b3, b4, b5 }) => (b1 + b2 * x + b3 * x ** 2) / (1 + b4 * x + b5 * x ** 2),
  Lanczos1: lanczos,
  Lanczos2: lanczos,
  Lanczos3: lanczos,
  MGH09: (x, { b1, b2, b3, b4 }) => (b1 * (x ** 2 + x * b2)) / (x ** 2 + x * b3 + b4),
  MGH10: (x, { b1, b2, b3 }) => b1 * exp(b2 / (x + b3)),
  MGH17: (x, { b1, b2, b3, b4, b5 }) => b1 + b2 * exp(-x * b4) + b3 * exp(-x * b5),
  Misra1a: (x, { b1, b2 }) => b1 * (1 - exp(-b2 * x)),
  Misra1b: (x, { b1, b2 }) => b1 * (1 - (1 + (b2 * x) / 2) ** -2),
  Misra1c: (x, { b1, b2 }) => b1 * (1 - (1 + 2 * b2 * x) ** -0.5),
  Misra1d: (x, { b1, b2 }) => (b1 * b2 * x) / (1 + b2 * x),
  Rat42: (x, { b1, b2, b3 }) => b1 / (1 + exp(b2 - b3 * x)),
  Rat43: (x, { b1, b2, b3, b4 }) => b1 / (1 + exp(b2 - b3 * x)) ** (1 / b4),
  Roszman1: (x, { b1, b2, b3, b4 }) => b1 - b2 * x - atan(b3 / (x - b4)) / PI,
  Thurber: cubicRatio,
};

export const NIST_MODELS: Readonly<Record<string, NistModel>> = {
  ...Object.fromEntries(
    Object.entries(OF_X).map(([name, model]): [string, NistModel] => [name, (x, b) => model(x as number, b)]),
  ),
  Nelson: (x, { b1, b2, b3 }) => {
    const [hours, celsius] = x as readonly number[];
    return b1 - b2 * hours * exp(-b3 * celsius);
  },
};
