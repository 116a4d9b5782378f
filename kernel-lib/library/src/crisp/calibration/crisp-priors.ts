import { positive } from "../../check/check";
import { LOOSE_LOAD } from "../clocks/load-effect";
import { LOOK_MIN } from "../clocks/look-cost";

/** What was believed of a constant before these trials. */
export interface CrispPrior {
  /** `"coefficient:small-basket"`, `"crustWater"`, ... */
  readonly name: string;
  /** what it is, in words */
  readonly label: string;
  readonly unit: string;
  /** the logarithm is normal: `middle` is the median, `spread` a factor; else `middle` is the mean, `spread` a standard deviation */
  readonly scale: "log" | "plain";
  readonly middle: number;
  readonly spread: number;
  /** where the prior comes from */
  readonly from: string;
  /** which trial would tell more of it */
  readonly informedBy: string;
}

/** What `crispPriors` works from. */
export interface CrispPriorsOptions {
  readonly applianceIds: readonly string[];
  /** median of the water that leaves for each volume of crust (kg/m³): of the coating, or of the mix when uncoated */
  readonly crustWaterKgM3: number;
  /** the pieces carry a coating; a bare one is cooled by what evaporates from it */
  readonly coated: boolean;
}

const JUDGEMENT = "our judgement";
const TWO_THICKNESSES = "the same at a second thickness, a third thicker or more";
const TWO_SETPOINTS = "the same at a second setpoint, 15 K hotter or cooler";
const TWO_CUTS = "the same slab cut half as wide";

/** Constants that belong to one product, in the order of a calibration's parameters after its appliances. */
export const PRODUCT_CONSTANTS = [
  "loadLoss",
  "turnGain",
  "coreLook",
  "airPower",
  "sideShare",
  "conductivity",
  "coreFactor",
  "coreByThickness",
  "coreBySetpoint",
  "coreBend",
  "plateau",
  "restGain",
  "probeWarm",
  "warmShare",
  "edgeCrust",
  "crustWater",
  "crustDepth",
  "panelWidth",
  "crustByThickness",
  "crustBySetpoint",
  "browning",
  "browningEnergy",
  "brownByThickness",
  "brownSteepness",
  "drip",
] as const;

export type ProductConstant = (typeof PRODUCT_CONSTANTS)[number];

/** The priors of a calibration, in the order of its parameters: each is wide, and says where it comes from. */
export function crispPriors(options: CrispPriorsOptions): readonly CrispPrior[] {
  const crustWaterKgM3 = positive(options.crustWaterKgM3, "crispPriors: crustWaterKgM3", "kg/m³");
  const coefficients = options.applianceIds.map(
    (id): CrispPrior => ({
      name: `coefficient:${id}`,
      label: `surface coefficient of ${id}, loose single layer`,
      unit: "W/(m²·K)",
      scale: "log",
      middle: 40,
      spread: 1.6,
      from: "usual range of air fryers and fan ovens, from memory; no measured source",
      informedBy: `two slab thicknesses in ${id}, with a core reading while the core is still below about 85 °C (185 °F)`,
    }),
  );
  const priors: Readonly<Record<ProductConstant, Omit<CrispPrior, "name">>> = {
    loadLoss: {
      label: "share of the coefficient lost on a covered floor",
      unit: "",
      scale: "plain",
      middle: 0.2,
      spread: 0.12,
      from: `rule of thumb, ${JUDGEMENT}`,
      informedBy: `the same slab in a loose layer and on a covered floor (load ${LOOSE_LOAD} or less, and 0.9 or more)`,
    },
    turnGain: {
      label: "share by which turning raises the coefficient",
      unit: "",
      scale: "plain",
      middle: 0.08,
      spread: 0.05,
      from: `rule of thumb, ${JUDGEMENT}`,
      informedBy: "the same slab with and without a turn past half-way",
    },
    coreLook: {
      label: "time of heating that a look takes from the core",
      unit: "min",
      scale: "log",
      middle: LOOK_MIN,
      spread: 2,
      from: `${JUDGEMENT}: open for 3 to 10 s, and air that falls by 30 to 70 K comes back within half a minute or a whole`,
      informedBy: "cores of pieces that were looked at often, and of pieces that were not, with the looks written down",
    },
    airPower: {
      label: "power of the air's absolute temperature in the coefficient",
      unit: "",
      scale: "plain",
      middle: 1,
      spread: 0.5,
      from: "radiation, a third to a half of the coefficient, grows with the third power (grey-body law)",
      informedBy: TWO_SETPOINTS,
    },
    sideShare: {
      label: "coefficient at the sides of a piece over that at its faces",
      unit: "",
      scale: "plain",
      middle: 0.75,
      spread: 0.15,
      from: JUDGEMENT,
      informedBy: TWO_CUTS,
    },
    conductivity: {
      label: "conductivity of the mix over that of its composition",
      unit: "",
      scale: "log",
      middle: 1,
      spread: 1.16,
      from: "spread of the mixing models for foods",
      informedBy: "core readings below about 85 °C (185 °F) on a slab of 14 mm (9/16 in) or more",
    },
    coreFactor: {
      label: "time of the core over that of its clock",
      unit: "",
      scale: "log",
      middle: options.coated ? 1.1 : 1.4,
      spread: options.coated ? 1.25 : 1.4,
      from: options.coated
        ? `${JUDGEMENT}: a coating insulates and its water evaporates`
        : "a wet face in dry air stays near 60 °C (wet-bulb balance) and heats up to 1.9 times more slowly than a dry one",
      informedBy: "core readings below about 85 °C (185 °F), at two times or more",
    },
    coreByThickness: {
      label: "power of the thickness by which the core departs from its clock",
      unit: "",
      scale: "plain",
      middle: -0.05,
      spread: 0.05,
      from: JUDGEMENT,
      informedBy: TWO_THICKNESSES,
    },
    coreBySetpoint: {
      label: "share by which 15 K speed the core beyond its clock",
      unit: "",
      scale: "plain",
      middle: 0,
      spread: 0.02,
      from: JUDGEMENT,
      informedBy: TWO_SETPOINTS,
    },
    coreBend: {
      label: "power of the heat taken up with which the core's time grows",
      unit: "",
      scale: "log",
      middle: options.coated ? 1.25 : 1.5,
      spread: options.coated ? 1.25 : 1.35,
      from: "between the two drying laws of the slab solver: 0.9 to 1.1 for a front at 100 °C, 1.6 and more for a face that is wet from the start",
      informedBy: "core readings of the same slab at two times well apart, both before it is done",
    },
    plateau: {
      label: "core that a long reheat tends to",
      unit: "°C",
      scale: "plain",
      middle: options.coated ? 95 : 91,
      spread: options.coated ? 4 : 6,
      from: `${JUDGEMENT}: water boils at 100 °C, and a piece that still gives off water stays below, a bare one further`,
      informedBy: "core readings of pieces left in well past crisp",
    },
    restGain: {
      label: "share of the difference between mean and core that a rest evens out",
      unit: "",
      scale: "plain",
      middle: 0.9,
      spread: 0.35,
      from: `${JUDGEMENT}: a coated piece gains 2 to 6 K in two minutes`,
      informedBy: "the core at taking out and again at its highest, in the same piece",
    },
    probeWarm: {
      label: "how far a probe beside the coldest point reads above it",
      unit: "K",
      scale: "plain",
      middle: 1.5,
      spread: 0.8,
      from: `${JUDGEMENT}: a probe that misses the coldest point can only read warmer`,
      informedBy: "a finer probe, or several readings in one piece",
    },
    warmShare: {
      label: "share of the crust's start that waits until the whole piece is warm",
      unit: "",
      scale: "log",
      middle: 0.8,
      spread: 1.45,
      from: `${JUDGEMENT}: a coating dries below boiling, while the inside is still cold`,
      informedBy: TWO_THICKNESSES,
    },
    edgeCrust: {
      label: "power of the surface by which edges speed up crust and browning",
      unit: "",
      scale: "plain",
      middle: 0.8,
      spread: 0.25,
      from: `${JUDGEMENT}, between 0 (faces alone count) and about 1.2 (heat goes in by all of the surface)`,
      informedBy: TWO_CUTS,
    },
    crustWater: {
      label: "water that leaves for each volume of crust",
      unit: "kg/m³",
      scale: "log",
      middle: crustWaterKgM3,
      spread: 1.6,
      from: "the water of the layer that dries, as the formula has it",
      informedBy: "weights before and after at two times",
    },
    crustDepth: {
      label: "crust depth from which checks say crisp",
      unit: "mm",
      scale: "log",
      middle: 0.7,
      spread: 2,
      from: JUDGEMENT,
      informedBy: "checks a minute apart around the turn to crisp, at two thicknesses",
    },
    panelWidth: {
      label: "crust depth over which the panel's score changes by a factor e",
      unit: "mm",
      scale: "log",
      middle: 0.1,
      spread: 1.8,
      from: JUDGEMENT,
      informedBy: "crispness scores on pieces taken out early, as well as crisp ones",
    },
    crustByThickness: {
      label: "power of the thickness by which the crust departs from its clock",
      unit: "",
      scale: "plain",
      middle: 0,
      spread: 0.07,
      from: JUDGEMENT,
      informedBy: TWO_THICKNESSES,
    },
    crustBySetpoint: {
      label: "share by which 15 K speed the crust beyond its clock",
      unit: "",
      scale: "plain",
      middle: 0,
      spread: 0.045,
      from: JUDGEMENT,
      informedBy: TWO_SETPOINTS,
    },
    browning: {
      label: "browning rate at 150 °C (302 °F)",
      unit: "1/s",
      scale: "log",
      middle: 7e-3,
      spread: 3,
      from: `${JUDGEMENT}: half brown after about ten minutes of crust; Zanoni's constants are for dried crumb and far too slow here`,
      informedBy: "browning scores on pieces left in until they are too dark",
    },
    browningEnergy: {
      label: "activation energy of browning",
      unit: "kJ/mol",
      scale: "log",
      middle: 78,
      spread: 1.12,
      from: "64 kJ/mol on dried crumb (Zanoni, Peri & Bruno 1995) to 95 for browning of doughs, from memory",
      informedBy: TWO_SETPOINTS,
    },
    brownByThickness: {
      label: "power of the thickness by which browning departs from its clock",
      unit: "",
      scale: "plain",
      middle: 0,
      spread: 0.2,
      from: JUDGEMENT,
      informedBy: TWO_THICKNESSES,
    },
    brownSteepness: {
      label: "power of browning by which the panel's score rises",
      unit: "",
      scale: "log",
      middle: 1,
      spread: 1.2,
      from: `${JUDGEMENT}: a panel scores a face whose edges brown first`,
      informedBy: "browning scores on pale and on dark pieces",
    },
    drip: {
      label: "share of the mass lost as drip",
      unit: "",
      scale: "plain",
      middle: 0.01,
      spread: 0.01,
      from: JUDGEMENT,
      informedBy: "weights of a thick slab taken out before its crust starts",
    },
  };
  return Object.freeze([...coefficients, ...PRODUCT_CONSTANTS.map((name): CrispPrior => ({ name, ...priors[name] }))]);
}

/** The value of a parameter at `z` prior standard deviations from the prior's middle. */
export function priorValue(prior: CrispPrior, z: number): number {
  return prior.scale === "log" ? prior.middle * prior.spread ** z : prior.middle + prior.spread * z;
}
