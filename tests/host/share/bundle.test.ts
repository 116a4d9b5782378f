import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll, describe, expect, it } from "vitest";
import { CRATE, openBundle, packBundle } from "../../../kernel-lib/host/src/share/bundle";
import { crateText } from "../../../kernel-lib/host/src/share/crate";

const place = mkdtempSync(join(tmpdir(), "slabwright-test-"));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const basis = { node: "20.19.0", packages: { tslab: "1.0.22" }, lock: null, code: "c" };
function bundle(name: string): string {
  const folder = join(place, name);
  mkdirSync(join(folder, "kitchen", "trials"), { recursive: true });
  writeFileSync(join(folder, "kitchen", "trials", "Woche 1 <b>#?.csv"), "trial\n");
  writeFileSync(join(folder, "page.html"), "<p>page</p>");
  const crate = crateText({
    folder,
    name: "A kitchen",
    description: "all",
    run: "2026-11-26T10:00:00.000Z",
    contact: "the kitchen",
    basis,
    parameters: { freezerC: -18 },
  });
  writeFileSync(join(folder, CRATE), crate);
  return folder;
}

describe("a bundle", () => {
  it("opens as a folder and as a zip file, and tells which files are not those that were shared", async () => {
    const folder = bundle("plain");
    expect(await openBundle(folder)).toMatchObject({ folder, changed: [] });
    await packBundle(folder, join(place, "plain.zip"));
    const open = await openBundle(join(place, "plain.zip"));
    expect(readdirSync(open.folder).sort()).toEqual(["kitchen", "page.html", CRATE].sort());
    expect(open.changed).toEqual([]);
    open.close();
    expect(() => readdirSync(open.folder)).toThrow("ENOENT");
    writeFileSync(join(folder, "page.html"), "<p>Page</p>");
    expect((await openBundle(folder)).changed).toEqual(["page.html"]);
    rmSync(join(folder, "page.html"));
    await expect(openBundle(folder)).rejects.toThrow("page.html must be in the bundle");
  });

  it("has a manifest whose entities are all described, files with digest and size", () => {
    const folder = bundle("crate");
    const text = crateText({ folder, name: "A", description: "b", run: "2026", contact: null, basis, parameters: {} });
    const graph = JSON.parse(text)["@graph"] as Record<string, unknown>[];
    const ids = new Set(graph.map((entity) => entity["@id"]));
    for (const [, id] of text.matchAll(/"@id": "([^"]*)"/g))
      expect(ids.has(id) || id.startsWith("https://w3id.org/"), id).toBe(true);
    const file = graph.find((entity) => entity["@id"] === "kitchen/trials/Woche%201%20%3Cb%3E%23%3F.csv");
    expect(file).toMatchObject({ "@type": "File", encodingFormat: "text/csv", contentSize: "6" });
    expect(file?.sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each(["../evil.csv", "a/../../evil.csv", "/etc/evil", "C:evil", "a\\..\\evil", "a//b"])(
    "is refused with a name that leads out of it: %s",
    async (name) => {
      const path = join(place, "evil.zip");
      writeFileSync(path, zipSync({ [name]: strToU8("x") }));
      await expect(openBundle(path)).rejects.toThrow("a name in a bundle must not lead out of it");
      expect(readdirSync(place).filter((one) => one.startsWith("evil"))).toEqual(["evil.zip"]);
    },
  );

  it("is refused when it unpacks to more than it may, holds links, or lists files outside", async () => {
    const bomb = join(place, "bomb.zip");
    writeFileSync(
      bomb,
      zipSync(Object.fromEntries(Array.from({ length: 5001 }, (_, at) => [`${at}.csv`, strToU8("")]))),
    );
    await expect(openBundle(bomb)).rejects.toThrow("a bundle must hold at most");
    const linked = bundle("linked");
    symlinkSync("/etc/passwd", join(linked, "kitchen", "pans.csv"));
    await expect(openBundle(linked)).rejects.toThrow("a bundle must hold no links, got kitchen/pans.csv");
    const outside = bundle("outside");
    writeFileSync(
      join(outside, CRATE),
      JSON.stringify({ "@graph": [{ "@id": "../x", "@type": "File", sha256: "0" }] }),
    );
    await expect(openBundle(outside)).rejects.toThrow("a file must lie in the bundle");
    await expect(openBundle(place)).rejects.toThrow(`a bundle must hold ${CRATE}`);
  });
});
