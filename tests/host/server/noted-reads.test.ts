import { appendFileSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { watchedFiles } from "../../../kernel-lib/host/src/server/noted-reads";

const folder = mkdtempSync(join(tmpdir(), "slabwright-test-"));
const kitchen = join(folder, "kitchen");
mkdirSync(join(kitchen, "trials"), { recursive: true });
const log = join(kitchen, "trials", "week.csv");
writeFileSync(log, "one\n");
writeFileSync(join(folder, "secret"), "s");
symlinkSync(join(folder, "secret"), join(kitchen, "link"));
const watched = watchedFiles({ kitchen });

it("digests are of what a file holds now, and only of files in its places", async () => {
  const digest = async (name: string): Promise<string | null> => (await watched.digests([name]))[name];
  const first = await digest("kitchen/trials/week.csv");
  expect(first).toMatch(/^[0-9a-f]{16}$/);
  writeFileSync(log, "one and two\n");
  expect(await digest("kitchen/trials/week.csv")).not.toBe(first);
  const outside = [
    "kitchen/../secret",
    "kitchen/link",
    "kitchen/trials",
    "kitchen/none.csv",
    "etc/passwd",
    "__proto__/x",
    "",
  ];
  for (const name of outside) expect(await digest(name), name).toBeNull();
});

it("take tells what was noted since it was last asked, whole lines only", () => {
  const notes = watched.notes();
  const { to } = JSON.parse(notes.environment.SLABWRIGHT_READS) as { to: string };
  expect(notes.take()).toEqual({});
  appendFileSync(
    to,
    `${JSON.stringify(log)}\n${JSON.stringify(join(folder, "secret"))}\n${JSON.stringify(kitchen).slice(0, 4)}`,
  );
  expect(Object.keys(notes.take())).toEqual(["kitchen/trials/week.csv"]);
  expect(notes.take()).toEqual({});
  appendFileSync(to, `${JSON.stringify(kitchen).slice(4)}\n${JSON.stringify(join(kitchen, "ä b.csv"))}\n`);
  expect(notes.take(), "a file that is gone since").toEqual({ "kitchen/ä b.csv": null });
  notes.close();
  rmSync(folder, { recursive: true });
});
