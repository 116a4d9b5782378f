import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type Page, pageOf } from "./page";
import { projectWith } from "./project";

const { folder, notebooks } = projectWith("every-output", "fails");
let server: NotebookServer;
let page: Page;
beforeAll(async () => {
  server = await serveNotebooks({ folder: notebooks });
  page = pageOf(server);
});
afterAll(() => server.close());

describe("the contents API", () => {
  it("lists notebooks and folders, and nothing else", async () => {
    writeFileSync(join(notebooks, "notes.txt"), "private");
    const { json } = await page.ask("GET", "/api/contents/?content=1");
    expect(json.content.map(({ path }: { path: string }) => path)).toEqual(["every-output.ipynb", "fails.ipynb"]);
    expect((await page.ask("GET", "/api/contents/notes.txt")).status).toBe(404);
  });

  it("reads, saves in nbformat's form, and gives a hash that tells one state from another", async () => {
    const { json: read } = await page.ask("GET", "/api/contents/fails.ipynb?content=1");
    expect(read).toMatchObject({ type: "notebook", format: "json", name: "fails.ipynb", hash_algorithm: "sha256" });
    read.content.cells[0].source = "# Changed\n";
    read.content.cells[1].metadata = { trusted: true };
    const { status, json: saved } = await page.ask("PUT", "/api/contents/fails.ipynb", {
      type: "notebook",
      content: read.content,
    });
    expect(status).toBe(200);
    expect(saved.content).toBeNull();
    expect(saved.hash).not.toBe(read.hash);
    const stored = JSON.parse(readFileSync(join(notebooks, "fails.ipynb"), "utf8"));
    expect(stored.cells[0].source).toEqual(["# Changed\n"]);
    expect(stored.cells[1].metadata).toEqual({});
    expect((await page.ask("GET", "/api/contents/fails.ipynb?content=0")).json.hash).toBe(saved.hash);
  });

  it("makes, copies, renames and removes; what is removed can be found in the trash folder", async () => {
    const made = await page.ask("POST", "/api/contents/", { type: "notebook" });
    expect([made.status, made.json.path]).toEqual([201, "untitled.ipynb"]);
    expect((await page.ask("POST", "/api/contents/", { type: "notebook" })).json.path).toBe("untitled-1.ipynb");
    expect((await page.ask("POST", "/api/contents/", { copy_from: "fails.ipynb" })).json.path).toBe("fails-copy.ipynb");
    expect((await page.ask("POST", "/api/contents/", { type: "directory" })).json.path).toBe("folder");
    expect((await page.ask("PATCH", "/api/contents/untitled.ipynb", { path: "folder/mine.ipynb" })).json.path).toBe(
      "folder/mine.ipynb",
    );
    const taken = await page.ask("PATCH", "/api/contents/untitled-1.ipynb", { path: "fails.ipynb" });
    expect([taken.status, taken.json.message]).toEqual([409, "fails.ipynb exists already"]);
    expect((await page.ask("PATCH", "/api/contents/untitled-1.ipynb", { path: "x.txt" })).status).toBe(400);
    expect((await page.ask("DELETE", "/api/contents/fails-copy.ipynb")).status).toBe(204);
    expect(existsSync(join(notebooks, "fails-copy.ipynb"))).toBe(false);
    expect(readdirSync(join(folder, "out", "trash")).join()).toMatch(/-fails-copy\.ipynb$/);
    expect((await page.ask("DELETE", "/api/contents/")).status).toBe(404);
  });

  it("keeps states of a notebook by time as it is saved, and brings each back without losing what stands", async () => {
    const path = "/api/contents/every-output.ipynb";
    const file = join(notebooks, "every-output.ipynb");
    const read = (): string => readFileSync(file, "utf8");
    const states = async (): Promise<string[]> =>
      (await page.ask("GET", `${path}/checkpoints`)).json.map(({ id }: { id: string }) => id);
    const age = (minutes: number): void => {
      const then = new Date(Date.now() - minutes * 60_000);
      utimesSync(file, then, then);
    };
    const change = async (): Promise<void> => {
      const { json } = await page.ask("GET", `${path}?content=1`);
      json.content.cells.pop();
      expect((await page.ask("PUT", path, { type: "notebook", content: json.content })).status).toBe(200);
    };
    const first = read();
    expect(await states()).toEqual([]);
    age(30);
    await change();
    const second = read();
    const [opened] = await states();
    await change();
    // the state of half an hour ago is old enough for another to be kept, that of a moment ago is not
    expect(await states()).toHaveLength(2);
    await change();
    expect(await states()).toHaveLength(2);
    const last = read();
    expect((await page.ask("POST", `${path}/checkpoints/${opened}`)).status).toBe(204);
    expect(read()).toBe(first);
    const [before, ...others] = await states();
    expect(others).toHaveLength(2);
    expect((await page.ask("POST", `${path}/checkpoints/${before}`)).status).toBe(204);
    expect(read()).toBe(last);
    expect((await page.ask("POST", `${path}/checkpoints/${others[0]}`)).status).toBe(204);
    expect(read()).toBe(second);
    const asked = (await page.ask("POST", `${path}/checkpoints`)).json.id;
    expect(await states()).toContain(asked);
    expect((await page.ask("POST", `${path}/checkpoints/20200101T000000000Z`)).status).toBe(404);
    writeFileSync(file, first);
  });

  it.each([
    ["PUT", "/api/contents/x.txt", { type: "file", content: "x" }, 400, "only notebooks can be saved"],
    [
      "PUT",
      "/api/contents/x.ipynb",
      { type: "notebook", content: { nbformat: 3 } },
      400,
      "must be a notebook of nbformat 4",
    ],
    ["PUT", "/api/contents/x.ipynb", { type: "notebook" }, 400, "must be a notebook"],
    ["POST", "/api/contents/", { type: "file" }, 400, "only notebooks and folders"],
    ["GET", "/api/contents/absent.ipynb", undefined, 404, "no such file"],
    ["GET", "/api/nothing", undefined, 404, "no such address"],
    ["PUT", "/api/kernels", {}, 405, "PUT is not allowed here"],
  ])("%s %s %j is answered %i", async (method, path, body, status, message) => {
    const answer = await page.ask(method, path, body);
    expect(answer.status).toBe(status);
    expect(answer.json.message).toContain(message);
    expect(existsSync(join(notebooks, "x.ipynb"))).toBe(false);
  });
});

const NOTEBOOK = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [] };
const cellOf = (source: string) => ({ id: "a", cell_type: "markdown", metadata: {}, source });
const notebookOf = (source: string) => ({ ...NOTEBOOK, cells: [cellOf(source)] });
const hashOf = (path: string): string =>
  createHash("sha256").update(readFileSync(path, "latin1"), "latin1").digest("hex");
const together = <T>(count: number, act: (at: number) => Promise<T>): Promise<T[]> =>
  Promise.all(Array.from({ length: count }, (_, at) => act(at)));
const put = (name: string, content: unknown): void => writeFileSync(join(notebooks, name), JSON.stringify(content));

describe("many requests in one instant", () => {
  it("20 new notebooks get 20 names, 20 copies too, and 20 folders", async () => {
    const before = readdirSync(notebooks).length;
    const asked = [{ type: "notebook" }, { copy_from: "every-output.ipynb" }, { type: "directory" }];
    for (const body of asked) {
      const answers = await together(20, () => page.ask("POST", "/api/contents/", body));
      expect(answers.map(({ status }) => status)).toEqual(Array(20).fill(201));
      expect(new Set(answers.map(({ json }) => json.path)).size).toBe(20);
    }
    expect(readdirSync(notebooks).length).toBe(before + 60);
  });

  it("of saves that carry the hash of what was read one is done, and the others hear that it changed", async () => {
    put("shared.ipynb", NOTEBOOK);
    const { json: read } = await page.ask("GET", "/api/contents/shared.ipynb?content=1&hash=1");
    const answers = await together(8, (at) =>
      page.ask("PUT", "/api/contents/shared.ipynb", {
        type: "notebook",
        content: notebookOf(`tab ${at}`),
        hash: read.hash,
      }),
    );
    const saved = answers.filter(({ status }) => status === 200);
    expect(saved).toHaveLength(1);
    const refused = answers.filter(({ status }) => status === 409);
    expect(refused).toHaveLength(7);
    expect(refused[0].json.message).toBe("shared.ipynb was changed since it was read here; nothing was saved");
    const winner = answers.indexOf(saved[0]);
    expect(readFileSync(join(notebooks, "shared.ipynb"), "utf8")).toContain(`tab ${winner}`);
    expect(saved[0].json.path).toBe("shared.ipynb");
    expect(saved[0].json.hash).toBe(hashOf(join(notebooks, "shared.ipynb")));
    expect((await page.ask("GET", "/api/contents/shared.ipynb?content=0")).json.hash).toBe(saved[0].json.hash);
  });

  it("a save with a hash does not bring back what was removed, nor one that read nothing go over what stands there", async () => {
    put("gone.ipynb", NOTEBOOK);
    const { json: read } = await page.ask("GET", "/api/contents/gone.ipynb?content=0");
    await page.ask("DELETE", "/api/contents/gone.ipynb");
    const save = (hash: string | null) =>
      page.ask("PUT", "/api/contents/gone.ipynb", { type: "notebook", content: NOTEBOOK, hash });
    const late = await save(read.hash);
    expect([late.status, late.json.message]).toEqual([
      409,
      "gone.ipynb was removed since it was read here; nothing was saved",
    ]);
    expect(existsSync(join(notebooks, "gone.ipynb"))).toBe(false);
    const answers = await together(4, () => save(null));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409]);
    const strange = await page.ask("PUT", "/api/contents/gone.ipynb", { type: "notebook", content: NOTEBOOK, hash: 5 });
    expect([strange.status, strange.json.message]).toEqual([
      400,
      "a hash must be text, or null where nothing was read",
    ]);
  });

  it("of renamings to one name one is done, and no notebook is lost", async () => {
    for (let at = 0; at < 8; at++) put(`from-${at}.ipynb`, notebookOf(`number ${at}`));
    const answers = await together(8, (at) =>
      page.ask("PATCH", `/api/contents/from-${at}.ipynb`, { path: "to.ipynb" }),
    );
    expect(answers.map(({ status }) => status).sort()).toEqual([200, ...Array(7).fill(409)]);
    const winner = answers.findIndex(({ status }) => status === 200);
    expect(readFileSync(join(notebooks, "to.ipynb"), "utf8")).toContain(`number ${winner}`);
    for (let at = 0; at < 8; at++) expect(existsSync(join(notebooks, `from-${at}.ipynb`))).toBe(at !== winner);
  });

  it("a renaming and saves under the new name leave both contents or say that one was refused", async () => {
    put("mover.ipynb", notebookOf("moved"));
    const [moved, saved] = await Promise.all([
      page.ask("PATCH", "/api/contents/mover.ipynb", { path: "met.ipynb" }),
      page.ask("PUT", "/api/contents/met.ipynb", { type: "notebook", content: notebookOf("saved"), hash: null }),
    ]);
    expect([moved.status, saved.status].sort()).toEqual([200, 409]);
    const [kept] = [moved.status === 200 ? "moved" : "saved"];
    expect(readFileSync(join(notebooks, "met.ipynb"), "utf8")).toContain(kept);
  });

  it("notebooks of one name that are removed together are all in the trash", async () => {
    for (let at = 0; at < 12; at++) {
      mkdirSync(join(notebooks, `room-${at}`));
      put(`room-${at}/same.ipynb`, notebookOf(`number ${at}`));
    }
    await together(12, (at) => page.ask("DELETE", `/api/contents/room-${at}/same.ipynb`));
    const trash = join(folder, "out", "trash");
    const kept = readdirSync(trash).filter((name) => name.includes("same"));
    expect(kept.every((name) => name.endsWith("-same.ipynb"))).toBe(true);
    const sources = kept.map((name) => JSON.parse(readFileSync(join(trash, name), "utf8")).cells[0].source);
    expect(sources.sort()).toEqual(Array.from({ length: 12 }, (_, at) => `number ${at}`).sort());
    for (let at = 0; at < 12; at++) await page.ask("DELETE", `/api/contents/room-${at}`);
  });
});

describe("what goes wrong is said, and never with a stack", () => {
  const said: string[] = [];
  let other: NotebookServer;
  let ask: Page["ask"];
  beforeAll(async () => {
    other = await serveNotebooks({ folder: notebooks, say: (line) => said.push(line) });
    ask = pageOf(other).ask;
  });
  afterAll(() => other.close());
  beforeEach(() => said.splice(0));

  const code = (rest: object): object => ({
    ...NOTEBOOK,
    cells: [{ id: "a", cell_type: "code", metadata: {}, source: "", execution_count: null, outputs: [], ...rest }],
  });
  it.each([
    [{ ...NOTEBOOK, cells: [null] }, "cell 1 must be an object"],
    [{ ...NOTEBOOK, cells: {} }, "must be a notebook of nbformat 4"],
    [{ ...NOTEBOOK, metadata: "x" }, "must have an object as metadata"],
    [code({ source: 5 }), "cell 1 must have text or lines of text as source"],
    [code({ source: [1] }), "cell 1 must have text or lines of text as source"],
    [code({ source: undefined }), "cell 1 must have text or lines of text as source"],
    [code({ metadata: "x" }), "cell 1 must have an object as metadata"],
    [code({ outputs: "x" }), "cell 1 must have a list of outputs"],
    [code({ outputs: [null] }), "cell 1, output 1 must be an object"],
    [code({ outputs: [{ output_type: "stream", name: "stdout" }] }), "output 1 must have text or lines of text"],
    [code({ outputs: [{ output_type: "display_data", metadata: {} }] }), "output 1 must have an object as data"],
    [code({ outputs: [{ output_type: "error", ename: "E", evalue: "" }] }), "must have lines of text as traceback"],
  ])("malformed: %j", async (content, message) => {
    const saved = await ask("PUT", "/api/contents/malformed.ipynb", { type: "notebook", content });
    expect([saved.status, saved.json.message]).toEqual([400, expect.stringContaining(message)]);
    expect(existsSync(join(notebooks, "malformed.ipynb"))).toBe(false);
    put("malformed.ipynb", content);
    const read = await ask("GET", "/api/contents/malformed.ipynb");
    expect([read.status, read.json.message]).toEqual([400, expect.stringContaining(message)]);
    const start = await (
      await fetch(`${other.origin}/`, { headers: { Authorization: `token ${other.token}` } })
    ).text();
    expect(start).toContain("cannot be read");
    rmSync(join(notebooks, "malformed.ipynb"));
    expect(said).toEqual([]);
  });

  it("nested deeper than it can be written", async () => {
    const deep = `${"[".repeat(20_000)}${"]".repeat(20_000)}`;
    const text = JSON.stringify(code({ metadata: { deep: 0 } })).replace('"deep":0', `"deep":${deep}`);
    writeFileSync(join(notebooks, "deep.ipynb"), text);
    const read = await ask("GET", "/api/contents/deep.ipynb");
    expect([read.status, read.json.message]).toEqual([400, expect.stringContaining("must nest at most")]);
    rmSync(join(notebooks, "deep.ipynb"));
    const answer = await fetch(`${other.origin}/api/contents/deep.ipynb`, {
      method: "PUT",
      headers: { Authorization: `token ${other.token}` },
      body: `{"type":"notebook","content":${text}}`,
    });
    expect([answer.status, (await answer.json()).message]).toEqual([400, expect.stringContaining("must nest at most")]);
    expect(existsSync(join(notebooks, "deep.ipynb"))).toBe(false);
    expect(said).toEqual([]);
  });

  it.each([
    ["PATCH", "fails.ipynb", { path: "absent/fails.ipynb" }, 404, "no such folder: absent"],
    ["PATCH", "absent/x.ipynb", { path: "x.ipynb" }, 404, "no such f"],
    ["PATCH", "kept", { path: "kept/inside" }, 400, "kept"],
    ["POST", "absent", { type: "notebook" }, 404, "no such folder: absent"],
    ["POST", "absent", { type: "directory" }, 404, "no such folder: absent"],
    ["POST", "", { copy_from: 5 }, 400, "a path must be text"],
    ["POST", "", { copy_from: "kept" }, 404, "no such notebook: kept"],
    ["PATCH", "fails.ipynb", { path: ["x.ipynb"] }, 400, "a new path must be given"],
    ["PUT", "folder-named.ipynb", { type: "notebook", content: NOTEBOOK }, 409, "is a folder"],
    ["GET", "folder-named.ipynb/checkpoints", undefined, 404, "no such notebook"],
    ["POST", "folder-named.ipynb/checkpoints", undefined, 404, "no such notebook"],
    ["POST", "folder-named.ipynb/checkpoints/checkpoint", undefined, 404, "no such notebook"],
    ["PUT", `${"long".repeat(60)}.ipynb`, { type: "notebook", content: NOTEBOOK }, 404, "no such file"],
    ["GET", "pipe.ipynb", undefined, 404, "no such notebook"],
    ["POST", "pipe.ipynb/checkpoints", undefined, 404, "no such notebook"],
  ])("%s %s %j", async (method, path, body, status, message) => {
    mkdirSync(join(notebooks, "kept"), { recursive: true });
    mkdirSync(join(notebooks, "folder-named.ipynb"), { recursive: true });
    writeFileSync(join(notebooks, "folder-named.ipynb", "inside.txt"), "");
    if (!existsSync(join(notebooks, "pipe.ipynb"))) execFileSync("mkfifo", [join(notebooks, "pipe.ipynb")]);
    const answer = await ask(method, `/api/contents/${path}`, body);
    expect([answer.status, answer.json.message]).toEqual([status, expect.stringContaining(message)]);
    expect(said).toEqual([]);
    expect(existsSync(join(notebooks, "absent"))).toBe(false);
  });

  it("a notebook that is saved after its folder was taken away brings the folder back", async () => {
    const saved = await ask("PUT", "/api/contents/lost/again/work.ipynb", {
      type: "notebook",
      content: notebookOf("w"),
    });
    expect(saved.status).toBe(200);
    expect(readFileSync(join(notebooks, "lost", "again", "work.ipynb"), "utf8")).toContain('"w"');
    rmSync(join(notebooks, "lost"), { recursive: true });
  });

  it.skipIf(!existsSync("/dev/shm"))("a trash folder on another disk is no hindrance", async () => {
    const trash = mkdtempSync("/dev/shm/slabwright-test-");
    const far = await serveNotebooks({ folder: notebooks, trash, say: (line) => said.push(line) });
    put("far.ipynb", notebookOf("far"));
    mkdirSync(join(notebooks, "far-folder"));
    put("far-folder/inner.ipynb", notebookOf("inner"));
    for (const path of ["far.ipynb", "far-folder"]) {
      expect((await pageOf(far).ask("DELETE", `/api/contents/${path}`)).status).toBe(204);
      expect(existsSync(join(notebooks, path))).toBe(false);
    }
    const names = readdirSync(trash).sort((one, other) => one.length - other.length);
    expect(readFileSync(join(trash, names[0]), "utf8")).toContain("far");
    expect(readFileSync(join(trash, names[1], "inner.ipynb"), "utf8")).toContain("inner");
    await far.close();
    rmSync(trash, { recursive: true });
    expect(said).toEqual([]);
  });
});

describe("bytes, names and drafts", () => {
  it("reads a notebook that begins with a byte order mark, and saves it without", async () => {
    writeFileSync(join(notebooks, "marked.ipynb"), `\uFEFF${JSON.stringify(notebookOf("# Béchamel"))}`);
    const { status, json } = await page.ask("GET", "/api/contents/marked.ipynb");
    expect([status, json.content.cells[0].source]).toEqual([200, "# Béchamel"]);
    expect(json.hash).toBe(hashOf(join(notebooks, "marked.ipynb")));
    const saved = await page.ask("PUT", "/api/contents/marked.ipynb", {
      type: "notebook",
      content: json.content,
      hash: json.hash,
    });
    expect(saved.status).toBe(200);
    expect(readFileSync(join(notebooks, "marked.ipynb"), "utf8")).toMatch(/^\{/);
  });

  it("does not open what is not UTF-8, so that no save can change it", async () => {
    const bytes = Buffer.concat([
      Buffer.from(JSON.stringify(notebookOf("caf!"))).map((byte) => (byte === 0x21 ? 0xe9 : byte)),
    ] as never);
    writeFileSync(join(notebooks, "latin.ipynb"), bytes as never);
    const { status, json } = await page.ask("GET", "/api/contents/latin.ipynb");
    expect([status, json.message]).toEqual([400, expect.stringContaining("latin.ipynb must be UTF-8 text")]);
    const copied = await page.ask("POST", "/api/contents/", { copy_from: "latin.ipynb" });
    expect(copied.status).toBe(201);
    expect(hashOf(join(notebooks, copied.json.path))).toBe(hashOf(join(notebooks, "latin.ipynb")));
    const { id } = (await page.ask("POST", "/api/contents/latin.ipynb/checkpoints")).json;
    rmSync(join(notebooks, "latin.ipynb"));
    put("latin.ipynb", NOTEBOOK);
    await page.ask("POST", `/api/contents/latin.ipynb/checkpoints/${id}`);
    expect(hashOf(join(notebooks, "latin.ipynb"))).toBe(hashOf(join(notebooks, copied.json.path)));
  });

  it.skipIf(process.platform === "win32")("serves names with %, ? and the like from list to save", async () => {
    const names = [
      "50% rye.ipynb",
      "100%25.ipynb",
      "how thick?.ipynb",
      'a "b" <c>.ipynb',
      "a:b|c*.ipynb",
      "#1 & 2+3.ipynb",
    ];
    for (const name of names) {
      put(name, notebookOf(`# Title of ${name.replace(/\W/g, "")}`));
      const at = `/api/contents/${encodeURIComponent(name)}`;
      const { status, json } = await page.ask("GET", at);
      expect([status, json.name], name).toEqual([200, name]);
      const saved = await page.ask("PUT", at, { type: "notebook", content: json.content, hash: json.hash });
      expect([saved.status, saved.json.path], name).toEqual([200, name]);
      const opened = await fetch(`${server.origin}/open/${encodeURIComponent(name)}`, {
        headers: { Authorization: `token ${server.token}` },
      });
      expect(opened.status, name).toBe(200);
    }
    const start = await (
      await fetch(`${server.origin}/`, { headers: { Authorization: `token ${server.token}` } })
    ).text();
    for (const name of names) {
      expect(start, name).toContain(`Title of ${name.replace(/\W/g, "")}`);
      expect(start, name).toContain(`href="/open/${encodeURIComponent(name)}"`);
    }
    expect(
      (await page.ask("PATCH", `/api/contents/${encodeURIComponent(names[0])}`, { path: "7% salt?.ipynb" })).status,
    ).toBe(200);
    const copy = await fetch(`${server.origin}/api/contents/`, {
      method: "POST",
      headers: { Authorization: `token ${server.token}` },
      body: JSON.stringify({ copy_from: "7% salt?.ipynb" }),
    });
    expect(copy.headers.get("location")).toBe("/api/contents/7%25%20salt%3F-copy.ipynb");
    for (const name of [...names.slice(1), "7% salt?.ipynb", "7% salt?-copy.ipynb"]) rmSync(join(notebooks, name));
  });

  it("saves what it opens: a notebook of 50 MB", async () => {
    const row = "x".repeat(999);
    const content = {
      ...NOTEBOOK,
      cells: [
        {
          id: "a",
          cell_type: "code",
          metadata: {},
          source: "",
          execution_count: null,
          outputs: [{ output_type: "stream", name: "stdout", text: Array(50_000).fill(`${row}\n`) }],
        },
      ],
    };
    put("large.ipynb", content);
    const { status, json } = await page.ask("GET", "/api/contents/large.ipynb");
    expect(status).toBe(200);
    const saved = await page.ask("PUT", "/api/contents/large.ipynb", {
      type: "notebook",
      format: "json",
      path: "large.ipynb",
      content: json.content,
      hash: json.hash,
    });
    expect(saved.status).toBe(200);
    expect((await page.ask("GET", "/api/contents/large.ipynb?content=0")).json.size).toBeGreaterThan(50_000_000);
    content.cells[0].outputs[0].text = Array(70_000).fill(`${row}\n`);
    put("large.ipynb", content);
    const refused = await page.ask("GET", "/api/contents/large.ipynb");
    expect([refused.status, refused.json.message]).toEqual([413, expect.stringContaining("at most 64 MB")]);
    expect((await page.ask("GET", "/api/contents/large.ipynb?content=0")).status).toBe(200);
    rmSync(join(notebooks, "large.ipynb"));
  }, 60_000);

  it("a server that starts sweeps up what killed saves have left, and nothing else", async () => {
    const old = new Date(Date.now() - 3 * 86_400_000);
    const inner = join(notebooks, "swept", ".ipynb_checkpoints");
    mkdirSync(inner, { recursive: true });
    const drafts = [join(notebooks, ".a.ipynb.0123456789ab.part"), join(inner, ".b.ipynb.0123456789ab.part")];
    const kept = [join(notebooks, "c.part"), join(notebooks, ".d.part"), join(notebooks, ".e.ipynb.ba9876543210.part")];
    for (const path of [...drafts, ...kept]) writeFileSync(path, "half");
    for (const path of [...drafts, ...kept.slice(0, 2)]) utimesSync(path, old, old);
    await (await serveNotebooks({ folder: notebooks })).close();
    expect(drafts.filter(existsSync)).toEqual([]);
    expect(kept.filter(existsSync)).toEqual(kept);
    rmSync(join(notebooks, "swept"), { recursive: true });
  });

  it("a folder of checkpoints that leads out is not followed", async () => {
    const outside = mkdtempSync(join(folder, "outside-"));
    mkdirSync(join(notebooks, "odd"));
    put("odd/a.ipynb", notebookOf("mine"));
    writeFileSync(join(outside, "a-checkpoint.ipynb"), "secret");
    symlinkSync(outside, join(notebooks, "odd", ".ipynb_checkpoints"));
    const path = "/api/contents/odd/a.ipynb/checkpoints";
    expect((await page.ask("GET", path)).status).toBe(404);
    expect((await page.ask("POST", path)).status).toBe(404);
    expect((await page.ask("POST", `${path}/checkpoint`)).status).toBe(404);
    expect(readFileSync(join(outside, "a-checkpoint.ipynb"), "utf8")).toBe("secret");
    expect(readFileSync(join(notebooks, "odd", "a.ipynb"), "utf8")).toContain("mine");
    rmSync(join(notebooks, "odd"), { recursive: true });
  });
});
