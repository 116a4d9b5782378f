/** Text made safe to stand in HTML, in an element or in a quoted attribute. */
export function escapeHtml(text: string): string {
  return text.replace(/[&<>"']/g, (mark) => ENTITIES[mark]);
}

/** A value as JSON that can stand in a `<script>` element; `replacer` as `JSON.stringify` takes it. */
export function scriptJson(value: unknown, replacer?: (key: string, value: unknown) => unknown): string {
  return JSON.stringify(value, replacer)
    .replace(/</g, "\\u003c")
    .replace(/\u2028/g, "\\u2028")
    .replace(/\u2029/g, "\\u2029");
}

/** Text without the colour codes of a terminal. */
export function withoutColours(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: terminal colours begin with the escape character
  return text.replace(/\u001b\[[0-9;]*[A-Za-z]/g, "");
}

const ENTITIES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
