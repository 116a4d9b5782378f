import { describe, expect, it } from "vitest";
import { slipLines } from "../../../kernel-lib/library/src/check/slip";
import { folderFindings, isKitchenFile, KITCHEN_FILES } from "../../../kernel-lib/library/src/trials/kitchen-folder";

const files = (...paths: string[]) => paths.map((file) => ({ file, text: isKitchenFile(file) ? "" : null }));
const WHOLE = [...KITCHEN_FILES, "formulas/a.json", "trials/week.csv"];
const notices = (...more: string[]): readonly string[] => folderFindings(files(...WHOLE, ...more)).notices;
const without = (name: string, ...more: string[]) =>
  folderFindings(files(...WHOLE.filter((one) => one !== name), ...more));

describe("isKitchenFile", () => {
  it.each([...WHOLE, "trials/WEEK.CSV", "trials/may.xlsx", "trials/may.tsv", "trials/may.jsonl"])("takes %s", (path) =>
    expect(isKitchenFile(path)).toBe(true),
  );
  it.each([
    "Pans.csv",
    "trials/week.ods",
    "trials/~$may.xlsx",
    "trials/old/week.csv",
    "formulas/a.txt",
    "trials/week.csv/copy",
    "week.csv",
    "out/pans.csv",
  ])("leaves %s", (path) => expect(isKitchenFile(path)).toBe(false));
});

describe("folderFindings", () => {
  it("says nothing of a whole kitchen, nor of what may lie beside", () => {
    expect(folderFindings(files(...WHOLE))).toEqual({ slips: [], notices: [] });
    expect(
      notices(
        "README.md",
        "notes.txt",
        "out/",
        "notebooks/",
        "photos/",
        ".git/",
        ".DS_Store",
        "trials/.DS_Store",
        "make/",
      ),
    ).toEqual([]);
    expect(without("trials/week.csv")).toEqual({ slips: [], notices: [] });
  });

  it("names what is not read, and what would be", () => {
    expect(notices("trials/WEEK2.CSV")).toEqual(["trials/WEEK2.CSV was read, though its ending has capitals"]);
    expect(notices("trials/may.ods")).toEqual([
      "trials/may.ods is not read: expected a name that ends in .csv, .tsv, .xlsx or .jsonl, such as trials/may.csv",
    ]);
    expect(notices("trials/week.ods")).toEqual(["trials/week.ods is not read; trials/week.csv is"]);
    expect(notices("week.xlsx")).toEqual(["week.xlsx is not read: a log belongs in trials/, as trials/week.csv"]);
    expect(notices("Trials/")).toEqual(["Trials/ is not read (nearest: trials/)"]);
    expect(notices("old/", "trials/2024/")).toEqual([
      "old/ is not read: a kitchen has the folders formulas/, trials/ and traces/ alone",
      "trials/2024/ is not read: a kitchen has the folders formulas/, trials/ and traces/ alone",
    ]);
    expect(notices("formulas/b.jsonc")[0]).toContain("such as formulas/b.json");
    expect(notices("sketch.svg")[0]).toMatch(/^sketch\.svg is not read: a kitchen's own files are kitchen\.json, /);
  });

  it("names what is missing, and the file that is meant for it, once", () => {
    expect(slipLines(without("pans.csv").slips)).toEqual(["pans.csv: expected a file of that name, got none"]);
    const capital = without("pans.csv", "Pans.csv");
    expect(slipLines(capital.slips)).toEqual(["pans.csv: expected a file of that name, got none (nearest: Pans.csv)"]);
    expect(capital.notices).toEqual([]);
    expect(slipLines(without("formulas/a.json", "formula/").slips)).toEqual([
      "formulas: expected a folder of that name with a formula in it, a file that ends in .json or .csv, got none (nearest: formula)",
    ]);
  });
});
