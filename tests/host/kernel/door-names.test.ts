import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { doorNames } from "../../../kernel-lib/host/src/kernel/door-names";

it("reads every door, the cook's first, with all that it shows", async () => {
  const doors = doorNames("notebooks");
  const { exports } = JSON.parse(readFileSync("kernel-lib/library/package.json", "utf8"));
  expect(doors.map(({ door }) => door)).toEqual(
    Object.keys(exports).map((path: string) => path.replace(".", "slabwright")),
  );
  for (const { door, values, types } of doors) {
    const shown = Object.keys(await import(door));
    expect([...values.keys()].sort(), door).toEqual(shown.sort());
    expect(shown.filter((name) => types.has(name))).toEqual([]);
  }
  expect(doors[0].types.has("Kitchen")).toBe(true);
});

it("finds none where no library is", () => {
  expect(doorNames("/")).toEqual([]);
});
