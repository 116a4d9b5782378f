// units: what a cook types, converted once

export { clockText } from "./clock-text";
export type { ColumnPlan, ColumnPlans } from "./columns/column-plan";
export { type ColumnUnit, columnUnit } from "./columns/column-unit";
export type { Draft, ReadRecords } from "./columns/read-records";
export { type ConvertUnitOptions, convertUnit } from "./convert-unit";
export { dialSetting } from "./dial-setting";
export { inchFraction } from "./inch-fraction";
export { celsius, grams, kelvinDifference, kilocalories, millilitres, millimetres, minutes } from "./kitchen-units";
export { lengthText, ownLengthText } from "./length-text";
export { massText, ownMassText } from "./mass-text";
export { rangeText } from "./range-text";
export { roundToScale } from "./round-to-scale";
export { safeTemperatureText } from "./safe-temperature-text";
export { ownSettingText, settingText } from "./setting-text";
export { ownTemperatureText, temperatureText } from "./temperature-text";
export { ownThicknessText, thicknessText, thicknessWords } from "./thickness-text";
export { parseClock } from "./typed/parse-clock";
export { parseQuantity, type Quantity } from "./typed/parse-quantity";
export { type KitchenUnits, UNITS, type Unit, type UnitKind } from "./unit-table";
