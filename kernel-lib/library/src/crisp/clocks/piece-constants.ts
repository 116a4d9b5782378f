import type { Sides } from "./edge-speed";

/** Thickness at which the exponents of `coreByThickness` and its siblings are 1 (mm): a middle of the trade's slabs. */
export const MIDDLE_MM = 10;
/** Surface over that of the two faces at which edges neither speed nor slow the crust [-]: a middle of the trade's pieces. */
export const MIDDLE_SURFACE = 1.3;
/** Setpoint difference over which a clock's own response to the setpoint is counted (K). */
export const SETPOINT_STEP_K = 15;
/** Setpoint at which that response is nil (°C): a middle of the trade's settings. */
export const MIDDLE_SETPOINT_C = 195;

/** The constants of one piece in one appliance at one setpoint: measured, calibrated or drawn. */
export interface PieceConstants {
  readonly sides: Sides;
  /** at the faces, for this load, turn and air (W/(m²·K)) */
  readonly coefficientWm2K: number;
  /** coefficient at the sides over that at the faces [-] */
  readonly sideShare: number;
  /** conductivity of the mix over what its composition gives [-] */
  readonly conductivityFactor: number;

  /** time of heating that a look takes from the core (min) */
  readonly lookMin: number;

  /** time of the core over that of its clock [-]: evaporation, coating, and all that the clock leaves out */
  readonly coreFactor: number;
  /** power of the thickness over 10 mm by which the core's time departs from its clock [-] */
  readonly coreByThickness: number;
  /** power of the heat taken up with which the core's time grows [-]: 1 where heat goes in evenly, more where it slackens */
  readonly coreBend: number;
  /** temperature the core tends to while the piece is still wet (°C) */
  readonly plateauC: number;
  /** share of the difference between the mean and the core that the core gains while it rests [-] */
  readonly restGain: number;
  /** how far the probe reads above the coldest point while that is below the plateau (K) */
  readonly probeWarmK: number;

  /** share of the crust's start that waits until the whole piece is warm [-] */
  readonly warmShare: number;
  /** power of the surface over that of the two faces by which the sides speed up crust and browning [-] */
  readonly edgeCrust: number;
  /** time of crust, browning and drying over that of their clock [-] */
  readonly crustFactor: number;
  /** as `coreByThickness` */
  readonly crustByThickness: number;
  /** water that leaves for each volume of crust: within the coating, or throughout when `coatingMm` is Infinity (kg/m³) */
  readonly crustWaterKgM3: number;
  /** the same below the coating (kg/m³) */
  readonly innerWaterKgM3: number;
  /** thickness of the coating (mm); Infinity when one water density serves the whole crust */
  readonly coatingMm: number;
  /** crust depth from which a check says crisp (mm) */
  readonly crustMm: number;
  /** how gently the panel's score follows the crust depth (mm) */
  readonly panelWidthMm: number;

  /** browning at 150 °C (1/s) */
  readonly browningPerS: number;
  /** activation energy of browning (kJ/mol) */
  readonly browningKJmol: number;
  /** power of the thickness over 10 mm by which browning departs from its clock [-] */
  readonly brownByThickness: number;
  /** power of browning by which the panel's score rises [-] */
  readonly brownSteepness: number;

  /** mass lost as drip, of the mass before [-] */
  readonly dripFraction: number;
}
