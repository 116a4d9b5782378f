import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writePage } from "slabwright/notebook";
import { expect, test } from "vitest";

test("writePage writes the page whole, over one of that name, and no other file", () => {
  const folder = mkdtempSync(join(tmpdir(), "slabwright-page-"));
  try {
    const path = join(folder, "day.html");
    writePage("<p>old and longer</p>", path);
    expect(writePage("<p>fünf</p>", path)).toBe(path);
    expect(readFileSync(path, "utf8")).toBe("<p>fünf</p>");
    expect(() => writePage("<p></p>", join(folder, "day.csv"))).toThrow(/^writePage: path must end in \.html, got /);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
