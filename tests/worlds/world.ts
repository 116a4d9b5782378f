import { type SeededRandom, seededRandom } from "slabwright/statistics";
import { type Material, materialOf, type Parts } from "./moist-food";
import type { Product } from "./products";
import { type Around, heatPiece, type PieceReading, type PieceSpec } from "./simulate-piece";

/** What is true of one appliance. */
export interface TrueAppliance {
  readonly id: "basket" | "oven";
  readonly floorCm2: number;
  /** on an upper face in an empty floor, radiation included */
  readonly topWm2K: number;
  readonly bottomShare: number;
  readonly sideShare: number;
  readonly radiantShare: number;
  /** share of the coefficient that a covered floor takes; grows with the square of the load */
  readonly loadLoss: number;
  /** share that neighbours take from the sides beside that */
  readonly sideLoss: number;
  /** mean air over what was set */
  readonly biasK: number;
  /** air falls by so much on loading a covered floor, and comes back with this time constant */
  readonly loadingDropK: number;
  readonly recoveryS: number;
  /** and stays lower by so much on a covered floor */
  readonly droopK: number;
  readonly swingK: number;
  readonly swingS: number;
  readonly vapourPa: number;
  /** more on a covered floor */
  readonly vapourLoadPa: number;
  readonly lookDropK: number;
  readonly lookRecoveryS: number;
}

/** Standard deviations, of logarithms unless a unit says otherwise. */
export interface Scatter {
  readonly session: number;
  readonly run: number;
  readonly place: number;
  /** a slab's mean thickness about what was wanted */
  readonly slab: number;
  /** thickness of a piece about its slab's mean */
  readonly unevenness: number;
  readonly coatBatch: number;
  readonly coatPiece: number;
  /** dry depth that counts as crisp, from piece to piece */
  readonly crispDepth: number;
  readonly browning: number;
}

/** One kitchen with one product: all that is true of it, none of which its cooks know. */
export interface World {
  readonly product: Product;
  readonly seed: number;
  readonly appliances: readonly TrueAppliance[];
  readonly mix: Material;
  readonly coat: { readonly mm: number; readonly material: Material } | null;
  readonly drip: PieceSpec["drip"];
  readonly activationJmol: number;
  /** dry depth at which the panel's score is 6, and over which it turns (mm) */
  readonly crispMm: number;
  readonly crispWidthMm: number;
  /** browning integral at which the score is half of 9 (s at 150 °C), and how sharply it turns */
  readonly brownHalfS: number;
  readonly brownPower: number;
  /** share of the darkest tenth in what the panel sees */
  readonly worstShare: number;
  /** loss that the developer calls too dry: 25 %, or more for a product that loses more while it crisps (%) */
  readonly tooDryPercent: number;
  readonly scatter: Scatter;
}

/** A setting as a developer would ask for it; the length and width are those of the cut. */
export interface WorldSetting {
  readonly applianceId: "basket" | "oven";
  readonly setpointC: number;
  readonly loadFraction: number;
  readonly thicknessMm: number;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** when the pieces are turned (min); null when they are not */
  readonly flipMin: number | null;
}

/** How one piece differs from the typical one: factors. */
export interface PieceFactors {
  readonly coefficient: number;
  readonly thickness: number;
  readonly coat: number;
}

export const TYPICAL: PieceFactors = { coefficient: 1, thickness: 1, coat: 1 };

/** Scores that the worlds hold to, the same that a window is asked for by default. */
export const CRISP_SCORE = 6;
export const TOO_BROWN_SCORE = 7;

const between = (random: SeededRandom, low: number, high: number): number => low + (high - low) * random.uniform();

/**
 * Draws what is true in one kitchen. Ranges (all ours, wide of the middles that the library starts from): basket 44 to
 * 68, oven 24 to 36 W/(m²·K) on the upper face, 55 to 85 % of that below, 65 to 95 % at the sides, 30 to 50 % of it radiation; air −12 to +6 K from
 * the setting; a covered floor takes 25 to 50 % (basket), 10 to 30 % (oven); dry mix 0.09 to 0.2, dry coat 0.05 to 0.11 W/(m·K);
 * activation 64 to 95 kJ/mol; run to run 5 to 12 %, day to day 2 to 4 %, place to place 3 to 6 %.
 */
export function drawWorld(product: Product, seed: number): World {
  const random = seededRandom(seed);
  const draw = (low: number, high: number): number => between(random, low, high);
  const appliances = (["basket", "oven"] as const).map((id): TrueAppliance => {
    const basket = id === "basket";
    return {
      id,
      floorCm2: Math.round(basket ? draw(420, 720) : draw(1200, 1700)),
      topWm2K: basket ? draw(44, 68) : draw(24, 36),
      bottomShare: basket ? draw(0.55, 0.8) : draw(0.65, 0.85),
      sideShare: draw(0.65, 0.95),
      radiantShare: basket ? draw(0.3, 0.45) : draw(0.35, 0.5),
      loadLoss: basket ? draw(0.25, 0.5) : draw(0.1, 0.3),
      sideLoss: draw(0.1, 0.4),
      biasK: draw(-12, 6),
      loadingDropK: basket ? draw(30, 70) : draw(20, 45),
      recoveryS: basket ? draw(40, 90) : draw(80, 160),
      droopK: draw(2, 12),
      swingK: draw(3, 9),
      swingS: draw(40, 110),
      vapourPa: draw(1000, 3000),
      vapourLoadPa: basket ? draw(4000, 14_000) : draw(2000, 8000),
      lookDropK: basket ? draw(35, 70) : draw(25, 50),
      lookRecoveryS: draw(25, 50),
    };
  });
  const mix = materialOf(moveWater(product.parts, draw(-0.02, 0.02)), {
    airFraction: Math.max(0, product.formula.airFraction + draw(-0.015, 0.015)),
    freezingC: product.freezingC + draw(-0.4, 0.4),
    krischer: draw(0.12, 0.42),
    dryWmK: draw(0.09, 0.2),
    vapourKgMsPa: draw(3e-12, 9e-12),
    liquidM2s: draw(1e-10, 4e-10),
  });
  const coat =
    product.coat === null
      ? null
      : {
          mm: product.coat.mm * draw(0.85, 1.2),
          material: materialOf(moveWater(product.coat.parts, draw(-0.06, 0.06)), {
            airFraction: product.coat.airFraction,
            freezingC: -3,
            krischer: draw(0.3, 0.6),
            dryWmK: draw(0.05, 0.11),
            vapourKgMsPa: draw(6e-12, 1.6e-11),
            liquidM2s: draw(0.5e-10, 3e-10),
          }),
        };
  const scatter = drawScatter(draw);
  const crispOverCore = draw(...product.crispOverCore);
  const closesOver = draw(1.6, 2.1);
  const raw: World = {
    product,
    seed,
    appliances,
    mix,
    coat,
    drip: { fraction: draw(...product.drip), middleC: draw(58, 66), widthK: draw(3, 6) },
    activationJmol: draw(64_000, 95_000),
    crispMm: 1,
    crispWidthMm: draw(0.1, 0.2),
    brownHalfS: 1,
    brownPower: draw(1.2, 1.7),
    worstShare: draw(0.25, 0.5),
    tooDryPercent: 25,
    scatter,
  };
  return tuned(raw, crispOverCore, closesOver);
}

const TUNING_S = 12;

/** A developer has tuned the product: at its own setting it turns crisp about when the core is hot, and browns later. */
function tuned(world: World, crispOverCore: number, closesOver: number): World {
  const setting = ownSetting(world, null);
  const { limitC, holdS } = limitOf(world.product);
  const piece = heatPiece(pieceSpec(world, setting, TYPICAL), aroundOf(world, setting, {}), gridOf(world, setting));
  const readings: PieceReading[] = [piece.read()];
  let coreS = Number.POSITIVE_INFINITY;
  for (let timeS = TUNING_S; timeS < 3600; timeS += TUNING_S) {
    piece.advance(timeS);
    readings.push(piece.read());
    if (coreS === Number.POSITIVE_INFINITY && readings[readings.length - 1].coreC >= limitC) coreS = timeS + holdS;
    if (timeS >= coreS * Math.max(1, crispOverCore) * closesOver) break;
  }
  const crispS = coreS * crispOverCore;
  const at = (timeS: number): PieceReading => readings[Math.min(readings.length - 1, Math.round(timeS / TUNING_S))];
  const late = at(Math.max(coreS, crispS) * closesOver);
  const crispMm = dryDepthMm(at(crispS));
  // the half-way browning that puts the score at too brown just then
  let brownHalfS = 1;
  let [low, high] = [1e-3, 1e6];
  for (let halving = 0; halving < 80; halving++) {
    brownHalfS = Math.sqrt(low * high);
    if (brownScore({ ...world, brownHalfS }, late, 1) > TOO_BROWN_SCORE) low = brownHalfS;
    else high = brownHalfS;
  }
  const tooDryPercent = Math.max(25, 5 * Math.ceil(20 * late.loss - 0.5));
  return { ...world, crispMm, crispWidthMm: crispMm * world.crispWidthMm * 2, brownHalfS, tooDryPercent };
}

function moveWater(parts: Parts, by: number): Parts {
  const scale = (1 - parts.water - by) / (1 - parts.water);
  return {
    water: parts.water + by,
    protein: parts.protein * scale,
    fat: parts.fat * scale,
    carbohydrate: parts.carbohydrate * scale,
    fibre: parts.fibre * scale,
    ash: parts.ash * scale,
  };
}

/** Core limit by food class: °C and seconds to hold (sources stand in the library's `coreLimit`; a test compares). */
export function limitOf(product: Product): { readonly limitC: number; readonly holdS: number } {
  const { foodClass } = product.formula;
  if (foodClass === "fish") return { limitC: 68.5, holdS: 17 };
  if (foodClass === "groundMeat" || foodClass === "egg" || foodClass === "wholeMeat") return { limitC: 71.5, holdS: 0 };
  return { limitC: 74, holdS: 0 };
}

/** taken off every edge before cutting (mm) */
export const TRIM_MM = 4;

/** Length and width (mm) of the pieces that a pan gives when it is cut as near to a size as whole numbers allow. */
export function cutOf(
  pan: { lengthMm: number; widthMm: number },
  wanted: { lengthMm: number; widthMm: number },
): { lengthMm: number; widthMm: number } {
  const [along, across] = [pan.lengthMm - 2 * TRIM_MM, pan.widthMm - 2 * TRIM_MM];
  const layouts = [
    [wanted.lengthMm, wanted.widthMm],
    [wanted.widthMm, wanted.lengthMm],
  ].map(([a, b]) => {
    const sides = [along / Math.max(1, Math.round(along / a)), across / Math.max(1, Math.round(across / b))];
    return { sides, miss: Math.abs(Math.log(sides[0] / a)) + Math.abs(Math.log(sides[1] / b)) };
  });
  const { sides } = layouts[1].miss < layouts[0].miss ? layouts[1] : layouts[0];
  return { lengthMm: Math.max(...sides), widthMm: Math.min(...sides) };
}

/** Size (mm) of the product's own pieces. */
export function ownCut({ pan, rows, columns }: Product): { lengthMm: number; widthMm: number } {
  const sides = [(pan.lengthMm - 2 * TRIM_MM) / columns, (pan.widthMm - 2 * TRIM_MM) / rows];
  return { lengthMm: Math.max(...sides), widthMm: Math.min(...sides) };
}

/** The setting that the product is tuned on. */
export function ownSetting(world: World, flipMin: number | null): WorldSetting {
  const { product } = world;
  return {
    applianceId: product.appliance,
    setpointC: product.setpointC,
    loadFraction: product.loadFraction,
    thicknessMm: product.thicknessMm,
    ...ownCut(product),
    flipMin,
  };
}

/** The piece that a setting and its own differences make. */
export function pieceSpec(world: World, setting: WorldSetting, factors: PieceFactors): PieceSpec {
  const { coat } = world;
  return {
    lengthM: setting.lengthMm / 1000,
    widthM: setting.widthMm / 1000,
    thicknessM: (setting.thicknessMm * factors.thickness) / 1000,
    mix: world.mix,
    coating: coat === null ? null : { thicknessM: (coat.mm * factors.coat) / 1000, material: coat.material },
    startC: -18,
    drip: world.drip,
    activationJmol: world.activationJmol,
  };
}

/** One grid for all pieces of a setting. */
export function gridOf(world: World, setting: WorldSetting): { likeThicknessM: number; likeCoatM: number } {
  return { likeThicknessM: setting.thicknessMm / 1000, likeCoatM: (world.coat?.mm ?? 0) / 1000 };
}

export interface AroundChoice {
  /** day, run and place together, on the coefficient; default 1 */
  readonly coefficient?: number;
  /** moments at which the door was opened (s); may grow while the piece is heated */
  readonly looksS?: readonly number[];
  /** where in its swing the thermostat stands at the start, 0 to 1; default 0 */
  readonly phase?: number;
}

/** What a piece stands in at a setting: air that falls on loading, recovers, swings, and falls again at every look. */
export function aroundOf(world: World, setting: WorldSetting, choice: AroundChoice): Around {
  const { coefficient = 1, looksS = [], phase = 0 } = choice;
  const appliance = world.appliances.find(({ id }) => id === setting.applianceId) as TrueAppliance;
  const { loadFraction } = setting;
  const top = appliance.topWm2K * coefficient * (1 - appliance.loadLoss * loadFraction ** 2);
  const turnS = setting.flipMin === null ? null : setting.flipMin * 60;
  const settled = setting.setpointC + appliance.biasK - appliance.droopK * loadFraction;
  const drop = appliance.loadingDropK * (0.4 + 0.6 * loadFraction);
  const recoveryS = appliance.recoveryS * (0.6 + 0.8 * loadFraction);
  const afterLook = (timeS: number, lookS: number): number =>
    timeS <= lookS ? 0 : appliance.lookDropK * Math.exp(-(timeS - lookS) / appliance.lookRecoveryS);
  return {
    topWm2K: top,
    bottomWm2K: top * appliance.bottomShare,
    sideWm2K: top * appliance.sideShare * (1 - appliance.sideLoss * loadFraction),
    radiantShare: appliance.radiantShare,
    airC: (timeS) => {
      let celsius = settled - drop * Math.exp(-timeS / recoveryS);
      celsius += appliance.swingK * Math.sin(2 * Math.PI * (timeS / appliance.swingS + phase));
      for (const lookS of looksS) celsius -= afterLook(timeS, lookS);
      if (turnS !== null) celsius -= afterLook(timeS, turnS);
      return celsius;
    },
    vapourPa: (timeS) => appliance.vapourPa + appliance.vapourLoadPa * loadFraction * (1 - Math.exp(-timeS / 120)),
    turnS,
  };
}

/** A piece among others in a bowl under a cloth. */
export const RESTING: Around = {
  topWm2K: 7,
  bottomWm2K: 3,
  sideWm2K: 4,
  radiantShare: 0.7,
  airC: () => 45,
  vapourPa: () => 12_000,
  turnS: null,
};

/** Dry depth that the panel bites through (mm): top and bottom faces 35 % each, sides 30 %. */
export function dryDepthMm({ dryMm }: PieceReading): number {
  return 0.35 * dryMm[0] + 0.35 * dryMm[1] + 0.3 * dryMm[2];
}

/** Crispness as a panel would score it, 1 to 9; `depthFactor` is what this piece asks for over the typical one. */
export function crispScore(world: World, reading: PieceReading, depthFactor: number): number {
  const beyond = dryDepthMm(reading) / depthFactor - world.crispMm;
  // 1 + 8·s is 6 at s = 0.625
  return 1 + 8 / (1 + Math.exp(-beyond / world.crispWidthMm - Math.log(0.625 / 0.375)));
}

/** Browning score, 0 to 9: most of the mean, some of the darkest tenth. */
export function brownScore(world: World, reading: PieceReading, rateFactor: number): number {
  const score = (integral: number): number => {
    const power = ((integral * rateFactor) / world.brownHalfS) ** world.brownPower;
    return (9 * power) / (1 + power);
  };
  return (1 - world.worstShare) * score(reading.brownMeanS) + world.worstShare * score(reading.brownWorstS);
}

/** How much the readings of one kitchen scatter. */
export function drawScatter(draw: (low: number, high: number) => number): Scatter {
  return {
    session: draw(0.02, 0.04),
    run: draw(0.05, 0.12),
    place: draw(0.03, 0.06),
    slab: draw(0.015, 0.03),
    unevenness: draw(0.02, 0.045),
    coatBatch: draw(0.03, 0.06),
    coatPiece: draw(0.06, 0.12),
    crispDepth: draw(0.04, 0.09),
    browning: draw(0.06, 0.14),
  };
}
