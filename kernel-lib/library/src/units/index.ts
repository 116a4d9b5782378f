// units: what a cook types, converted once

export type { ColumnPlan, ColumnPlans } from "./column-plan";
export { type ColumnUnit, columnUnit } from "./column-unit";
export { type ConvertUnitOptions, convertUnit } from "./convert-unit";
export { dialSetting } from "./dial-setting";
export { inchFraction } from "./inch-fraction";
export { celsius, grams, kelvinDifference, kilocalories, millilitres, millimetres, minutes } from "./kitchen-units";
export { lengthText, ownLengthText } from "./length-text";
export { massText, ownMassText } from "./mass-text";
export { parseQuantity, type Quantity } from "./parse-quantity";
export { rangeText } from "./range-text";
export type { Draft, ReadRecords } from "./read-records";
export { roundToScale } from "./round-to-scale";
export { safeTemperatureText } from "./safe-temperature-text";
export { ownSettingText, settingText } from "./setting-text";
export { ownTemperatureText, temperatureText } from "./temperature-text";
export { ownThicknessText, thicknessText, thicknessWords } from "./thickness-text";
export { type KitchenUnits, UNITS, type Unit, type UnitKind } from "./unit-table";
