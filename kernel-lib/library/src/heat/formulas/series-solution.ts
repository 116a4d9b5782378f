import { fail, notNegative, positive, within } from "../../check/check";
import { besselJ } from "./bessel";
import { type SeriesShape, seriesTerms } from "./series-terms";

/** A body of constant properties in air of another temperature. */
export interface SeriesSolutionOptions {
  /** default `"slab"`, both faces in the air */
  readonly shape?: SeriesShape;
  /** h·ℓ/k, ℓ half the thickness or the radius [-] */
  readonly biot: number;
  /** α·t/ℓ² [-] */
  readonly fourier: number;
  /** place: 0 the centre, 1 the surface [-]; default 0 */
  readonly position?: number;
}

/** What is left of the starting difference to the air, (T − Ta)/(T0 − Ta) [-]. */
export interface SeriesSolution {
  readonly here: number;
  readonly centre: number;
  readonly surface: number;
  /** over the volume */
  readonly mean: number;
}

const SHAPE_IN: Readonly<Record<SeriesShape, (root: number, x: number) => number>> = {
  slab: (root, x) => Math.cos(root * x),
  cylinder: (root, x) => besselJ(0, root * x),
  sphere: (root, x) => (x === 0 ? 1 : Math.sin(root * x) / (root * x)),
};

const SHAPE_MEAN: Readonly<Record<SeriesShape, (root: number) => number>> = {
  slab: (root) => Math.sin(root) / root,
  cylinder: (root) => (2 * besselJ(1, root)) / root,
  sphere: (root) => (3 * (Math.sin(root) - root * Math.cos(root))) / root ** 3,
};

/**
 * Temperature in a slab, long cylinder or sphere of constant properties with convection at its surface, exact series.
 *
 * Θ = (T − Ta)/(T0 − Ta) = Σ Cn·exp(−ζn²Fo)·f(ζn·X), f = cos, J0 or sin(z)/z.
 *
 * @returns what is left of the starting difference at the place, centre, surface and on average [-]
 *
 * Range: no freezing, no drying, Fo ≥ 0.0005; for shorter times take `semiInfiniteSolution`.
 *
 * @example
 * seriesSolution({ biot: 1, fourier: 1 }).centre; // → 0.5338594
 * seriesSolution({ shape: "cylinder", biot: 1, fourier: 1 }).centre; // → 0.2493797
 *
 * Reference: Carslaw H.S., Jaeger J.C. (1959), Conduction of Heat in Solids, 2nd ed., chapters 3, 7, 9.
 */
export function seriesSolution(options: SeriesSolutionOptions): SeriesSolution {
  const { shape = "slab", position = 0 } = options;
  if (!Object.hasOwn(SHAPE_IN, shape))
    fail("seriesSolution: shape", "must be slab, cylinder or sphere", shape as unknown);
  const biot = positive(options.biot, "seriesSolution: biot", "");
  const fourier = within(options.fourier, 0.0005, 1e6, "seriesSolution: fourier", "(below: semiInfiniteSolution)");
  within(position, 0, 1, "seriesSolution: position", "");
  const count = Math.max(3, Math.ceil(Math.sqrt(36 / fourier) / Math.PI) + 2);
  let [here, centre, surface, mean] = [0, 0, 0, 0];
  for (const { root, coefficient } of seriesTerms(shape, biot, count)) {
    const left = coefficient * Math.exp(-root * root * fourier);
    here += left * SHAPE_IN[shape](root, position);
    centre += left;
    surface += left * SHAPE_IN[shape](root, 1);
    mean += left * SHAPE_MEAN[shape](root);
  }
  return Object.freeze({ here, centre, surface, mean });
}

/** A box of constant properties, all six faces in the air. */
export interface BrickSeriesOptions {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly coefficientWm2K: number;
  readonly conductivityWmK: number;
  readonly densityKgM3: number;
  readonly specificHeatKJkgK: number;
  readonly timeMin: number;
}

/**
 * Temperature in a rectangular piece of constant properties: the product of its three slabs.
 *
 * Θ = Θx·Θy·Θz, for the centre and for the mean.
 *
 * @returns what is left of the starting difference to the air at the centre and on average [-]
 *
 * Range: as `seriesSolution`; all faces with the same coefficient and air.
 *
 * @example
 * const bite = { lengthMm: 40, widthMm: 40, thicknessMm: 12.7, coefficientWm2K: 25, conductivityWmK: 0.45, densityKgM3: 1050, specificHeatKJkgK: 3.4 };
 * brickSeriesSolution({ ...bite, timeMin: 5 }).centre; // → 0.7733938
 *
 * Reference: Carslaw & Jaeger (1959), section 1.15 (products of solutions).
 */
export function brickSeriesSolution(options: BrickSeriesOptions): { readonly centre: number; readonly mean: number } {
  const where = "brickSeriesSolution";
  const k = positive(options.conductivityWmK, `${where}: conductivityWmK`, "W/(m·K)");
  const density = positive(options.densityKgM3, `${where}: densityKgM3`, "kg/m³");
  const specificHeat = positive(options.specificHeatKJkgK, `${where}: specificHeatKJkgK`, "kJ/(kg·K)");
  const h = positive(options.coefficientWm2K, `${where}: coefficientWm2K`, "W/(m²·K)");
  const seconds = 60 * notNegative(options.timeMin, `${where}: timeMin`, "min");
  const diffusivity = k / (density * specificHeat * 1000);
  let centre = 1;
  let mean = 1;
  for (const side of ["lengthMm", "widthMm", "thicknessMm"] as const) {
    const half = positive(options[side], `${where}: ${side}`, "mm") / 2000;
    const slab = seriesSolution({ biot: (h * half) / k, fourier: (diffusivity * seconds) / half ** 2 });
    centre *= slab.centre;
    mean *= slab.mean;
  }
  return Object.freeze({ centre, mean });
}
