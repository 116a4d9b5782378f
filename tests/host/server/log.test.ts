import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { youngKitchen } from "../kitchen/young-kitchen";
import { projectWith } from "./project";

const folder = youngKitchen(2);
const log = join(folder, "trials", "first-log.csv");
let server: NotebookServer;
beforeAll(async () => {
  const report = join(folder, "out", "report.html");
  server = await serveNotebooks({
    folder: projectWith().notebooks,
    kitchen: { name: "<Corner> kitchen", folder, report, project: resolve(".") },
  });
});
afterAll(() => server?.close());

const JSON_TYPE = { "Content-Type": "application/json" };
const owner = (): Record<string, string> => ({ Authorization: `token ${server.token}`, ...JSON_TYPE });
const post = async (
  path: string,
  body: unknown,
  headers: Record<string, string> = owner(),
): Promise<{ status: number; json: Record<string, unknown> }> => {
  const sent = typeof body === "string" ? body : JSON.stringify(body);
  const answer = await fetch(server.origin + path, { method: "POST", headers, body: sent });
  return { status: answer.status, json: await answer.json() };
};
const text = (): string => readFileSync(log, "utf8");
const cells = { trial: "A-3", variant: "first-variant", thickness_mm: "9.1", time_min: "10.25" };

describe("the trial form's requests", () => {
  it("check without writing, log once, and take back", async () => {
    const before = text();
    const checked = await post("/log/check", { cells: { ...cells, thickness_mm: "nine" } });
    expect(checked).toMatchObject({
      status: 200,
      json: { problems: [expect.stringContaining("column thickness_mm")] },
    });
    expect((await post("/log/check", { cells })).json).toMatchObject({ problems: [], missing: [], coldCore: null });
    expect(text()).toBe(before);

    const logged = await post("/log/trial", { cells, by: "AB" });
    expect(logged).toMatchObject({
      status: 200,
      json: { kind: "logged", trialId: "A-3", file: "trials/first-log.csv" },
    });
    const once = text();
    expect(once).toContain("A-3");
    expect((await post("/log/trial", { cells })).json).toMatchObject({ kind: "already logged", trialId: "A-3" });
    const other = await post("/log/trial", { cells: { ...cells, time_min: "11" } });
    expect([other.status, other.json.message]).toEqual([409, expect.stringContaining("no other trial has")]);
    expect(text()).toBe(once);

    expect((await post("/log/undo", { file: "trials/first-log.csv", trialId: "A-2" })).status).toBe(409);
    expect(text()).toBe(once);
    expect(await post("/log/undo", { file: "trials/first-log.csv", trialId: "A-3" })).toMatchObject({ status: 200 });
    expect(text()).not.toContain("A-3");
  }, 60_000);

  it("log a trial once when it is sent many times at once", async () => {
    const body = { cells: { ...cells, trial: "A-4" } };
    const answers = await Promise.all(Array.from({ length: 4 }, () => post("/log/trial", body)));
    expect(answers.map(({ json }) => json.kind).sort()).toEqual([
      "already logged",
      "already logged",
      "already logged",
      "logged",
    ]);
    expect(text().match(/^A-4,/gm)).toHaveLength(1);
  }, 60_000);

  it.each([
    ["/log/check", {}, 400, "cells must be"],
    ["/log/check", { cells: [] }, 400, "cells must be"],
    ["/log/check", { cells: { time_min: 10 } }, 400, "cells must be"],
    ["/log/trial", { cells: null }, 400, "cells must be"],
    ["/log/trial", { cells: {}, by: 7 }, 400, "by must be"],
    ["/log/trial", { cells: {}, by: "x".repeat(201) }, 400, "by must be"],
    ["/log/undo", { file: "trials/first-log.csv" }, 400, "trialId must be"],
    ["/log/undo", { file: "../../secret.csv", trialId: "A-1" }, 409, "must be a file of the folder trials"],
    ["/log/undo", { file: "/etc/passwd", trialId: "A-1" }, 409, "must be a file of the folder trials"],
    ["/log/check", "{", 400, "JSON object"],
    ["/log/check", "[]", 400, "JSON object"],
    ["/log/else", {}, 404, "no such address"],
    ["/log/constructor", {}, 404, "no such address"],
  ])("%s refuses %j", async (path, body, status, words) => {
    const before = text();
    const refused = await post(path, body);
    expect([refused.status, refused.json.message]).toEqual([status, expect.stringContaining(words)]);
    expect(text()).toBe(before);
  });

  it("refuse what is too long, too much, or of another type", async () => {
    const long = await post("/log/check", { cells: { note: "x".repeat(70_000) } });
    expect([long.status, long.json.message]).toEqual([413, "the body must be at most 66 kB"]);
    const many = Object.fromEntries(Array.from({ length: 81 }, (_, at) => [`c${at}`, ""]));
    expect((await post("/log/check", { cells: many })).status).toBe(400);
    const plain = { ...owner(), "Content-Type": "text/plain" };
    expect((await post("/log/trial", { cells }, plain)).status).toBe(415);
    const got = await fetch(`${server.origin}/log/trial`, { headers: owner() });
    expect(got.status).toBe(405);
  });

  it("answer nobody without the token, and no page of another origin", async () => {
    const before = text();
    for (const path of ["/log/check", "/log/trial", "/log/undo"]) {
      expect((await post(path, { cells }, JSON_TYPE)).status, path).toBe(403);
      const foreign = { ...owner(), Origin: "http://elsewhere.example" };
      expect((await post(path, { cells }, foreign)).status, path).toBe(403);
    }
    for (const path of ["/log", "/kitchen/form"]) expect((await fetch(server.origin + path)).status, path).toBe(403);
    expect(text()).toBe(before);
  });

  it("take hostile text as text", async () => {
    for (const hostile of ["__proto__", "constructor", "time_min\u0000"]) {
      const { status, json } = await post("/log/check", `{"cells":{"${hostile.replace("\u0000", "\\u0000")}":"x"}}`);
      expect([status, json.problems ?? json.message], hostile).toEqual([200, [expect.stringContaining("a column")]]);
    }
    const note = "'; rm -rf / #\n$(touch x) <script>";
    const logged = await post("/log/trial", { cells: { ...cells, trial: "A-5", note } });
    expect(logged.status).toBe(200);
    expect(text()).toContain("$(touch x) <script>");
  }, 60_000);
});

it("the form's page has no script but the server's own, and names the kitchen as text", async () => {
  const page = await fetch(`${server.origin}/log`, { headers: owner() });
  const html = await page.text();
  expect(html).toContain("&lt;Corner&gt; kitchen");
  expect(
    html.match(/<script(?! id="jupyter-config-data" type="application\/json"| type="module" src="\/assets\/)/),
  ).toBe(null);
  expect(page.headers.get("content-security-policy")).toContain("script-src 'self'");
  expect(await (await fetch(`${server.origin}/`, { headers: owner() })).text()).toContain('href="/log"');
});

it("there is no form where no kitchen is open", async () => {
  const bare = await serveNotebooks({ folder: projectWith().notebooks });
  const headers = { Authorization: `token ${bare.token}`, ...JSON_TYPE };
  expect((await fetch(`${bare.origin}/log`, { headers })).status).toBe(404);
  const asked = await fetch(`${bare.origin}/log/check`, { method: "POST", headers, body: "{}" });
  expect([404, 405]).toContain(asked.status);
  await bare.close();
});
