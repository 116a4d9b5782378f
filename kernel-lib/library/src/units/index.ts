// units: what a cook types, converted once

export type { ColumnPlan, ColumnPlans } from "./column-plan";
export { type ColumnUnit, columnUnit } from "./column-unit";
export { type ConvertUnitOptions, convertUnit } from "./convert-unit";
export { inchFraction } from "./inch-fraction";
export { celsius, grams, kelvinDifference, kilocalories, millilitres, millimetres, minutes } from "./kitchen-units";
export { parseQuantity, type Quantity } from "./parse-quantity";
export type { Draft, ReadRecords } from "./read-records";
export { safeTemperatureText } from "./safe-temperature-text";
export { settingText } from "./setting-text";
export { UNITS, type Unit, type UnitKind } from "./unit-table";
