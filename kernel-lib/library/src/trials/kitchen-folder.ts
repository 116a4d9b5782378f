import { nearestName } from "../check/nearest-name";
import type { Slip } from "../check/slip";

/** The files that every kitchen has. */
export const KITCHEN_FILES = ["kitchen.json", "pans.csv", "appliances.csv", "ingredients.csv", "variants.csv"] as const;
/** What its folders hold, by the ending of the files in them. */
export const KITCHEN_FOLDERS: Readonly<Record<string, string>> = { formulas: ".json", trials: ".csv" };
/** What may lie beside them without being read: papers, results, programs. */
const BESIDE = ["out", "make", "notebooks"];

/** What lies in a kitchen's folder. */
export interface FolderFile {
  /** as errors name it: `"trials/beet-lentil.csv"`, a folder with a slash at its end */
  readonly file: string;
  /** `null` for what is not read */
  readonly text: string | null;
}

/** Whether a file of a kitchen's folder is one that is read. */
export function isKitchenFile(path: string): boolean {
  const [folder, name, ...deeper] = path.split("/");
  if (name === undefined) return (KITCHEN_FILES as readonly string[]).includes(path);
  return deeper.length === 0 && Object.hasOwn(KITCHEN_FOLDERS, folder) && name.endsWith(KITCHEN_FOLDERS[folder]);
}

/** What a kitchen's folder lacks, and what lies in it unread. */
export interface FolderFindings {
  readonly slips: readonly Slip[];
  readonly notices: readonly string[];
}

/**
 * Holds the names in a kitchen's folder against those that a kitchen has. A file that is missing is a slip; one that is
 * not read, such as `trials/WEEK.CSV` or `week.xlsx`, is a notice, since its trials would vanish without a word.
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
    missing("formulas", "a folder of that name with a formula in it, a file that ends in .json");
  const notices = unread.filter((path) => !taken.has(path.replace(/\/$/, ""))).map((path) => noticeOf(path, paths));
  return { slips, notices };
}

function isBeside(path: string): boolean {
  const [first, second] = path.split("/");
  const isHidden = first.startsWith(".") || (second ?? "").startsWith(".");
  return isHidden || BESIDE.includes(first) || /\.(md|txt|pdf)$/i.test(path);
}

function noticeOf(path: string, paths: readonly string[]): string {
  const [folder, name] = path.split("/");
  const ending = KITCHEN_FOLDERS[folder];
  const nearestOf = (known: readonly string[], given: string): string | null => nearestName(given, known);
  if (path.endsWith("/")) {
    const nearest = name === "" ? nearestOf(Object.keys(KITCHEN_FOLDERS), folder) : null;
    return `${path} is not read${nearest === null ? ": a kitchen has the folders formulas/ and trials/ alone" : ` (nearest: ${nearest}/)`}`;
  }
  if (ending !== undefined) {
    const instead = `${path.replace(/\.[^./]*$/, "")}${ending}`;
    return paths.includes(instead)
      ? `${path} is not read; ${instead} is`
      : `${path} is not read: expected a name that ends in ${ending}, such as ${instead}`;
  }
  const nearest = nearestOf(KITCHEN_FILES, path);
  if (nearest !== null && !paths.includes(nearest)) return `${path} is not read (nearest: ${nearest})`;
  return /\.(csv|tsv|xlsx?|ods|numbers)$/i.test(path)
    ? `${path} is not read: a log belongs in trials/, as trials/${path.replace(/\.[^.]*$/, "")}.csv`
    : `${path} is not read: a kitchen's own files are ${KITCHEN_FILES.join(", ")}, and those in formulas/ and trials/`;
}
