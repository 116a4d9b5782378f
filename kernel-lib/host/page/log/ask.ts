/** Why nothing came of a question: `away`, nobody answered, and it may have arrived; `refused`, with the server's sentence. */
export class AskFailure extends Error {
  constructor(
    readonly why: "away" | "refused",
    message: string,
  ) {
    super(message);
  }
}

/** How long an answer may take (ms). */
const PATIENCE_MS = 30_000;

/** Asks this page's server; throws an `AskFailure`. */
export async function ask<T>(path: string, body?: object): Promise<T> {
  const sent =
    body === undefined
      ? {}
      : { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) };
  let answer: Response;
  let json: { readonly message?: unknown };
  try {
    answer = await fetch(path, { ...sent, signal: AbortSignal.timeout(PATIENCE_MS) });
    json = await answer.json();
  } catch {
    throw new AskFailure("away", "The server does not answer. What you typed is kept in this browser.");
  }
  if (answer.ok) return json as T;
  if (answer.status === 403)
    throw new AskFailure(
      "away",
      "The server was started anew: open the address that its terminal printed. What you typed is kept in this browser.",
    );
  throw new AskFailure(answer.status >= 500 ? "away" : "refused", String(json.message));
}
