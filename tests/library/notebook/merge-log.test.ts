import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "slabwright";
import { logQuestions, mergeLog, trialHistory, undoLog } from "slabwright/notebook";
import { afterEach, beforeEach, expect, it } from "vitest";

let folder: string;
let theirs: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "kitchen-"));
  cpSync("data", folder, { recursive: true });
  theirs = join(folder, "from-the-other-kitchen.csv");
});
afterEach(() => rmSync(folder, { recursive: true }));

const into = "beet-lentil.csv";
const text = (): string => readFileSync(join(folder, "trials", into), "utf8");
const trial = (id: string) => loadKitchen(folder).trials.find(({ trialId }) => trialId === id);

it("mergeLog adds what only theirs holds, fills in, and leaves what differs for a person; all of it can be taken back", () => {
  const before = text();
  const lines = before.split("\n");
  const bl02 = lines.find((line) => line.startsWith("BL-02")) as string;
  const bl03 = lines.find((line) => line.startsWith("BL-03")) as string;
  writeFileSync(
    theirs,
    [
      lines[1],
      bl02.replace(/,$/, ",seen by two"),
      bl03.replace(",99.5,", ",91,"),
      bl02.replace("BL-02", "OK-1").replace("2026-02-04", "2026-07-01"),
      "",
    ].join("\n"),
  );
  const dry = mergeLog(theirs, { folder, into, dry: true });
  expect(text()).toBe(before);
  const merged = mergeLog(theirs, { folder, into, by: "AB" });
  expect(merged).toMatchObject({ added: ["OK-1"], changed: ["BL-02"], conflicts: dry.conflicts });
  expect(merged.conflicts.map(({ kind, chosen }) => [kind, chosen])).toEqual([
    ["fills in", "both"],
    ["differs", "ours"],
  ]);
  expect(merged.sentence).toBe(
    "trials/beet-lentil.csv: 1 added, 1 changed, 0 alike. 1 of theirs differs and was not taken: decide with choose.",
  );
  expect(trial("BL-02")?.note).toBe("seen by two");
  expect(trial("BL-03")?.coreC).toBe(99.5);
  expect(trialHistory("BL-02", { folder })).toMatchObject([
    { what: "correct", by: "AB", why: "merged with another log", before: bl02 },
  ]);

  expect(mergeLog(theirs, { folder, into, choose: { "BL-03": "theirs" } })).toMatchObject({
    added: [],
    changed: ["BL-03"],
    alike: ["BL-02", "OK-1"],
  });
  expect(trial("BL-03")?.coreC).toBe(91);
  for (let step = 0; step < 3; step++) undoLog(into, { folder });
  expect(text()).toBe(before);
});

it("mergeLog writes nothing when either log has a slip or a name stands in another log", () => {
  const before = text();
  writeFileSync(theirs, readFileSync(join("data", "trials", "turkey-sage.csv"), "utf8"));
  expect(() => mergeLog(theirs, { folder, into })).toThrow("must have names that no other log of the kitchen has");
  writeFileSync(theirs, "trial,date\nX,soon\n");
  expect(() => mergeLog(theirs, { folder, into })).toThrow(/from-the-other-kitchen\.csv/);
  expect(text()).toBe(before);
});

it("logQuestions asks for what a usual trial tells, in the kitchen's units", () => {
  const { variants, headings } = logQuestions("data");
  expect(variants).toEqual(loadKitchen("data").variants.map(({ variantId }) => variantId));
  expect(headings).toEqual(
    expect.arrayContaining(["thickness_mm", "time_min", "core_c", "before_g", "crisp_scores", "note"]),
  );
  expect(headings).not.toContain("setpoint_c");
});
