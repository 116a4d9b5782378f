import { fail } from "../../check/check";
import { UNCUT } from "../clocks/edge-speed";
import { coefficientAtLoad, crowdingOf } from "../clocks/load-effect";
import { MIDDLE_SETPOINT_C, type PieceConstants, SETPOINT_STEP_K } from "../clocks/piece-constants";
import { PRODUCT_CONSTANTS, type ProductConstant } from "./crisp-priors";

const PLACE_OF = Object.fromEntries(PRODUCT_CONSTANTS.map((name, at) => [name, at])) as Record<ProductConstant, number>;

/** A plateau that nears 100 °C smoothly from below and 77 °C from above, the same value from 81 to 96 °C. */
function softCap(plateauC: number): number {
  if (plateauC > 96) return 100 - 4 * Math.exp(-(plateauC - 96) / 4);
  return plateauC < 81 ? 77 + 4 * Math.exp(-(81 - plateauC) / 4) : plateauC;
}

/** Where and how a piece is heated, as far as its constants depend on it. */
export interface PiecePlace {
  readonly applianceId: string;
  readonly setpointC: number;
  /** share of the floor that the pieces cover, 0 to 1.2; `null` counts as a loose single layer */
  readonly loadFraction: number | null;
  /** the pieces are turned on the way */
  readonly turned: boolean;
  /** lateral sides of a piece (mm); `null` for an uncut slab */
  readonly sidesMm: readonly [number, number] | null;
}

/** What `pieceAt` puts together. */
export interface PieceAtOptions {
  /** values of the parameters, in the order of the priors */
  readonly values: ArrayLike<number>;
  readonly applianceIds: readonly string[];
  readonly place: PiecePlace;
  /** thickness of the coating (mm); Infinity when one water density serves the whole crust */
  readonly coatingMm: number;
  readonly innerWaterKgM3: number;
}

/** The constants of one piece from the parameters of a calibration. */
export function pieceAt(options: PieceAtOptions): PieceConstants {
  const { values, applianceIds, place, coatingMm, innerWaterKgM3 } = options;
  const own = applianceIds.indexOf(place.applianceId);
  if (own < 0) fail("crisp calibration: applianceId", `must be one of ${applianceIds.join(", ")}`, place.applianceId);
  const first = applianceIds.length;
  const at = (name: ProductConstant): number => values[first + PLACE_OF[name]];
  const steps = (place.setpointC - MIDDLE_SETPOINT_C) / SETPOINT_STEP_K;
  const absolute = (place.setpointC + 273.15) / (MIDDLE_SETPOINT_C + 273.15);
  const loose = values[own] * absolute ** at("airPower");
  return {
    sides: place.sidesMm === null ? UNCUT : { lengthMm: place.sidesMm[0], widthMm: place.sidesMm[1] },
    coefficientWm2K: coefficientAtLoad(
      loose,
      at("loadLoss"),
      crowdingOf(place.loadFraction),
      at("turnGain"),
      place.turned,
    ),
    sideShare: Math.min(1.5, Math.max(0.1, at("sideShare"))),
    conductivityFactor: at("conductivity"),
    lookMin: at("coreLook"),
    coreFactor: at("coreFactor") * Math.exp(-at("coreBySetpoint") * steps),
    coreByThickness: at("coreByThickness"),
    coreBend: at("coreBend"),
    plateauC: softCap(at("plateau")),
    restGain: Math.max(0, at("restGain")),
    probeWarmK: at("probeWarm"),
    warmShare: at("warmShare"),
    edgeCrust: at("edgeCrust"),
    crustFactor: Math.exp(-at("crustBySetpoint") * steps),
    crustByThickness: at("crustByThickness"),
    crustWaterKgM3: at("crustWater"),
    innerWaterKgM3,
    coatingMm,
    crustMm: at("crustDepth"),
    panelWidthMm: at("panelWidth"),
    browningPerS: at("browning"),
    browningKJmol: at("browningEnergy"),
    brownByThickness: at("brownByThickness"),
    brownSteepness: at("brownSteepness"),
    dripFraction: at("drip"),
  };
}
