import { nearestData } from "./nearest-data";

/** The folder of the kitchen that is meant: as given, or as `SLABWRIGHT_KITCHEN` says, or the nearest `data` folder. */
export function kitchenFolder(folder: string | undefined, where: string): string {
  return folder ?? process.env.SLABWRIGHT_KITCHEN ?? nearestData(where);
}
