import { createHash, randomBytes, timingSafeEqual } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { HttpError } from "./http-error";
import { rateLimit } from "./rate";

/** Who may talk to the server. */
export interface Guard {
  readonly token: string;
  /** the cookie that a page gets in exchange for the token: a secret of its own */
  readonly cookie: string;
  /** throws unless the request comes from a page of this server or carries the token */
  readonly check: (request: IncomingMessage) => void;
  /** whether the request names the token in its address, as the link in the terminal does */
  readonly bringsToken: (request: IncomingMessage) => boolean;
}

/**
 * Guards a server on the loopback interface. Every request must name this server as its host (against a foreign name
 * that was pointed here); none may come from a page or a frame of another origin; all but the first must carry the
 * cookie or an `Authorization: token …` header. Who carries what is right is let in whatever others have tried; after
 * 20 wrong tokens in a minute further wrong ones hear that they are too many.
 *
 * Browsers send a cookie to every port of its host, so other servers of this machine may see it. It is therefore not
 * the token, opens nothing as one, and is refused when it comes from a page of another port.
 */
export function guard(port: () => number): Guard {
  const token = randomBytes(24).toString("hex");
  const session = randomBytes(24).toString("hex");
  const mayGuess = rateLimit(20, 60_000);
  const hosts = (): string[] => [`127.0.0.1:${port()}`, `localhost:${port()}`];
  const cookieName = (): string => `slabwright-${port()}`;

  const wrong = (): HttpError => {
    try {
      mayGuess();
    } catch {
      return new HttpError(429, "too many wrong tokens; wait a minute");
    }
    return new HttpError(403, "the token is wrong; use the address that the terminal printed");
  };
  const checkPlace = (request: IncomingMessage): void => {
    if (!hosts().includes(request.headers.host ?? ""))
      throw new HttpError(403, "this server answers only to its own name");
    const { origin } = request.headers;
    if (origin !== undefined && !hosts().some((host) => origin === `http://${host}`)) {
      throw new HttpError(403, "requests from pages of another origin are refused");
    }
    const site = request.headers["sec-fetch-site"];
    const opens =
      request.method === "GET" &&
      request.headers["sec-fetch-mode"] === "navigate" &&
      ["document", undefined].includes(request.headers["sec-fetch-dest"] as string | undefined);
    if ((site === "cross-site" || site === "same-site") && !opens) {
      throw new HttpError(403, "requests from pages of another site are refused");
    }
  };

  return {
    token,
    get cookie() {
      return `${cookieName()}=${session}; HttpOnly; SameSite=Strict; Path=/`;
    },
    bringsToken: (request) => {
      checkPlace(request);
      const given = new URLSearchParams((request.url ?? "").split("?")[1]).get("token");
      if (given === null) return false;
      if (same(given, token)) return true;
      throw wrong();
    },
    check: (request) => {
      checkPlace(request);
      const bearer = /^token\s+(\S+)$/i.exec(request.headers.authorization ?? "")?.[1];
      if (bearer !== undefined && same(bearer, token)) return;
      const cookies = cookiesOf(request, cookieName());
      if (cookies.some((given) => same(given, session))) return;
      if (bearer === undefined && cookies.length === 0) {
        throw new HttpError(403, "no token; use the address that the terminal printed");
      }
      throw wrong();
    },
  };
}

/** Every cookie of a name: another server of this machine may have set more of them, for narrower paths. */
function cookiesOf(request: IncomingMessage, name: string): string[] {
  const found: string[] = [];
  for (const pair of (request.headers.cookie ?? "").split(";")) {
    const [key, value] = pair.trim().split("=");
    if (key === name && value !== undefined) found.push(value);
  }
  return found;
}

function same(given: string, due: string): boolean {
  const digest = (text: string): Uint8Array => new Uint8Array(createHash("sha256").update(text).digest());
  return timingSafeEqual(digest(given), digest(due));
}
