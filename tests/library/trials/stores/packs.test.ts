import { describe, expect, test } from "vitest";
import { readPacks } from "../../../../kernel-lib/library/src/trials/stores/packs";

const read = (rows: string) =>
  readPacks(`pack,variant,packed,pieces,kept_c,warm_c,warm_days,packing,note\n${rows}\n`, "packs.csv");

describe("readPacks", () => {
  test("reads a pack with its warm spells, and says what stands in", () => {
    const { records, problems, notices } = read("January,oat-bars,2026-01-20,24,,-10; -8,1.5; 0.5,frosty,");
    expect(problems).toEqual([]);
    expect(records[0]).toMatchObject({ keptC: -18, warmC: [-10, -8], warmDays: [1.5, 0.5], packing: "loose" });
    expect(notices.map(({ says }) => says).join(" ")).toMatch(/kept at -18 °C \(0 °F\)/);
  });

  test("a spell has a temperature and a time, and thawed food is refused", () => {
    expect(read("a,v,2026-01-20,24,,-10,,,").problems[0]).toMatch(
      /column warm_days: expected as many days as there are/,
    );
    expect(read("a,v,2026-01-20,24,-2,,,,").problems[0]).toMatch(
      /column kept_c: expected a temperature of -40 to -5 °C/,
    );
    expect(read("a,v,2026-01-20,2.5,,,,,").problems[0]).toMatch(/column pieces: expected a whole number of pieces/);
  });
});
