import type { IncomingMessage } from "node:http";
import { HttpError } from "./http-error";

/** The JSON body of a request, refused as soon as it is longer than `most` bytes. */
export async function jsonBody(request: IncomingMessage, most: number): Promise<Record<string, unknown>> {
  if (Number(request.headers["content-length"] ?? 0) > most) throw tooLong(most);
  const parts: string[] = [];
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let size = 0;
  try {
    for await (const part of request.iterator({ destroyOnReturn: false })) {
      size += part.length;
      if (size > most) throw tooLong(most);
      parts.push(decoder.decode(part, { stream: true }));
    }
    const text = parts.join("") + decoder.decode();
    if (text.trim() === "") return {};
    const value = JSON.parse(text);
    if (typeof value !== "object" || value === null || Array.isArray(value)) throw new Error("not an object");
    return value;
  } catch (error) {
    if (error instanceof HttpError) throw error;
    throw new HttpError(400, "the body must be a JSON object");
  }
}

function tooLong(most: number): HttpError {
  return new HttpError(
    413,
    `the body must be at most ${most < 1e6 ? `${Math.round(most / 1e3)} kB` : `${Math.round(most / 1e6)} MB`}`,
  );
}
