import type { IncomingMessage } from "node:http";
import { jsonBody } from "./body";
import { type Contents, NOTEBOOK_LIMIT } from "./contents";
import { HttpError } from "./http-error";
import type { Kernels } from "./kernels";
import { KERNEL_NAME, kernelspec } from "./kernelspec";
import type { Sessions } from "./sessions";

/** The parts of a server that requests reach. */
export interface Parts {
  readonly contents: Contents;
  readonly kernels: Kernels;
  readonly sessions: Sessions;
}

/** An answer: a status and JSON, or nothing. */
export interface Answer {
  readonly status: number;
  readonly json?: unknown;
  readonly location?: string;
}

/** Bytes: what was opened can be saved, also when it has grown somewhat; with many figures it has a few million. */
const BODY_LIMIT: number = NOTEBOOK_LIMIT + 16_000_000;

type Handler = (parts: Parts, request: IncomingMessage, match: readonly string[]) => Promise<Answer>;

const ok = (json: unknown): Answer => ({ status: 200, json });
const created = (json: unknown): Answer => ({ status: 201, json });
const done: Answer = { status: 204 };

/**
 * The Jupyter Server REST API as far as notebooks need it:
 * https://jupyter-server.readthedocs.io/en/latest/developers/rest-api.html
 */
const ROUTES: readonly (readonly [method: string, path: RegExp, handler: Handler])[] = [
  ["GET", /^\/api\/?$/, async () => ok({ version: "2.0.0" })],
  ["GET", /^\/api\/status$/, async ({ kernels }) => ok(status(kernels))],
  ["GET", /^\/api\/me$/, async () => ok({ identity: IDENTITY, permissions: {} })],
  [
    "GET",
    /^\/api\/kernelspecs$/,
    async () => ok({ default: KERNEL_NAME, kernelspecs: { [KERNEL_NAME]: specModel() } }),
  ],
  [
    "GET",
    /^\/api\/kernelspecs\/([\w.-]+)$/,
    async (_, __, [name]) => {
      if (name !== KERNEL_NAME) throw new HttpError(404, `no such kernel: ${name}`);
      return ok(specModel());
    },
  ],
  ["GET", /^\/api\/kernels$/, async ({ kernels }) => ok(kernels.list())],
  ["GET", /^\/api\/kernels\/([\w-]+)$/, async ({ kernels }, _, [id]) => ok(kernels.model(id))],
  ["DELETE", /^\/api\/kernels\/([\w-]+)$/, async ({ kernels }, _, [id]) => kernels.stop(id).then(() => done)],
  [
    "POST",
    /^\/api\/kernels\/([\w-]+)\/interrupt$/,
    async ({ kernels }, _, [id]) => {
      kernels.interrupt(id);
      return done;
    },
  ],
  [
    "POST",
    /^\/api\/kernels\/([\w-]+)\/restart$/,
    async ({ kernels }, _, [id]) => {
      await kernels.restart(id);
      return ok(kernels.model(id));
    },
  ],
  ["GET", /^\/api\/sessions$/, async ({ sessions }) => ok(sessions.list())],
  [
    "POST",
    /^\/api\/sessions$/,
    async ({ sessions }, request) => {
      const { path } = await jsonBody(request, 10_000);
      if (typeof path !== "string" || path === "") throw new HttpError(400, "a session must have a path");
      return created(await sessions.open(path));
    },
  ],
  ["GET", /^\/api\/sessions\/([\w-]+)$/, async ({ sessions }, _, [id]) => ok(sessions.model(id))],
  [
    "PATCH",
    /^\/api\/sessions\/([\w-]+)$/,
    async ({ sessions }, request, [id]) => ok(await sessions.change(id, await jsonBody(request, 10_000))),
  ],
  ["DELETE", /^\/api\/sessions\/([\w-]+)$/, async ({ sessions }, _, [id]) => sessions.close(id).then(() => done)],
  [
    "GET",
    /^\/api\/contents(.*)\/checkpoints$/,
    async ({ contents }, _, [path]) => ok(await contents.checkpoints(path)),
  ],
  [
    "POST",
    /^\/api\/contents(.*)\/checkpoints$/,
    async ({ contents }, _, [path]) => created(await contents.checkpoint(path)),
  ],
  [
    "POST",
    /^\/api\/contents(.*)\/checkpoints\/(\w+)$/,
    async ({ contents }, _, [path, id]) => contents.restore(path, id).then(() => done),
  ],
  [
    "GET",
    /^\/api\/contents(.*)$/,
    async ({ contents }, request, [path]) => {
      const { searchParams } = new URL(request.url ?? "/", "http://host");
      return ok(await contents.get(path, searchParams.get("content") !== "0"));
    },
  ],
  [
    "POST",
    /^\/api\/contents(.*)$/,
    async ({ contents }, request, [path]) => {
      const entry = await contents.create(path, await jsonBody(request, 10_000));
      return {
        ...created(entry),
        location: `/api/contents/${entry.path.split("/").map(encodeURIComponent).join("/")}`,
      };
    },
  ],
  [
    "PUT",
    /^\/api\/contents(.*)$/,
    async ({ contents }, request, [path]) => ok(await contents.save(path, await jsonBody(request, BODY_LIMIT))),
  ],
  [
    "PATCH",
    /^\/api\/contents(.*)$/,
    async ({ contents }, request, [path]) => {
      const to = (await jsonBody(request, 10_000)).path;
      if (typeof to !== "string" || to === "") throw new HttpError(400, "a new path must be given");
      return ok(await contents.move(path, to));
    },
  ],
  ["DELETE", /^\/api\/contents(.*)$/, async ({ contents }, _, [path]) => contents.remove(path).then(() => done)],
];

/** Answers one request to the API; throws an `HttpError` when it cannot. */
export async function answer(parts: Parts, request: IncomingMessage, path: string): Promise<Answer> {
  let known = false;
  for (const [method, pattern, handler] of ROUTES) {
    const match = pattern.exec(path);
    if (!match) continue;
    known = true;
    if (method === request.method) return handler(parts, request, match.slice(1));
  }
  throw known ? new HttpError(405, `${request.method} is not allowed here`) : new HttpError(404, "no such address");
}

const IDENTITY = { username: "cook", name: "cook", display_name: "cook", initials: "c", avatar_url: null, color: null };

function status(kernels: Kernels): Record<string, unknown> {
  const running = kernels.list();
  return { kernels: running.length, connections: running.reduce((sum, { connections }) => sum + connections, 0) };
}

function specModel(): Record<string, unknown> {
  return { name: KERNEL_NAME, spec: kernelspec(), resources: {} };
}
