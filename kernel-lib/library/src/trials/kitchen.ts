import type { Composition } from "../food/composition/composition";
import type { Formula } from "../food/formula/formula";
import type { Ingredient } from "../food/ingredient/ingredient";
import type { ProbeTrace } from "../heat/probe/probe-trace";
import type { Pan } from "../pan/pan";
import type { CoreLimit } from "../safety/core-limit";
import type { KitchenUnits } from "../units/unit-table";
import type { Appliance } from "./appliance";
import type { CardLanguage } from "./card-language";
import type { DayPlaces } from "./day/kitchen-day";
import type { FreezerPack } from "./stores/packs";
import type { PantryItem } from "./stores/pantry";
import type { Trial } from "./trial";
import type { Variant } from "./variant";

/** A variant with what its formula says of the mix. */
export interface KitchenVariant extends Variant {
  readonly formula: Formula;
  readonly composition: Composition;
  /** density of the mix as spread, at 5 °C with its air (kg/m³) */
  readonly densityKgM3: number;
  /** what its core must reach, from class and state of the formula and its ingredients */
  readonly limit: CoreLimit;
}

/** A trial whose slab thickness is settled: from its probes, or from its batch mass. */
export interface KitchenTrial extends Trial {
  readonly thicknessMm: number;
  /** standard deviation between the probe readings (mm); unknown with fewer than two */
  readonly thicknessSdMm: number | null;
}

/** What a logger wrote while a trial ran. */
export interface TrialTrace {
  /** the trial that its file is named after */
  readonly trialId: string;
  readonly trace: ProbeTrace;
}

/** Everything that one test kitchen has and has logged. */
export interface Kitchen {
  readonly name: string;
  /** the units that its people think in: as `kitchen.json` says, or as the headings of its files speak */
  readonly units: KitchenUnits;
  /** of cards and labels, which leave the kitchen */
  readonly language: CardLanguage;
  readonly pans: readonly Pan[];
  readonly appliances: readonly Appliance[];
  readonly ingredients: readonly Ingredient[];
  readonly variants: readonly KitchenVariant[];
  readonly trials: readonly KitchenTrial[];
  /** what loggers wrote while some of them ran */
  readonly traces: readonly TrialTrace[];
  /** what it has for a batch day, as far as `day.csv` says; empty where there is none */
  readonly day?: DayPlaces;
  /** packs, prices and stock of its ingredients, as `pantry.csv` says */
  readonly pantry?: readonly PantryItem[];
  /** packs of its products in the freezer, as `packs.csv` says */
  readonly packs?: readonly FreezerPack[];
  /** what a person should look at before trusting the logs, one sentence each */
  readonly notices: readonly string[];
}

/** One file of a kitchen. */
export interface KitchenFile {
  /** as errors name it: `"trials/week.csv"` */
  readonly file: string;
  readonly text: string;
  /** a log as it lies on the disk, where its text does not say all */
  readonly bytes?: Uint8Array;
}

/** The files of a kitchen, read but not yet understood. */
export interface KitchenFiles {
  readonly name: string;
  /** guessed from the headings unless given */
  readonly units?: KitchenUnits;
  /** English unless given */
  readonly language?: CardLanguage;
  readonly pans: KitchenFile;
  readonly appliances: KitchenFile;
  readonly ingredients: KitchenFile;
  /** ingredients as their packs print them; a kitchen may have none */
  readonly labels?: KitchenFile;
  readonly variants: KitchenFile;
  /** what it has for a batch day, packs and prices of ingredients, packs of products in the freezer; a kitchen may have none */
  readonly day?: KitchenFile;
  readonly pantry?: KitchenFile;
  readonly packs?: KitchenFile;
  readonly formulas: readonly KitchenFile[];
  readonly trials: readonly KitchenFile[];
  /** each named after its trial: `"traces/T-07.csv"` */
  readonly traces?: readonly KitchenFile[];
}
