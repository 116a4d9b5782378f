import { readFileSync } from "node:fs";
import { basename, join } from "node:path";

/** The line under the report's heading: the kitchen by the name in its `kitchen.json`, and the day it was made. */
export function subtitleOf(kitchenFolder: string): string {
  return `${kitchenName(kitchenFolder)}, ${new Date().toISOString().slice(0, 10)}`;
}

function kitchenName(folder: string): string {
  try {
    const { name } = JSON.parse(readFileSync(join(folder, "kitchen.json"), "utf8"));
    if (typeof name === "string") return name;
  } catch {
    // a kitchen that cannot be read is reported by the notebook that loads it
  }
  return basename(folder);
}
