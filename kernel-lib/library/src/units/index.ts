// units: what a cook types, converted once

export type { ColumnPlan, ColumnPlans } from "./column-plan";
export { type ColumnUnit, columnUnit } from "./column-unit";
export { type ConvertUnitOptions, convertUnit } from "./convert-unit";
export { inchFraction } from "./inch-fraction";
export { celsius, grams, kelvinDifference, kilocalories, millilitres, millimetres, minutes } from "./kitchen-units";
export { lengthText, ownLengthText } from "./length-text";
export { massText, ownMassText } from "./mass-text";
export { parseQuantity, type Quantity } from "./parse-quantity";
export type { Draft, ReadRecords } from "./read-records";
export { safeTemperatureText } from "./safe-temperature-text";
export { settingText } from "./setting-text";
export { temperatureText } from "./temperature-text";
export { ownThicknessText, thicknessText } from "./thickness-text";
export { type KitchenUnits, UNITS, type Unit, type UnitKind } from "./unit-table";
