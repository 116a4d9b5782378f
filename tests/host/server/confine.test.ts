import { mkdirSync, mkdtempSync, realpathSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { confine } from "slabwright-host";
import { describe, expect, it } from "vitest";

const base = realpathSync(mkdtempSync(join(tmpdir(), "slabwright-test-")));
const root = join(base, "notebooks");
mkdirSync(join(root, "inner"), { recursive: true });
writeFileSync(join(base, "secret.ipynb"), "{}");
writeFileSync(join(root, "inner", "a.ipynb"), "{}");
symlinkSync(base, join(root, "out"));
symlinkSync(join(base, "secret.ipynb"), join(root, "linked.ipynb"));
symlinkSync(join(root, "inner"), join(root, "within"));

describe("confine", () => {
  it.each([
    ["inner/a.ipynb", "inner/a.ipynb"],
    ["/inner//a.ipynb", "inner/a.ipynb"],
    ["within/a.ipynb", "inner/a.ipynb"],
    ["new.ipynb", "new.ipynb"],
    ["", ""],
    ["50% rye.ipynb", "50% rye.ipynb"],
    ["how thick.ipynb", "how thick.ipynb"],
    ["100%25.ipynb", "100%25.ipynb"],
  ])("%j is at %j", async (path, place) => expect(await confine(root, path)).toBe(join(root, place)));

  it.each([
    "../secret.ipynb",
    "inner/../../secret.ipynb",
    "out/secret.ipynb",
    "linked.ipynb",
    "out/new.ipynb",
    ".hidden",
    "inner/.git/config",
    "..\\secret.ipynb",
    "%2e%2e/secret.ipynb",
    "..%2fsecret.ipynb",
    "a%2f..%2fsecret.ipynb",
    "a%00.ipynb",
    "a\u007f.ipynb",
    "a\0.ipynb",
    "inner/a.ipynb/x",
    "x".repeat(300),
  ])("%j is refused", (path) => expect(confine(root, path)).rejects.toMatchObject({ status: 404 }));

  it.each(["how thick?.ipynb", "a:b.ipynb", '"a"<b>|*.ipynb'])("%j is a name, but not on Windows", async (path) => {
    if (process.platform === "win32") await expect(confine(root, path)).rejects.toMatchObject({ status: 404 });
    else expect(await confine(root, path)).toBe(join(root, path));
  });

  it("asks for text", () => expect(confine(root, 5 as never)).rejects.toMatchObject({ status: 400 }));

  it("never leads out of its root", async () => {
    const part = fc.constantFrom(
      "..",
      ".",
      "",
      "out",
      "linked.ipynb",
      "inner",
      "within",
      "secret.ipynb",
      "a.ipynb",
      "%2e%2e",
      "..%2f",
      "...",
      "~",
    );
    await fc.assert(
      fc.asyncProperty(fc.array(part, { maxLength: 6 }), async (parts) => {
        const place = await confine(root, parts.join("/")).catch(() => root);
        expect(place === root || place.startsWith(`${root}/`)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
