import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

/** SHA-256 in hexadecimal. */
export function sha256(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}

/** SHA-256 of a file's bytes. */
export function fileSha256(path: string): string {
  return sha256(new Uint8Array(readFileSync(path)));
}
