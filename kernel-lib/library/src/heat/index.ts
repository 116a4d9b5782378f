// freezing: to the cut, on the counter, in pieces

export type { CounterOptions } from "./freezing/counter-runs";
export { CUTTING_LIMITS, type CuttingLimits } from "./freezing/cutting-limits";
export { type FlashFreeze, type FlashFreezeOptions, flashFreeze } from "./freezing/flash-freeze";
export {
  type FreezeToCut,
  type FreezeToCutOptions,
  type FreezeToCutRow,
  freezeToCut,
} from "./freezing/freeze-to-cut";
export {
  type FreezerCoefficients,
  type FreezerCoefficientsOptions,
  freezerCoefficients,
} from "./freezing/freezer-coefficients";
export {
  type FreezerGoods,
  type FreezerLoad,
  type FreezerLoadOptions,
  freezerLoad,
  freezingHeat,
  type PullDownOptions,
  pullDownW,
} from "./freezing/freezer-load";
export type { TimeRange } from "./freezing/runs-over-doubt";
export { type TemperToCut, temperToCut } from "./freezing/temper-to-cut";
export { type WorkableTime, workableTime } from "./freezing/workable-time";

// solver: temperatures over time in a slab or a piece

export type { AirPoint } from "./box/face-air";
export type { DryingLaw } from "./box/surface-balance";
export type { CoreTarget } from "./solver/core-target";
export { type CoreTime, type CoreTimeOptions, coreTime } from "./solver/core-time";
export {
  type HeatColumn,
  type HeatProfile,
  type HeatRun,
  type TimeWhenOptions,
  timeWhen,
  valueAt,
} from "./solver/heat-run";
export { type SimulatePieceOptions, simulatePiece } from "./solver/simulate-piece";
export { type SimulateSlabOptions, simulateSlab } from "./solver/simulate-slab";
export type { Drying, Surroundings } from "./solver/surroundings";

// formulas: closed forms and series

export {
  type CoreTimeClosedForm,
  type CoreTimeClosedFormOptions,
  coreTimeClosedForm,
} from "./formulas/core-time-closed-form";
export { type CrustOptions, crustDepthMm, crustMin, crustSurfaceC } from "./formulas/crust-depth";
export { type CrustStart, type CrustStartOptions, crustStart } from "./formulas/crust-start";
export { type EquivalentDimensionOptions, equivalentDimension } from "./formulas/equivalent-dimension";
export {
  type FreezingFront,
  type FreezingFrontOptions,
  freezingFront,
  freezingFrontC,
  freezingFrontMm,
} from "./formulas/freezing-front";
export {
  type FreezingTime,
  type FreezingTimeOptions,
  freezingTimeClelandEarle,
} from "./formulas/freezing-time-cleland-earle";
export { type FreezingTimePhamOptions, freezingTimePham } from "./formulas/freezing-time-pham";
export {
  type FreezingShape,
  type FreezingTimePlankOptions,
  freezingTimePlank,
  type PlankConstants,
  plankConstants,
} from "./formulas/freezing-time-plank";
export { type SemiInfiniteOptions, semiInfiniteSolution } from "./formulas/semi-infinite-solution";
export {
  type BrickSeriesOptions,
  brickSeriesSolution,
  type SeriesSolution,
  type SeriesSolutionOptions,
  seriesSolution,
} from "./formulas/series-solution";
export { type SeriesShape, type SeriesTerm, seriesTerms } from "./formulas/series-terms";

// coefficients: how fast air heats and cools a surface

export {
  type AirCoefficient,
  type FlatPlateOptions,
  flatPlateCoefficient,
  type NaturalConvectionOptions,
  naturalConvectionCoefficient,
} from "./coefficient/air-coefficient";
export type { AirProperties } from "./coefficient/air-properties";
export {
  type MetalBlockCoefficient,
  type MetalBlockOptions,
  metalBlockCoefficient,
} from "./coefficient/metal-block-coefficient";
export { type RadiationOptions, radiationCoefficient } from "./coefficient/radiation-coefficient";
export { saturationPressurePa, type WetSurface, type WetSurfaceOptions, wetSurface } from "./coefficient/wet-surface";

// probe: readings of a logger, and the coefficient from them

export { type FitProbeTrace, type FitProbeTraceOptions, fitProbeTrace } from "./probe/fit-probe-trace";
export {
  type ProbeChannel,
  type ProbeTrace,
  type ReadProbeTraceOptions,
  readProbeTrace,
  type TraceGap,
} from "./probe/probe-trace";
export { traceCooling } from "./probe/trace-cooling";
