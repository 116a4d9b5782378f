import { existsSync } from "node:fs";
import { resolve } from "node:path";

/** What a kernel's environment says about the kitchen: the variable that `loadKitchen` reads, when one was named. */
export function kitchenEnvironment(kitchen: string | null): Record<string, string> {
  if (kitchen === null) return {};
  const folder = resolve(kitchen);
  if (!existsSync(folder)) throw new Error(`--kitchen must be a folder that exists, got ${folder}`);
  return { SLABWRIGHT_KITCHEN: folder };
}
