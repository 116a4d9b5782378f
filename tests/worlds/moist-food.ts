/**
 * Moist food for the worlds: thermal properties from composition and the enthalpy curve of food that freezes.
 *
 * Component functions after Choi & Okos (1986) as in ASHRAE Handbook Refrigeration (2006) ch. 9, at two temperatures;
 * the mix between its parallel and series limits after Krischer; ice by the ideal freezing curve w_ice = (w − w_bound)·(1 − T_f/T).
 * Written for the worlds alone: nothing here comes from the library that is judged by them.
 */

/** Mass fractions; their sum is 1. */
export interface Parts {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
  readonly fibre: number;
  readonly ash: number;
}

/** What the simulator needs to know of one material, by volume (SI). */
export interface Material {
  readonly densityKgM3: number;
  /** heat capacity of everything that is not water [J/(m³·K)] */
  readonly solidsJm3K: number;
  readonly waterKgM3: number;
  /** water that never freezes [kg/m³] */
  readonly boundKgM3: number;
  readonly freezingC: number;
  readonly thawedWmK: number;
  /** at −18 °C */
  readonly frozenWmK: number;
  readonly dryWmK: number;
  /** vapour conductivity of the dry material [kg/(m·s·Pa)] */
  readonly vapourKgMsPa: number;
  /** diffusivity of liquid water [m²/s] */
  readonly liquidM2s: number;
}

export const WATER_JKGK = 4190;
export const ICE_JKGK = 2000;
export const FUSION_JKG = 333_600;

const NAMES = ["water", "protein", "fat", "carbohydrate", "fibre", "ash"] as const;
/** k (W/(m·K)), density (kg/m³), cp (J/(kg·K)) at 40 °C, the middle of the heating; ice at −18 °C beside them */
const AT_40: Readonly<Record<(typeof NAMES)[number] | "ice", readonly [number, number, number]>> = {
  water: [0.6309, 991.3, 4181],
  protein: [0.2223, 1309.2, 2054],
  fat: [0.1694, 908.9, 2035],
  carbohydrate: [0.25, 1587.1, 1618],
  fibre: [0.2282, 1296.9, 1912],
  ash: [0.381, 2412.6, 1162],
  ice: [2.365, 919.2, 1953],
};

/** Material constants of a mix from its composition; `airFraction` of its volume is air. */
export function materialOf(
  parts: Parts,
  choice: { readonly airFraction: number; readonly freezingC: number; readonly krischer: number } & Pick<
    Material,
    "dryWmK" | "vapourKgMsPa" | "liquidM2s"
  >,
): Material {
  const volume = NAMES.reduce((sum, name) => sum + parts[name] / AT_40[name][1], 0);
  const densityKgM3 = (1 - choice.airFraction) / volume;
  const solids = NAMES.slice(1).reduce((sum, name) => sum + parts[name] * AT_40[name][2], 0);
  const bound = Math.min(0.35 * parts.protein + 0.1 * (parts.carbohydrate + parts.fibre), 0.5 * parts.water);
  const ice = (parts.water - bound) * (1 - choice.freezingC / -18);
  const conductivity = (iceFraction: number): number => {
    const phases: [number, number, number][] = [
      ...NAMES.map((name): [number, number, number] => [
        name === "water" ? parts.water - iceFraction : parts[name],
        AT_40[name][1],
        AT_40[name][0],
      ]),
      [iceFraction, AT_40.ice[1], AT_40.ice[0]],
    ];
    const all = phases.reduce((sum, [mass, density]) => sum + mass / density, 0);
    let parallel = 0;
    let series = 0;
    for (const [mass, density, k] of phases) {
      parallel += (mass / density / all) * k;
      series += mass / density / all / k;
    }
    return (1 - choice.airFraction) ** 1.3 / ((1 - choice.krischer) / parallel + choice.krischer * series);
  };
  return {
    densityKgM3,
    solidsJm3K: densityKgM3 * solids,
    waterKgM3: densityKgM3 * parts.water,
    boundKgM3: densityKgM3 * bound,
    freezingC: choice.freezingC,
    thawedWmK: conductivity(0),
    frozenWmK: conductivity(ice),
    dryWmK: choice.dryWmK,
    vapourKgMsPa: choice.vapourKgMsPa,
    liquidM2s: choice.liquidM2s,
  };
}

/** Enthalpy [J/m³] over solids and liquid water at 0 °C, for a material that holds `waterKgM3` now. */
export function enthalpyAt(material: Material, waterKgM3: number, celsius: number): number {
  const { solidsJm3K, boundKgM3, freezingC } = material;
  const warm = (solidsJm3K + waterKgM3 * WATER_JKGK) * celsius;
  if (celsius >= freezingC) return warm;
  const ice = Math.max(0, waterKgM3 - boundKgM3) * (1 - freezingC / celsius);
  return warm - ice * (FUSION_JKG + (WATER_JKGK - ICE_JKGK) * celsius);
}

/** Temperature at an enthalpy: the inverse of `enthalpyAt`, in closed form. */
export function temperatureAt(
  solidsJm3K: number,
  boundKgM3: number,
  freezingC: number,
  waterKgM3: number,
  enthalpyJm3: number,
): number {
  const warm = solidsJm3K + waterKgM3 * WATER_JKGK;
  const freezable = waterKgM3 - boundKgM3;
  if (freezable <= 0 || enthalpyJm3 >= warm * freezingC) return enthalpyJm3 / warm;
  const less = freezable * (WATER_JKGK - ICE_JKGK);
  const a = warm - less;
  const b = less * freezingC - freezable * FUSION_JKG - enthalpyJm3;
  return (-b - Math.sqrt(b * b - 4 * a * freezable * FUSION_JKG * freezingC)) / (2 * a);
}
