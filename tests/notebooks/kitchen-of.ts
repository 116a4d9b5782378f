import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { convertUnit } from "../../kernel-lib/library/src/units/convert-unit";

/** What a kitchen of the demo's rows holds. */
export interface KitchenOf {
  /** how many trials of each variant that it makes: variant's id to a number */
  readonly trials: Readonly<Record<string, number>>;
  /** pans to keep, those that the variants are made on among them; all unless given */
  readonly pans?: readonly string[];
  /** appliances to keep; all unless given */
  readonly appliances?: readonly string[];
  /** write headings and values in inches, ounces and °F */
  readonly us?: boolean;
  /** keep the probe trace, when its trial is kept; default false */
  readonly traces?: boolean;
}

interface Rows {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const IN_US: Readonly<Record<string, readonly ["mm" | "g" | "lb" | "°C" | "cm²", "in" | "oz" | "°F" | "in²", string]>> =
  {
    _mm: ["mm", "in", "_in"],
    _g: ["g", "oz", "_oz"],
    _lb: ["lb", "oz", "_oz"],
    _c: ["°C", "°F", "_f"],
    _cm2: ["cm²", "in²", "_in2"],
  };

/**
 * Writes a kitchen made of the demo's rows into a folder, smaller in any way that a young kitchen is: few trials, one variant,
 * one pan, one appliance, only wells, other units. Trials are the first of each variant's log that its pans and appliances allow.
 */
export function writeKitchenOf(folder: string, kitchen: KitchenOf): string {
  const variantIds = Object.keys(kitchen.trials);
  const write = (file: string, text: string): void => writeFileSync(join(folder, file), text);
  const csv = (file: string, { headings, rows }: Rows): void => {
    const sheet = kitchen.us ? inUs({ headings, rows }) : { headings, rows };
    write(file, `${[sheet.headings, ...sheet.rows].map((cells) => cells.join(",")).join("\n")}\n`);
  };
  for (const inner of ["formulas", "trials"]) mkdirSync(join(folder, inner), { recursive: true });
  write("kitchen.json", JSON.stringify({ name: "a young kitchen", units: kitchen.us ? "us" : "metric" }));
  cpSync("data/ingredients.csv", join(folder, "ingredients.csv"));

  const variants = kept("data/variants.csv", "variant", variantIds);
  const column = ({ headings, rows }: Rows, name: string): string[] => rows.map((row) => row[headings.indexOf(name)]);
  csv("variants.csv", variants);
  csv("pans.csv", kept("data/pans.csv", "pan", kitchen.pans));
  csv("appliances.csv", kept("data/appliances.csv", "appliance", kitchen.appliances));
  for (const id of column(variants, "formula"))
    cpSync(`data/formulas/${id}.json`, join(folder, "formulas", `${id}.json`));
  const logged: string[] = [];
  for (const [variantId, count] of Object.entries(kitchen.trials)) {
    const onPans = only(rowsOf(`data/trials/${variantId}.csv`), "pan", kitchen.pans);
    const { headings, rows } = only(onPans, "appliance", kitchen.appliances);
    const first = { headings, rows: rows.slice(0, count) };
    logged.push(...column(first, "trial"));
    csv(`trials/${variantId}.csv`, first);
  }
  if (kitchen.traces) cpSync("data/traces", join(folder, "traces"), { recursive: true, filter: isTraceOf(logged) });
  return folder;
}

function isTraceOf(trialIds: readonly string[]): (path: string) => boolean {
  return (path) => !path.endsWith(".csv") || trialIds.some((id) => path.endsWith(`${id}.csv`));
}

function rowsOf(path: string): Rows {
  const [headings, ...rows] = readFileSync(path, "utf8")
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"))
    .map((line) => line.split(","));
  return { headings, rows };
}

function kept(path: string, heading: string, ids: readonly string[] | undefined): Rows {
  return only(rowsOf(path), heading, ids);
}

function only({ headings, rows }: Rows, heading: string, ids: readonly string[] | undefined): Rows {
  const at = headings.indexOf(heading);
  return { headings, rows: ids === undefined ? rows : rows.filter((row) => ids.includes(row[at])) };
}

function inUs({ headings, rows }: Rows): Rows {
  const plans = headings.map((heading) => {
    const [, suffix = ""] = /(_[a-z0-9]+)$/.exec(heading) ?? [];
    return Object.hasOwn(IN_US, suffix)
      ? { heading: heading.replace(suffix, IN_US[suffix][2]), units: IN_US[suffix] }
      : null;
  });
  const converted = (cell: string, at: number): string => {
    const units = plans[at]?.units;
    if (units === undefined || cell === "") return cell;
    return cell
      .split(";")
      .map((value) => String(Number(convertUnit({ value: Number(value), from: units[0], to: units[1] }).toFixed(4))))
      .join(";");
  };
  return {
    headings: headings.map((heading, at) => plans[at]?.heading ?? heading),
    rows: rows.map((row) => row.map(converted)),
  };
}
