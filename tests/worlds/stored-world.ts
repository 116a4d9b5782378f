import { readdirSync, readFileSync } from "node:fs";
import type { CookedTrial } from "./cook-trial";
import type { SettingTruth } from "./setting-truth";
import type { WorldSetting } from "./world";

/** The ways in which a setting lies from what was logged. */
export const TRANSFERS = [
  "own",
  "between",
  "smaller pan",
  "much smaller pan",
  "hotter",
  "cooler",
  "smaller piece",
  "bigger piece",
  "another load",
] as const;
export type Transfer = (typeof TRANSFERS)[number];

/** One world as it is kept: its log and its truth. */
export interface StoredWorld {
  readonly product: string;
  readonly seed: number;
  /** density that the formula's developer reckons with (kg/m³) */
  readonly densityKgM3: number;
  readonly floorsCm2: { readonly basket: number; readonly oven: number };
  readonly pans: readonly { readonly id: string; readonly lengthMm: number; readonly widthMm: number }[];
  readonly tooDryPercent: number;
  readonly trials: readonly CookedTrial[];
  readonly settings: readonly {
    readonly transfer: Transfer;
    readonly setting: WorldSetting;
    readonly truth: SettingTruth;
  }[];
}

const FOLDER = new URL("truth/", import.meta.url);

/** All stored worlds, in the order of their file names. */
export function storedWorlds(): readonly StoredWorld[] {
  return readdirSync(FOLDER)
    .filter((name) => name.endsWith(".json"))
    .sort()
    .map((name) => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as StoredWorld);
}
