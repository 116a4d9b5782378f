import { randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { HttpError } from "./http-error";

/** Who may talk to the server. */
export interface Guard {
  readonly token: string;
  /** the cookie that a page gets in exchange for the token */
  readonly cookie: string;
  /** throws unless the request comes from a page of this server or carries the token */
  readonly check: (request: IncomingMessage) => void;
  /** whether the request names the token in its address, as the link in the terminal does */
  readonly bringsToken: (request: IncomingMessage) => boolean;
}

/**
 * Guards a server on the loopback interface. Every request must name this server as its host (against a foreign name
 * that was pointed here); none may come from a page of another origin; all but the first must carry the cookie or an
 * `Authorization: token …` header. After 20 wrong tokens in a minute, further guesses are refused unread.
 */
export function guard(port: () => number, now: () => number = Date.now): Guard {
  const token = randomBytes(24).toString("hex");
  let wrong: number[] = [];
  const hosts = (): string[] => [`127.0.0.1:${port()}`, `localhost:${port()}`];
  const cookieName = (): string => `slabwright-${port()}`;

  const matches = (given: string): boolean => {
    wrong = wrong.filter((at) => now() - at < 60_000);
    if (wrong.length >= 20) throw new HttpError(429, "too many wrong tokens; wait a minute");
    if (same(given, token)) return true;
    wrong.push(now());
    return false;
  };
  const checkPlace = (request: IncomingMessage): void => {
    if (!hosts().includes(request.headers.host ?? ""))
      throw new HttpError(403, "this server answers only to its own name");
    const { origin } = request.headers;
    if (origin !== undefined && !hosts().some((host) => origin === `http://${host}`)) {
      throw new HttpError(403, "requests from pages of another origin are refused");
    }
    const site = request.headers["sec-fetch-site"];
    const opens = request.headers["sec-fetch-mode"] === "navigate" && request.method === "GET";
    if ((site === "cross-site" || site === "same-site") && !opens) {
      throw new HttpError(403, "requests from pages of another site are refused");
    }
  };

  return {
    token,
    get cookie() {
      return `${cookieName()}=${token}; HttpOnly; SameSite=Strict; Path=/`;
    },
    bringsToken: (request) => {
      checkPlace(request);
      const given = new URL(request.url ?? "/", "http://host").searchParams.get("token");
      if (given === null) return false;
      if (matches(given)) return true;
      throw new HttpError(403, "the token is wrong; use the address that the terminal printed");
    },
    check: (request) => {
      checkPlace(request);
      const bearer = /^token\s+(\S+)$/i.exec(request.headers.authorization ?? "")?.[1];
      const given = bearer ?? cookieOf(request, cookieName());
      if (given === undefined) throw new HttpError(403, "no token; use the address that the terminal printed");
      if (!matches(given)) throw new HttpError(403, "the token is wrong; use the address that the terminal printed");
    },
  };
}

function cookieOf(request: IncomingMessage, name: string): string | undefined {
  for (const pair of (request.headers.cookie ?? "").split(";")) {
    const [key, value] = pair.trim().split("=");
    if (key === name) return value;
  }
  return undefined;
}

function same(given: string, due: string): boolean {
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text.padEnd(due.length).slice(0, due.length));
  return timingSafeEqual(bytes(given), bytes(due)) && given.length === due.length;
}
