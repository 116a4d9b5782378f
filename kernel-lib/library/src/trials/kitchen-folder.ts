import { nearestName } from "../check/nearest-name";
import type { Slip } from "../check/slip";

/** The files that every kitchen has. */
export const KITCHEN_FILES = ["kitchen.json", "pans.csv", "appliances.csv", "ingredients.csv", "variants.csv"] as const;
/** What a kitchen may have beside them. */
const OPTIONAL_FILES: readonly string[] = ["labels.csv", "day.csv", "pantry.csv", "packs.csv"];
/** What its folders hold, by the ending of the files in them. */
export const KITCHEN_FOLDERS: Readonly<Record<string, readonly string[]>> = {
  formulas: [".json", ".csv"],
  trials: [".csv", ".tsv", ".xlsx", ".jsonl"],
  traces: [".csv"],
};
/** What may lie beside them without being read: papers, results, programs, pictures, plans. */
const BESIDE = ["out", "make", "notebooks", "photos", "plans"];

/** What lies in a kitchen's folder. */
export interface FolderFile {
  /** as errors name it: `"trials/week.csv"`, a folder with a slash at its end */
  readonly file: string;
  /** `null` for what is not read */
  readonly text: string | null;
  /** a log as it lies on the disk, where its text does not say all */
  readonly bytes?: Uint8Array;
}

/** Whether a file of a kitchen's folder is one that is read. */
export function isKitchenFile(path: string): boolean {
  const [folder, name, ...deeper] = path.split("/");
  if (name === undefined) return (KITCHEN_FILES as readonly string[]).includes(path) || OPTIONAL_FILES.includes(path);
  if (deeper.length > 0 || !Object.hasOwn(KITCHEN_FOLDERS, folder) || name.startsWith(".") || name.startsWith("~$"))
    return false;
  // logs come from spreadsheets and from elsewhere, with whatever capitals
  const plain = folder === "trials" ? name.toLowerCase() : name;
  return KITCHEN_FOLDERS[folder].some((ending) => plain.endsWith(ending));
}

/** Whether a file of a kitchen's folder is a workbook, whose text says nothing. */
export function isWorkbook(path: string): boolean {
  return isKitchenFile(path) && /\.xlsx$/i.test(path);
}

/** What a kitchen's folder lacks, and what lies in it unread. */
export interface FolderFindings {
  readonly slips: readonly Slip[];
  readonly notices: readonly string[];
}

/**
 * Holds the names in a kitchen's folder against those that a kitchen has. A file that is missing is a slip; one that is
 * not read, such as `trials/week.ods` or `week.xlsx` beside the folder, is a notice, since its trials would vanish without
 * a word.
 */
export function folderFindings(files: readonly FolderFile[]): FolderFindings {
  const paths = files.map(({ file }) => file);
  const unread = files.filter(({ file, text }) => text === null && !isBeside(file)).map(({ file }) => file);
  const taken = new Set<string>();
  const slips: Slip[] = [];
  const missing = (name: string, expected: string): void => {
    const nearest = nearestName(
      name,
      unread.filter((path) => !path.replace(/\/$/, "").includes("/")).map((path) => path.replace(/\/$/, "")),
    );
    if (nearest !== null) taken.add(nearest);
    slips.push({ file: name, row: null, at: null, expected, got: "none", nearest });
  };
  for (const name of KITCHEN_FILES) if (!paths.includes(name)) missing(name, "a file of that name");
  if (!paths.some((path) => path.startsWith("formulas/") && isKitchenFile(path)))
    missing("formulas", "a folder of that name with a formula in it, a file that ends in .json or .csv");
  const capitals = paths
    .filter((path) => path.startsWith("trials/") && isKitchenFile(path) && /\.[a-z]*[A-Z][A-Za-z]*$/.test(path))
    .map((path) => `${path} was read, though its ending has capitals`);
  const unknown = unread.filter((path) => !taken.has(path.replace(/\/$/, ""))).map((path) => noticeOf(path, paths));
  return { slips, notices: [...capitals, ...unknown] };
}

function isBeside(path: string): boolean {
  const [first, second] = path.split("/");
  const isHidden = first.startsWith(".") || (second ?? "").startsWith(".");
  return isHidden || BESIDE.includes(first) || /\.(md|txt|pdf)$/i.test(path);
}

function noticeOf(path: string, paths: readonly string[]): string {
  const [folder, name] = path.split("/");
  const endings = Object.hasOwn(KITCHEN_FOLDERS, folder) ? KITCHEN_FOLDERS[folder] : undefined;
  const nearestOf = (known: readonly string[], given: string): string | null => nearestName(given, known);
  if (path.endsWith("/")) {
    const nearest = name === "" ? nearestOf(Object.keys(KITCHEN_FOLDERS), folder) : null;
    return `${path} is not read${nearest === null ? ": a kitchen has the folders formulas/, trials/ and traces/ alone" : ` (nearest: ${nearest}/)`}`;
  }
  if (endings !== undefined) {
    const instead = endings.map((ending) => `${path.replace(/\.[^./]*$/, "")}${ending}`);
    const read = instead.find((one) => paths.includes(one));
    const known = endings.length === 1 ? endings[0] : `${endings.slice(0, -1).join(", ")} or ${endings.at(-1)}`;
    return read !== undefined
      ? `${path} is not read; ${read} is`
      : `${path} is not read: expected a name that ends in ${known}, such as ${instead[0]}`;
  }
  const nearest = nearestOf([...KITCHEN_FILES, ...OPTIONAL_FILES], path);
  if (nearest !== null && !paths.includes(nearest)) return `${path} is not read (nearest: ${nearest})`;
  return /\.(csv|tsv|xlsx?|ods|numbers)$/i.test(path)
    ? `${path} is not read: a log belongs in trials/, as trials/${path.replace(/\.[^.]*$/, "")}.csv`
    : `${path} is not read: a kitchen's own files are ${[...KITCHEN_FILES, ...OPTIONAL_FILES].join(", ")}, and those in formulas/, trials/ and traces/`;
}
