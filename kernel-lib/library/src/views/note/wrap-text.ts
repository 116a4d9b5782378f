import { HARD_SPACE, keepQuantities } from "../table/keep-quantities";

/**
 * Text in lines of at most `width` characters, broken at spaces, not between a number and its unit, and inside a word only
 * where the word alone is longer. No character but the spaces at a break is lost; a text without words is one empty line.
 *
 * @example
 * wrapText("half sheet, 1150 g", 11); // → ["half sheet,", "1150 g"]
 */
export function wrapText(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (let word of keepQuantities(text)
    .split(/[^\S\u00a0]+/)
    .filter(Boolean)) {
    if (line !== "" && line.length + 1 + word.length <= width) {
      line += ` ${word}`;
      continue;
    }
    if (line !== "") lines.push(line);
    while (word.length > width) {
      lines.push(word.slice(0, width));
      word = word.slice(width);
    }
    line = word;
  }
  const all = line === "" && lines.length > 0 ? lines : [...lines, line];
  return all.map((each) => each.replaceAll(HARD_SPACE, " ").trimEnd());
}
