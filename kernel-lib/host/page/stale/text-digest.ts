/** A short digest of a text, 16 hexadecimal digits: two FNV-1a hashes of 32 bits. It tells changes, and keeps no secret. */
export function textDigest(text: string): string {
  return [0x811c9dc5, 0x9e3779b9].map((start) => fnv1a(text, start)).join("");
}

/** FNV-1a: http://www.isthe.com/chongo/tech/comp/fnv/ */
function fnv1a(text: string, start: number): string {
  let hash = start;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
