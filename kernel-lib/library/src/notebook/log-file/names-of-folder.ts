import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { failAll } from "../../check/csv";
import { readPans } from "../../pan/read-pans";
import { readAppliances } from "../../trials/appliance";
import { type KnownNames, namesOf } from "../../trials/known-names";
import { readVariants } from "../../trials/variant";

/** The ids that a kitchen's files give to what trials speak of. */
export type FolderNames = Readonly<Record<"variantId" | "panId" | "applianceId", KnownNames | null>>;

const seen = new Map<string, { readonly stamp: string; readonly names: FolderNames }>();
const FILES = ["variants.csv", "pans.csv", "appliances.csv"] as const;

/** The ids in a kitchen's folder, read again only when one of their files changed. */
export function namesOfFolder(folder: string): FolderNames {
  const stamp = FILES.map((file) => {
    const { mtimeMs, size, ino } = statSync(join(folder, file));
    return `${mtimeMs} ${size} ${ino}`;
  }).join("; ");
  const known = seen.get(folder);
  if (known?.stamp === stamp) return known.names;
  const text = (file: string): string => readFileSync(join(folder, file), "utf8");
  const variants = { ...readVariants(text("variants.csv"), "variants.csv"), file: "variants.csv" };
  const pans = { ...readPans(text("pans.csv"), "pans.csv"), file: "pans.csv" };
  const appliances = { ...readAppliances(text("appliances.csv"), "appliances.csv"), file: "appliances.csv" };
  failAll([...variants.problems, ...pans.problems, ...appliances.problems]);
  const names = {
    variantId: namesOf(variants, "variantId"),
    panId: namesOf(pans, "id"),
    applianceId: namesOf(appliances, "applianceId"),
  };
  seen.set(folder, { stamp, names });
  return names;
}
