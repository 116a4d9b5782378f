import { appendFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, it } from "vitest";
import { askedKitchen } from "../../../kernel-lib/host/src/kitchen/asked-kitchen";
import { youngKitchen } from "./young-kitchen";

const project = resolve(".");

it("keeps an answer until a file of the kitchen changes; what runs write does not count", async () => {
  const folder = youngKitchen(1);
  const kitchen = askedKitchen({ project, folder });
  const first = await kitchen.glance();
  expect(first.products).toMatchObject([{ trials: 1 }]);
  expect(await kitchen.glance(), "the very same").toBe(first);
  mkdirSync(join(folder, "out"));
  writeFileSync(join(folder, "out", "report.html"), "x");
  expect(await kitchen.glance()).toBe(first);
  const log = join(folder, "trials", "first-log.csv");
  appendFileSync(log, readFileSync(log, "utf8").split("\n")[1].replace("A-1", "A-2"));
  expect((await kitchen.glance()).products).toMatchObject([{ trials: 2 }]);
}, 60_000);

it("says the library's sentence where it cannot answer, and asks again once that is mended", async () => {
  const folder = youngKitchen(0);
  const file = join(folder, "variants.csv");
  const sound = readFileSync(file, "utf8");
  writeFileSync(file, sound.replace("half-sheet", "halv-sheet"));
  const kitchen = askedKitchen({ project, folder });
  expect((await kitchen.glance()).problems).toHaveLength(1);
  await expect(kitchen.answers()).rejects.toThrow('got "halv-sheet"');
  writeFileSync(file, `${sound}\n`);
  expect((await kitchen.answers()).rows).toHaveLength(1);
}, 60_000);
