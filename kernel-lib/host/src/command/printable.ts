/**
 * Text for a terminal: what would move the cursor, recolour, retitle or turn the line round is written as its code
 * (`\x1b`, `\u202e`). Line ends and tabs stay.
 */
export function printable(text: string): string {
  return text.replace(/\r\n/g, "\n").replace(CONTROL, written);
}

/** A name for a terminal, in one line: as `printable`, with line ends and tabs as `\n` and `\t`. */
export function oneLine(name: string): string {
  return name.replace(/\n/g, "\\n").replace(/\t/g, "\\t").replace(CONTROL, written);
}

/** The control characters (C0, C1) apart from line end and tab, and the marks that change the direction of writing. */
const CONTROL =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what this looks for
  /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/g;

function written(mark: string): string {
  const code = mark.charCodeAt(0).toString(16);
  return code.length <= 2 ? `\\x${code.padStart(2, "0")}` : `\\u${code.padStart(4, "0")}`;
}
