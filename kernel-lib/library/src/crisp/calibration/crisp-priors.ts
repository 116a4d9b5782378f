import { positive } from "../../check/check";

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
}

const JUDGEMENT = "our judgement";

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
      informedBy: `two slab thicknesses in ${id}, with a core reading while the core is still below about 85 °C`,
    }),
  );
  return Object.freeze([
    ...coefficients,
    {
      name: "loadLoss",
      label: "share of the coefficient lost on a covered floor",
      unit: "",
      scale: "plain",
      middle: 0.2,
      spread: 0.12,
      from: `rule of thumb, ${JUDGEMENT}`,
      informedBy: "the same slab in a loose layer and on a covered floor (load 0.6 or less, and 0.9 or more)",
    },
    {
      name: "turnGain",
      label: "share by which turning raises the coefficient",
      unit: "",
      scale: "plain",
      middle: 0.08,
      spread: 0.05,
      from: `rule of thumb, ${JUDGEMENT}`,
      informedBy: "the same slab with and without a turn past half-way",
    },
    {
      name: "conductivity",
      label: "conductivity of the mix over that of its composition",
      unit: "",
      scale: "log",
      middle: 1,
      spread: 1.16,
      from: "spread of the mixing models for foods",
      informedBy: "core readings below about 85 °C on a slab of 14 mm or more",
    },
    {
      name: "crustWater",
      label: "water that leaves for each volume of crust",
      unit: "kg/m³",
      scale: "log",
      middle: crustWaterKgM3,
      spread: 1.6,
      from: "the water of the layer that dries, as the formula has it",
      informedBy: "weights before and after at two times",
    },
    {
      name: "crustDepth",
      label: "crust depth from which checks say crisp",
      unit: "mm",
      scale: "log",
      middle: 0.5,
      spread: 1.8,
      from: JUDGEMENT,
      informedBy: "checks a minute apart around the turn to crisp, at two thicknesses",
    },
    {
      name: "panelWidth",
      label: "crust depth over which the panel's score changes by a factor e",
      unit: "mm",
      scale: "log",
      middle: 0.1,
      spread: 1.8,
      from: JUDGEMENT,
      informedBy: "crispness scores on pieces taken out early, as well as crisp ones",
    },
    {
      name: "browning",
      label: "browning constant, activation energy fixed",
      unit: "1/s",
      scale: "log",
      middle: 6e5,
      spread: 4,
      from: `${JUDGEMENT}: half brown after about ten minutes of crust; Zanoni's 42 000 is for dried crumb and far too slow here`,
      informedBy: "browning scores on pieces left in until they are too dark",
    },
    {
      name: "drip",
      label: "share of the mass lost as drip",
      unit: "",
      scale: "plain",
      middle: 0.01,
      spread: 0.01,
      from: JUDGEMENT,
      informedBy: "weights of a thick slab taken out before its crust starts",
    },
  ]);
}

/** The value of a parameter at `z` prior standard deviations from the prior's middle. */
export function priorValue(prior: CrispPrior, z: number): number {
  return prior.scale === "log" ? prior.middle * prior.spread ** z : prior.middle + prior.spread * z;
}
