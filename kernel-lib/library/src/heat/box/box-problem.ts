import type { ThermalModel } from "../../food/thermal/thermal-properties";
import type { BoxRecord } from "./box-record";
import type { FaceAir } from "./face-air";
import type { DryingConstants } from "./surface-balance";

/** A box of food in SI. Lengths are full, except where a symmetry halves them inside. */
export interface BoxProblem {
  readonly food: ThermalModel;
  readonly startC: number;
  readonly thicknessM: number;
  /** undefined for a slab: no edges */
  readonly sidesM?: readonly [number, number];
  readonly above: FaceAir;
  readonly below: FaceAir;
  readonly sides?: FaceAir;
  /** times at which above and below change places [s] */
  readonly flipsS: readonly number[];
  readonly drying: DryingConstants;
  /** water of dried food by volume [kg/m³] */
  readonly crustWaterKgM3: number;
  /** cells over half the thickness; over half of a side as many, or more where it is long */
  readonly cells: number;
  /** error of one step, as a share of the heat between start and air [-] */
  readonly tolerance: number;
  readonly fixedStepS?: number;
  readonly endS: number;
  /** stops when the core has passed this [°C] */
  readonly stopCoreC?: number;
}

/** What a run came to. */
export interface BoxOutcome {
  readonly record: BoxRecord;
  /** the core has thawed [s]; undefined when it never does, or starts thawed */
  readonly thawedS?: number;
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  /** |heat in − heat stored − heat carried off by water|, as a share of the heat in [-] */
  readonly energyBalanceError: number;
  /** heat from the air over the run [J], for the whole box or for 1 m² of slab */
  readonly heatInJ: number;
  readonly coreReached: boolean;
  readonly allWaterGone: boolean;
}
