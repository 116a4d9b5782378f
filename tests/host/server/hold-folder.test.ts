import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, realpathSync, renameSync, symlinkSync, writeFileSync } from "node:fs";
import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { holdFolder } from "../../../kernel-lib/host/src/server/hold-folder";

const base = realpathSync(mkdtempSync(join(tmpdir(), "slabwright-test-")));
const root = join(base, "notebooks");
mkdirSync(join(root, "inner"), { recursive: true });
mkdirSync(join(root, "swapped"));
mkdirSync(join(base, "outside"));
writeFileSync(join(base, "outside", "a.ipynb"), "secret");
writeFileSync(join(root, "inner", "a.ipynb"), "mine");
symlinkSync(join(base, "outside"), join(root, "out"));
symlinkSync(join(base, "outside", "a.ipynb"), join(root, "inner", "link.ipynb"));
mkdirSync(join(root, "inner", "folder.ipynb"));

const read = (folder: string, name: string): Promise<string | null> =>
  holdFolder(root, { folder }, async ({ openFile }) => {
    const file = await openFile(name);
    const text = await file?.readFile("utf8");
    await file?.close();
    return text ?? null;
  });

describe.each(["linux", "darwin"] as const)("holdFolder as on %s", (platform) => {
  afterEach(() => {
    vi.restoreAllMocks();
  });
  const as = (): void => void vi.spyOn(process, "platform", "get").mockReturnValue(platform);

  it("lends a folder below its root, and opens plain files there", async () => {
    as();
    expect(await read(join(root, "inner"), "a.ipynb")).toBe("mine");
    for (const name of ["link.ipynb", "folder.ipynb", "absent.ipynb"]) {
      expect(await read(join(root, "inner"), name), name).toBeNull();
    }
  });

  it.skipIf(process.platform === "win32")("does not wait for a pipe that nobody writes", async () => {
    as();
    if (!existsSync(join(root, "inner", "pipe.ipynb"))) execFileSync("mkfifo", [join(root, "inner", "pipe.ipynb")]);
    expect(await read(join(root, "inner"), "pipe.ipynb")).toBeNull();
  });

  it("refuses a folder that leads out, is outside, or is none", async () => {
    as();
    for (const folder of [
      join(root, "out"),
      base,
      join(base, "outside"),
      join(root, "absent"),
      join(root, "inner/a.ipynb"),
    ]) {
      await expect(
        holdFolder(root, { folder }, async ({ place }) => readFile(join(place, "a.ipynb"))),
        folder,
      ).rejects.toThrow();
    }
    const made = holdFolder(root, { folder: join(base, "outside", "new"), make: true }, async () => {});
    await expect(made).rejects.toMatchObject({ status: 404 });
    const below = holdFolder(root, { folder: join(root, "out", "new"), make: true }, async () => {});
    if (platform === "linux") await expect(below).rejects.toMatchObject({ status: 404 });
    else await below.catch(() => {});
    if (platform === "linux") expect(existsSync(join(base, "outside", "new"))).toBe(false);
  });

  it("makes the folders that are absent when it is told so", async () => {
    as();
    const folder = join(root, `made-${platform}`, "a", "b");
    await holdFolder(root, { folder, make: true }, ({ place }) => writeFile(join(place, "x.txt"), "x"));
    expect(await readFile(join(folder, "x.txt"), "utf8")).toBe("x");
  });
});

it.skipIf(process.platform !== "linux")(
  "holdFolder keeps the folder that it opened when a link takes its place",
  async () => {
    const folder = join(root, "swapped");
    await holdFolder(root, { folder }, async ({ place }) => {
      renameSync(folder, join(root, "away"));
      symlinkSync(join(base, "outside"), folder);
      await writeFile(join(place, "a.ipynb"), "mine");
    });
    expect(await readFile(join(base, "outside", "a.ipynb"), "utf8")).toBe("secret");
    expect(await readFile(join(root, "away", "a.ipynb"), "utf8")).toBe("mine");
  },
);
