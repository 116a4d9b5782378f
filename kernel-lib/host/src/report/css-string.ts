/** Text as a string of a style sheet that stands in a page: every letter but the plainest by its number. */
export function cssString(text: string): string {
  const safe = text.replace(/[^\p{L}\p{N} .,:()-]/gu, (letter) => `\\${letter.codePointAt(0)?.toString(16)} `);
  return `"${safe}"`;
}
