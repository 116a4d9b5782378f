/** What a unit measures. A temperature and a temperature difference are two kinds and never mix. */
export type UnitKind =
  | "length"
  | "area"
  | "mass"
  | "volume"
  | "time"
  | "energy"
  | "temperature"
  | "temperatureDifference";

/** The units that a kitchen's people think in. */
export type KitchenUnits = "us" | "metric";

/** One unit: its kind and how it turns into the kitchen unit of that kind (mm, cm², g, mL, min, kcal, °C, K). */
export interface Unit {
  readonly name: string;
  readonly kind: UnitKind;
  /** kitchen units in one of this unit */
  readonly factor: number;
  /** subtracted before the factor is applied; only °F and K need one */
  readonly offset: number;
  /** other ways to write it, lower case */
  readonly alsoWritten: readonly string[];
}

/** The kitchen unit of each kind: what every number of the library is in once it is inside. */
export const KITCHEN_UNIT: Readonly<Record<UnitKind, string>> = {
  length: "mm",
  area: "cm²",
  mass: "g",
  volume: "mL",
  time: "min",
  energy: "kcal",
  temperature: "°C",
  temperatureDifference: "K",
};

const INCH_MM = 25.4;
const POUND_G = 453.59237;
const GALLON_ML = (231 * INCH_MM ** 3) / 1000;

function unit(kind: UnitKind, name: string, factor: number, alsoWritten: string[], offset = 0): Unit {
  return Object.freeze({ name, kind, factor, offset, alsoWritten: Object.freeze(alsoWritten) });
}

/**
 * The units that this library reads, with their exact definitions: inch 25.4 mm, avoirdupois pound 453.59237 g, US
 * gallon 231 cubic inches (cup 1/16, tablespoon 1/256, teaspoon 1/768 of it), thermochemical kilocalorie 4.184 kJ
 * (NIST Special Publication 811, appendix B). A cup here is the US customary cup, 236.588 mL; the 240 mL cup of US
 * labels is written `label cup`, the 250 mL cup `metric cup`.
 */
export const UNITS: readonly Unit[] = Object.freeze([
  unit("length", "mm", 1, ["millimetre", "millimetres", "millimeter", "millimeters"]),
  unit("length", "cm", 10, ["centimetre", "centimetres", "centimeter", "centimeters"]),
  unit("length", "m", 1000, ["metre", "metres", "meter", "meters"]),
  unit("length", "in", INCH_MM, ["inch", "inches", '"']),
  unit("length", "ft", 12 * INCH_MM, ["foot", "feet"]),
  unit("area", "cm²", 1, ["cm2", "sq cm", "square centimetre", "square centimetres"]),
  unit("area", "in²", (INCH_MM / 10) ** 2, ["in2", "sq in", "square inch", "square inches"]),
  unit("mass", "g", 1, ["gram", "grams", "gramme", "grammes"]),
  unit("mass", "kg", 1000, ["kilogram", "kilograms", "kilo", "kilos"]),
  unit("mass", "mg", 0.001, ["milligram", "milligrams"]),
  unit("mass", "oz", POUND_G / 16, ["ounce", "ounces"]),
  unit("mass", "lb", POUND_G, ["lbs", "pound", "pounds"]),
  unit("volume", "mL", 1, ["ml", "millilitre", "millilitres", "milliliter", "milliliters"]),
  unit("volume", "L", 1000, ["l", "litre", "litres", "liter", "liters"]),
  unit("volume", "tsp", GALLON_ML / 768, ["teaspoon", "teaspoons"]),
  unit("volume", "tbsp", GALLON_ML / 256, ["tablespoon", "tablespoons"]),
  unit("volume", "fl oz", GALLON_ML / 128, ["floz", "fl. oz", "fluid ounce", "fluid ounces"]),
  unit("volume", "cup", GALLON_ML / 16, ["cups"]),
  unit("volume", "pint", GALLON_ML / 8, ["pints", "pt"]),
  unit("volume", "quart", GALLON_ML / 4, ["quarts", "qt"]),
  unit("volume", "gallon", GALLON_ML, ["gallons", "gal"]),
  unit("volume", "metric cup", 250, ["metric cups"]),
  unit("volume", "label cup", 240, ["label cups"]),
  unit("time", "min", 1, ["minute", "minutes", "mins"]),
  unit("time", "s", 1 / 60, ["sec", "second", "seconds"]),
  unit("time", "h", 60, ["hr", "hour", "hours"]),
  unit("time", "day", 1440, ["days", "d"]),
  unit("energy", "kcal", 1, ["kilocalorie", "kilocalories", "cal", "calories"]),
  unit("energy", "kJ", 1 / 4.184, ["kj", "kilojoule", "kilojoules"]),
  unit("energy", "kWh", 3600 / 4.184, ["kwh"]),
  unit("temperature", "°C", 1, ["c", "degc", "deg c", "celsius"]),
  unit("temperature", "°F", 5 / 9, ["f", "°f", "degf", "deg f", "fahrenheit"], 32),
  unit("temperatureDifference", "K", 1, ["k", "kelvin", "c difference", "°c difference"]),
  unit("temperatureDifference", "°F difference", 5 / 9, ["f difference", "°f difference"]),
]);
