import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { checkDraft } from "slabwright/notebook";
import { afterEach, beforeEach, expect, it } from "vitest";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

it("checks what is there before the pieces are out, and says that the time is still to come", () => {
  const good = checkDraft({ variant: "beet-lentil", thickness_mm: "9.1; 8.8", not_crisp_min: "8" }, { folder });
  expect(good).toMatchObject({ problems: [], missing: ["time_min"], coldCore: null });
  expect(good.assumed.join("\n")).toContain("the pan is half-sheet");
  const bad = checkDraft({ variant: "beet-lentil", thickness_mm: "nine", crisp_min: "soon" }, { folder });
  expect(bad.problems).toEqual([
    expect.stringContaining("column thickness_mm"),
    expect.stringContaining("column crisp_min"),
  ]);
  expect(bad.missing).toEqual(["time_min"]);
});

it("says problems, notices and a cold core, and writes nothing", () => {
  const before = readFileSync(join(folder, "trials", "beet-lentil.csv"), "utf8");
  const typed = { variant: "beet-lentil", thickness_mm: "9.1; 25", time_min: "10", core_c: "60" };
  const checked = checkDraft(typed, { folder });
  expect(checked.missing).toEqual([]);
  expect(checked.notices.join("\n")).toContain("column thickness_mm");
  expect(checked.coldCore).toContain("not safe");
  expect(checkDraft({ ...typed, crisp_min: "12" }, { folder }).problems.join("\n")).toContain(
    "at most the time of taking out",
  );
  expect(readFileSync(join(folder, "trials", "beet-lentil.csv"), "utf8")).toBe(before);
});

it("says that a core is cold whatever else is wrong", () => {
  const checked = checkDraft({ variant: "beet-lentil", thickness_mm: "nine", core_c: "80; 60" }, { folder });
  expect(checked.problems).toHaveLength(1);
  expect(checked.coldCore).toMatch(/^The core of 60 °C .* not safe/);
  expect(checkDraft({ variant: "beet-lentil", thickness_mm: "nine", core_c: "sixty" }, { folder }).coldCore).toBe(null);
});
