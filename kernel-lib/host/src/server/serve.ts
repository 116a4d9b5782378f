import { existsSync } from "node:fs";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import { dirname, join } from "node:path";
import { kitchenShelf, shelfPath } from "../kitchen/kitchen-shelf";
import { type KitchenPlace, openKitchen } from "../kitchen/open-kitchen";
import { sweepDrafts } from "../notebook/sweep-drafts";
import { answer, type Parts } from "./api";
import { assets } from "./assets";
import { jsonBody } from "./body";
import { confine } from "./confine";
import { type Contents, contents } from "./contents";
import { guard } from "./guard";
import { HttpError } from "./http-error";
import { kernels } from "./kernels";
import { logAnswer, logPage } from "./log";
import { newcomers } from "./newcomers";
import { watchedFiles } from "./noted-reads";
import { pageShell } from "./page-shell";
import { rateLimit } from "./rate";
import { REFERENCE_POLICY, reference } from "./reference";
import { sessions } from "./sessions";
import { refuse, sockets } from "./sockets";
import { DEEPEST, startPage } from "./start-page";

/** What `serveNotebooks` needs to know. */
export interface ServeOptions {
  /** the folder of notebooks; nothing outside it is read or written */
  readonly folder: string;
  /** the kitchen that the kernels load, which the start page tells of; left out, it tells of none */
  readonly kitchen?: KitchenPlace;
  /** where removed notebooks go; `trash` beside the folder's parent's `out` */
  readonly trash?: string;
  /** where `npm run reference` writes; `reference` in the folder's parent's `out` */
  readonly reference?: string;
  /** 0 for any free port */
  readonly port?: number;
  /** added to every kernel's environment */
  readonly environment?: Readonly<Record<string, string>>;
  /** a kernel that no page uses ends after this long, min; 120 */
  readonly idleLimitMin?: number;
  /** news for the terminal */
  readonly say?: (line: string) => void;
}

/** A running server. */
export interface NotebookServer {
  readonly port: number;
  /** `http://127.0.0.1:PORT` */
  readonly origin: string;
  readonly token: string;
  /** the address that opens the start page; holds the token */
  readonly address: string;
  /** stops every kernel, then the server */
  readonly close: () => Promise<void>;
}

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join("; ");

/**
 * A report's own policy stands in the page and lets its own scripts run. A file may have been put there by others, so it is
 * shown as of an origin of its own, which can ask this server for nothing.
 */
const REPORT_POLICY = [
  "sandbox allow-scripts allow-popups",
  "default-src 'none'",
  "script-src 'unsafe-inline' 'unsafe-eval'",
  "style-src 'unsafe-inline'",
  "img-src data: blob:",
  "font-src data:",
  "frame-ancestors 'none'",
].join("; ");

/**
 * Serves a folder of notebooks to this machine's own browser: pages, the Jupyter Server REST API and WebSockets over
 * the tslab kernel. Only the loopback interface is listened on, and only whoever holds the token is answered.
 */
export async function serveNotebooks(options: ServeOptions): Promise<NotebookServer> {
  const say = options.say ?? (() => {});
  let port = 0;
  const guarded = guard(() => port);
  const arrivals = newcomers();
  const limit = rateLimit(3000, 10_000);
  const files = assets();
  const kitchen = options.kitchen ? openKitchen(options.kitchen) : null;
  const watched = options.kitchen
    ? watchedFiles({ kitchen: options.kitchen.folder, project: options.kitchen.project })
    : null;
  const trash = options.trash ?? join(options.folder, "..", "out", "trash");
  const pages = reference(options.reference ?? join(options.folder, "..", "out", "reference"));
  const shelf = options.kitchen?.notebooks ?? null;
  const parts: Parts = {
    contents: allContents(options, trash),
    kernels: kernels({
      environment: options.environment ?? {},
      notes: watched?.notes,
      idleLimitMin: options.idleLimitMin,
      say,
      onGone: (id) => parts.sessions.drop(id),
    }),
    sessions: sessions(folderOf, () => parts.kernels),
  };
  /** A kernel works in its notebook's folder; for a notebook of the kitchen in the project's, where packages are found. */
  async function folderOf(path: string): Promise<string> {
    const within = shelf === null ? null : shelfPath(path);
    if (within === null || shelf === null) return dirname(await confine(options.folder, path));
    if (!existsSync(shelf)) throw new HttpError(404, `no such folder: ${path}`);
    await confine(shelf, within);
    return options.folder;
  }
  const channels = sockets(parts.kernels);

  const respond = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    if (request.url === "/favicon.ico") return send(response, 204, "", "");
    const entering = guarded.bringsToken(request);
    if (!entering) guarded.check(request);
    // only what the owner asks for counts, so that nobody else can use the limit up
    arrivals.admit(request.socket);
    limit();
    if (entering) return enter(response, guarded.cookie);
    const path = pathOf(request);
    if (path.startsWith("/api")) {
      const { status, json, location } = await answer(parts, request, path);
      if (location) response.setHeader("Location", location);
      return send(response, status, "application/json", json === undefined ? "" : JSON.stringify(json));
    }
    if (path.startsWith("/log/") && kitchen) {
      return send(response, 200, "application/json", JSON.stringify(await logAnswer(kitchen, request, path)));
    }
    if (path === "/digests" && watched && request.method === "POST") {
      const { names } = await jsonBody(request, 100_000);
      const asked = Array.isArray(names) ? names.filter((name) => typeof name === "string") : [];
      return send(response, 200, "application/json", JSON.stringify(await watched.digests(asked)));
    }
    if (request.method !== "GET") throw new HttpError(405, `${request.method} is not allowed here`);
    if (path.startsWith("/assets/")) {
      const { type, body } = await files(path.slice("/assets/".length));
      response.setHeader("Content-Encoding", "gzip");
      return send(response, 200, type, body);
    }
    if (path === "/reference" || path.startsWith("/reference/")) {
      if (path === "/reference") return goTo(response, "/reference/");
      const answered = await pages(path.slice("/reference/".length));
      if ("to" in answered) return goTo(response, answered.to);
      response.setHeader("Content-Security-Policy", REFERENCE_POLICY);
      return send(response, 200, answered.type, answered.body);
    }
    if (path === "/") {
      return send(response, 200, HTML, await startPage(parts.contents, parts.sessions.list(), kitchen));
    }
    if (path === "/log" && kitchen) return send(response, 200, HTML, logPage(kitchen));
    if (path === "/report" && kitchen && (await kitchen.reportTime())) {
      response.setHeader("Content-Security-Policy", REPORT_POLICY);
      response.removeHeader("Cross-Origin-Opener-Policy"); // a page in a sandbox must not have one
      return send(response, 200, HTML, await kitchen.reportHtml());
    }
    const asked = path.startsWith("/kitchen/") ? kitchen?.answer(path.slice("/kitchen/".length)) : null;
    if (asked) return send(response, 200, "application/json", JSON.stringify(await inWords(asked)));
    if (path.startsWith("/open/")) return send(response, 200, HTML, await notebookPage(path.slice("/open/".length)));
    throw new HttpError(404, "no such address");
  };

  const notebookPage = async (path: string): Promise<string> => {
    const entry = await parts.contents.get(path, false);
    if (entry.type !== "notebook") throw new HttpError(404, `no such notebook: ${path}`);
    const data = {
      baseUrl: "/",
      wsUrl: "",
      token: "",
      notebookPath: entry.path,
      fullStaticUrl: "/assets",
      hasKitchen: String(kitchen !== null),
    };
    const body = '<div id="page"></div><noscript>The notebook page needs JavaScript.</noscript>';
    return pageShell({ title: entry.name, body, scripts: ["notebook.js"], styles: ["notebook.css"], data });
  };

  const limits = {
    maxHeaderSize: 16_384, // bytes
    headersTimeout: 5000, // ms
    requestTimeout: 60_000, // ms
    connectionsCheckingInterval: 1000, // ms
  };
  const server = createServer(limits, (request, response) => {
    response.setHeader("Content-Security-Policy", POLICY);
    response.setHeader("X-Content-Type-Options", "nosniff");
    response.setHeader("Referrer-Policy", "no-referrer");
    response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
    response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
    response.setHeader("Cache-Control", "no-store");
    respond(request, response).catch((error) => refuseRequest(request, response, error, say));
  });
  server.maxConnections = 1024;
  server.on("connection", arrivals.arrive);
  server.on("upgrade", (request, socket, head) => {
    socket.on("error", () => socket.destroy());
    try {
      guarded.check(request);
      arrivals.admit(request.socket);
      limit();
      channels.upgrade(request, socket, head, pathOf(request));
    } catch (error) {
      refuse(socket, error instanceof HttpError ? `${error.status} Refused` : "400 Bad Request");
      setTimeout(() => socket.destroy(), 1000).unref(); // once upgraded, no time limit of the server holds it
    }
  });

  await sweepDrafts(options.folder, DEEPEST);
  if (shelf !== null && existsSync(shelf)) await sweepDrafts(shelf, DEEPEST);
  port = await listen(server, options.port ?? 0);
  const origin = `http://127.0.0.1:${port}`;
  return {
    port,
    origin,
    token: guarded.token,
    address: `${origin}/?token=${guarded.token}`,
    close: async () => {
      channels.close();
      await parts.kernels.stopAll();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
}

/** The project's notebooks, and beside them those of the open kitchen where it has its own. */
function allContents({ folder, kitchen }: ServeOptions, trash: string): Contents {
  const project = contents(folder, trash);
  const notebooks = kitchen?.notebooks ?? null;
  if (kitchen === undefined || notebooks === null) return project;
  const own = contents(notebooks, join(dirname(kitchen.report), "trash"));
  return kitchenShelf({ project, kitchen: own, folder: notebooks });
}

const HTML = "text/html; charset=utf-8";

function pathOf(request: IncomingMessage): string {
  try {
    return decodeURIComponent((request.url ?? "/").split("?")[0]);
  } catch {
    throw new HttpError(400, "the address is not well formed");
  }
}

/** Exchanges the token for the cookie; the page then goes on by itself, so that a strict cookie is sent. */
function enter(response: ServerResponse, cookie: string): void {
  response.setHeader("Set-Cookie", cookie);
  send(
    response,
    200,
    HTML,
    '<!doctype html><meta charset="utf-8"><meta http-equiv="refresh" content="0;url=/"><title>…</title>',
  );
}

/** What the library cannot answer is the kitchen's fault, and its sentence is for the page. */
function inWords(asked: Promise<unknown>): Promise<unknown> {
  return asked.catch((error: Error) => {
    throw new HttpError(409, error.message);
  });
}

function goTo(response: ServerResponse, address: string): void {
  response.writeHead(302, { Location: address });
  response.end();
}

function send(response: ServerResponse, status: number, type: string, body: string | Uint8Array): void {
  response.writeHead(status, status === 204 ? {} : { "Content-Type": type });
  response.end(body);
}

function refuseRequest(
  request: IncomingMessage,
  response: ServerResponse,
  error: unknown,
  say: (line: string) => void,
): void {
  const status = error instanceof HttpError ? error.status : 500;
  const message = error instanceof HttpError ? error.message : "the server failed; see its terminal";
  if (!(error instanceof HttpError)) say(error instanceof Error ? (error.stack ?? error.message) : String(error));
  if (response.headersSent) {
    response.destroy();
    return;
  }
  // closing at once would reset a client that still sends, and the answer might be lost with it
  if (request.complete) response.setHeader("Connection", "close");
  if (request.headers.accept?.includes("text/html")) {
    const words = message.replace(/[&<>"]/g, " ");
    send(response, status, HTML, `<!doctype html><meta charset="utf-8"><title>${status}</title><p>${words}</p>`);
  } else send(response, status, "application/json", JSON.stringify({ message, reason: null }));
  // what is left of a refused body is thrown away for a moment, so that the answer arrives, and then cut off
  if (!request.complete) {
    request.resume();
    setTimeout(() => request.destroy(), 2000).unref();
  }
}

function listen(server: ReturnType<typeof createServer>, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = error.code === "EADDRINUSE";
      reject(
        taken
          ? new Error(`port ${port} is taken by another program; choose another with --port, or none for a free one`)
          : error,
      );
    });
    server.listen(port, "127.0.0.1", () => resolve((server.address() as { port: number }).port));
  });
}
