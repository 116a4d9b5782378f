import { clipped } from "../check/check";
import { mendJson } from "../check/mend-json";
import { nearestName } from "../check/nearest-name";
import type { Slip } from "../check/slip";
import { nameSchema } from "../check/text-schema";
import type { KitchenUnits } from "../units/unit-table";
import { CARD_LANGUAGES, type CardLanguage } from "./card-language";

/** What `kitchen.json` says, as far as it can be read. */
export interface ReadKitchenJson {
  readonly name: string | null;
  /** `null` when it says nothing about them */
  readonly units: KitchenUnits | null;
  /** of cards and labels; English when it says nothing about it */
  readonly language: CardLanguage;
  readonly slips: readonly Slip[];
}

const NOTHING = { name: null, units: null, language: "en" } as const;

const KEYS = ["name", "units", "language", "about"] as const;

/** Reads a kitchen's name, its units and the language of its cards from JSON text; other remarks may stand beside them. */
export function readKitchenJson(text: string, file: string): ReadKitchenJson {
  const { text: plain, slips: mended, fault, lineOf } = mendJson(text.replace(/^\ufeff/, ""));
  const slips: Slip[] = [];
  const slip = (
    line: number,
    at: string | null,
    expected: string,
    got: string | null,
    nearest?: string | null,
  ): void => {
    slips.push({ file, row: line, at, expected, got, nearest: nearest ?? null });
  };
  for (const { line, expected, got } of fault === null ? mended : [...mended, fault])
    slip(line, null, `JSON: ${expected}`, got);
  if (fault !== null) {
    return { ...NOTHING, slips };
  }
  const json: unknown = JSON.parse(plain);
  if (typeof json !== "object" || json === null || Array.isArray(json)) {
    slip(1, null, 'a name in braces, such as { "name": "My kitchen" }', null);
    return { ...NOTHING, slips };
  }
  const said = json as Record<string, unknown>;
  const missing = KEYS.filter((key) => !Object.hasOwn(said, key));
  const renamed = new Set<string>();
  for (const key of Object.keys(said)) {
    const nearest = (KEYS as readonly string[]).includes(key) ? null : nearestName(key, missing);
    if (nearest === null) continue;
    renamed.add(nearest);
    slip(lineOf.get(key) ?? 1, key, "name, units, language or about", null, nearest);
  }
  const { name, units, language = "en" } = said;
  const shown = (value: unknown): string => (value === undefined ? "none" : JSON.stringify(value));
  const checked = nameSchema("a text that names the kitchen").safeParse(typeof name === "string" ? name.trim() : name);
  if (!checked.success && !renamed.has("name"))
    slip(lineOf.get("name") ?? 1, "name", checked.error.issues[0].message, clipped(shown(name)));
  const isUnits = units === "us" || units === "metric";
  if (units !== undefined && !isUnits)
    slip(
      lineOf.get("units") ?? 1,
      "units",
      '"us" or "metric"',
      shown(units),
      nearestName(String(units), ["us", "metric"]),
    );
  const known = CARD_LANGUAGES.find((one) => one === language);
  if (known === undefined)
    slip(lineOf.get("language") ?? 1, "language", '"en" or "es", for cards and labels', clipped(shown(language)));
  return { name: checked.success ? checked.data : null, units: isUnits ? units : null, language: known ?? "en", slips };
}
