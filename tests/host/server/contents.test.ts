import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
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

  it("keeps one checkpoint of a notebook and brings it back", async () => {
    const path = "/api/contents/every-output.ipynb";
    const before = readFileSync(join(notebooks, "every-output.ipynb"), "utf8");
    expect((await page.ask("GET", `${path}/checkpoints`)).json).toEqual([]);
    expect((await page.ask("POST", `${path}/checkpoints`)).json.id).toBe("checkpoint");
    const { json } = await page.ask("GET", `${path}?content=1`);
    json.content.cells.pop();
    await page.ask("PUT", path, { type: "notebook", content: json.content });
    expect(readFileSync(join(notebooks, "every-output.ipynb"), "utf8")).not.toBe(before);
    expect((await page.ask("POST", `${path}/checkpoints/checkpoint`)).status).toBe(204);
    expect(readFileSync(join(notebooks, "every-output.ipynb"), "utf8")).toBe(before);
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
