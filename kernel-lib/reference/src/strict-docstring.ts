/**
 * A docstring of the library in the strict form of TSDoc: text stands as it was written, whatever Markdown or HTML would make
 * of it; an example is fenced code; a paragraph that begins "Range:" or "Reference:" is a part of its own; one that begins with an
 * equation is quoted to its first full stop, so that a page can set it apart. Where it is `summarised`, its first sentence is its summary.
 */
export function strictDocstring(comment: string, summarised: boolean): string {
  const lines = comment
    .replace(/^\s*\/\*\* ?/, "")
    .replace(/\*\/\s*$/, "")
    .split("\n")
    .map((line) => line.replace(/^\s*\* ?/, "").trimEnd());
  const parts: Record<"text" | "tags" | "range" | "examples" | "reference", string[]> = {
    text: [],
    tags: [],
    range: [],
    examples: [],
    reference: [],
  };
  for (const block of blocksOf(lines)) {
    const [first, ...rest] = block;
    const tag = /^@(\w+)\s*(.*)$/.exec(first);
    if (tag?.[1] === "example") parts.examples.push(`@example\n${fenced([tag[2], ...rest])}`);
    else if (tag !== null)
      parts.tags.push(`@${tag[1]} ${tagText(tag[1], tag[2])}${rest.map((line) => `\n${plain(line)}`).join("")}`);
    else {
      const labelled = /^(Range|References?|Sources?): (.*)$/.exec(first);
      if (labelled === null) parts.text.push(paragraph(block));
      else {
        const words = [labelled[2], ...rest].map(plain).join("\n");
        if (labelled[1] === "Range") parts.range.push(`@range ${words}`);
        else parts.reference.push(`@reference ${words}`);
      }
    }
  }
  const summary = summarised && parts.text.length > 0 ? [`@summary ${firstSentence(parts.text[0])}`] : [];
  const written = [parts.text, summary, parts.tags, parts.range, parts.examples, parts.reference].flat().join("\n\n");
  return `/**\n${written
    .split("\n")
    .map((line) => ` * ${line.replaceAll("*/", "*\\/")}`.trimEnd())
    .join("\n")}\n */`;
}

/** Paragraphs and tags: a blank line ends either, a tag begins its own. */
function blocksOf(lines: readonly string[]): string[][] {
  const blocks: string[][] = [];
  let open: string[] = [];
  for (const line of lines) {
    if (line.trim() === "") open = [];
    else if (open.length === 0 || /^@\w/.test(line)) {
      open = [line.replace(/^ +(?=@)/, "")];
      blocks.push(open);
    } else open.push(line);
  }
  return blocks;
}

/** Up to the first full stop that a new sentence follows. */
function firstSentence(text: string): string {
  const line = text.replace(/^> /gm, "").replaceAll("\n", " ");
  return /^(?:`[^`]*`|[^`])*?[.:](?= [A-Z`]|$)/.exec(line)?.[0].replace(/:$/, "") ?? line;
}

function tagText(tag: string, text: string): string {
  const named = tag === "param" ? /^(\w+)\s*(.*)$/.exec(text) : null;
  return named === null ? plain(text) : `${named[1]} ${plain(named[2])}`;
}

/** An equation stands first: a left side of two words at most, then a sign that relates it to what follows. */
function isEquation(line: string): boolean {
  const left = /^([^.;:,?!`]{1,100}?) (?:=|∝|≈|<|≤|≥|>) \S/.exec(line)?.[1];
  return (
    left !== undefined && (left.match(/\p{L}{3,}/gu) ?? []).filter((word) => !/^(?:exp|erfc?)$/.test(word)).length <= 2
  );
}

function paragraph(lines: readonly string[]): string {
  if (!isEquation(lines[0])) return lines.map(plain).join("\n");
  const text = lines.join("\n");
  const end = /^(?:`[^`]*`|[^`])*?\.(?=\s+[A-Z`])/.exec(text)?.[0].length ?? text.length;
  const quoted = text
    .slice(0, end)
    .split("\n")
    .map((line) => `> ${plain(line)}`);
  const rest = text.slice(end).trim();
  return [quoted.join("\n"), ...(rest === "" ? [] : [rest.split("\n").map(plain).join("\n")])].join("\n\n");
}

function fenced(lines: readonly string[]): string {
  const fence = "`".repeat(Math.max(3, ...lines.map((line) => 1 + longestRun(line))));
  return `${fence}ts\n${lines.filter((line, at) => at > 0 || line !== "").join("\n")}\n${fence}`;
}

function longestRun(line: string): number {
  return Math.max(0, ...[...line.matchAll(/`+/g)].map(([run]) => run.length));
}

/** Text that Markdown and TSDoc show as it stands; what is in backticks is code and left alone, a list stays a list. */
export function plain(line: string): string {
  const [, bullet, rest] = /^(\s*(?:[-*] |\d+\. )?)(.*)$/.exec(line)!;
  const pieces = rest.split(/(`[^`]*`)/);
  return bullet + pieces.map((piece, at) => (at % 2 === 1 ? piece : escaped(piece))).join("");
}

function escaped(text: string): string {
  return text
    .replace(/[\\`*&<>[\]{}@|~]/g, "\\$&")
    .replace(/(?<!\w)_|_(?!\w)/g, "\\_")
    .replace(/^(#|[-+=])/, "\\$1");
}
