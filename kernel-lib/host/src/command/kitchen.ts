import { existsSync, readFileSync, realpathSync, statSync } from "node:fs";
import { basename, join, relative, resolve } from "node:path";
import type { CommandOptions } from "./command-options";

/** The kitchen that a command works on. */
export interface CommandKitchen {
  readonly folder: string;
  /** as its `kitchen.json` says, or else its folder's name */
  readonly name: string;
  /** what its `kitchen.json` says about it; null when nothing */
  readonly about: string | null;
  /** the folder of its own notebooks, which need not be there; null for the project's `data`, whose notebooks are the project's */
  readonly notebooks: string | null;
  /** where its executed notebooks and its report go */
  readonly out: string;
  /** `folder` as seen from `out`: what executed copies carry, which must not name places of this machine */
  readonly fromOut: string;
  /** added to the environment of its kernels: what `loadKitchen` reads */
  readonly environment: Readonly<Record<string, string>>;
}

/**
 * The kitchen of `--kitchen`, else of the environment's `SLABWRIGHT_KITCHEN`, else the project's `data`. Each kitchen has
 * an `out` folder of its own, in its folder; that of `data` is the project's.
 */
export function kitchenOf(options: Pick<CommandOptions, "kitchen" | "out">, project: string): CommandKitchen {
  const environment = kitchenEnvironment(options.kitchen);
  const own = join(project, "data");
  const folder = environment.SLABWRIGHT_KITCHEN ?? own;
  const isOwn = folder === own || isSameFolder(folder, own);
  const out = resolve(options.out ?? join(isOwn ? project : folder, "out"));
  const notebooks = isOwn ? null : join(folder, "notebooks");
  return { folder, ...namesOf(folder), notebooks, out, fromOut: relative(out, folder), environment };
}

/** What a kernel's environment says about the kitchen, when one was named. */
export function kitchenEnvironment(kitchen: string | null): Record<string, string> {
  const named = kitchen ?? process.env.SLABWRIGHT_KITCHEN ?? null;
  if (named === null) return {};
  const folder = resolve(named);
  const where = kitchen === null ? "SLABWRIGHT_KITCHEN" : "--kitchen";
  if (!existsSync(folder)) throw new Error(`${where} must be a folder that exists, got ${folder}`);
  if (!statSync(folder).isDirectory()) throw new Error(`${where} must be a folder, got the file ${folder}`);
  return { SLABWRIGHT_KITCHEN: folder };
}

function isSameFolder(one: string, other: string): boolean {
  return existsSync(other) && realpathSync(one) === realpathSync(other);
}

function namesOf(folder: string): Pick<CommandKitchen, "name" | "about"> {
  const text = (value: unknown): string | null => (typeof value === "string" ? value : null);
  try {
    const { name, about } = JSON.parse(readFileSync(join(folder, "kitchen.json"), "utf8"));
    return { name: text(name) ?? basename(folder), about: text(about) };
  } catch {
    // a kitchen that cannot be read is reported by the check, or by the notebook that loads it
    return { name: basename(folder), about: null };
  }
}
