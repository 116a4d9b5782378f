/** What `eachCsvLine` reads by. */
export interface CsvLineOptions {
  /** one character; `","` unless given */
  readonly delimiter?: string;
  /** lines that begin with it are left out; none unless given */
  readonly comment?: string;
  /** is handed the cells of each line, and its row as an editor counts it (the last where cells hold line ends) */
  readonly take: (cells: readonly string[], row: number) => void;
}

/** Where a quote does not part a cell as it must, and what was expected. */
export interface CsvProblem {
  readonly row: number;
  readonly expected: string;
}

const QUOTE = 34;

/**
 * Takes CSV text apart line by line (RFC 4180, any line end, with or without a byte-order mark). Cells in quotes stand as
 * they are, `""` in them is a quote; others are trimmed, and hold quotes as inches alone (`9"`). Empty lines are left out. Each character is looked at once.
 *
 * @returns the problem at which reading stopped, or null at the end of the text
 */
export function eachCsvLine(text: string, options: CsvLineOptions): CsvProblem | null {
  const { delimiter = ",", comment, take } = options;
  const body = text.includes("\n") ? text : text.replaceAll("\r", "\n");
  const parting = delimiter.charCodeAt(0);
  let at = body.charCodeAt(0) === 0xfeff ? 1 : 0;
  let row = 1;
  const skipBlanks = (): void => {
    while (at < lineEnd && body.charCodeAt(at) !== parting && isBlank(body.charCodeAt(at))) at++;
  };
  const lineEndAfter = (from: number): number => {
    const end = body.indexOf("\n", from);
    return end < 0 ? body.length : end;
  };
  let lineEnd = lineEndAfter(at);
  while (at < body.length) {
    const cells: string[] = [];
    let isEmpty = true;
    skipBlanks();
    if (comment !== undefined && body.startsWith(comment, at)) at = lineEnd;
    else
      for (;;) {
        skipBlanks();
        if (at < lineEnd && body.charCodeAt(at) === QUOTE) {
          const cell = quotedCell(body, at);
          if (cell === null) return { row, expected: "a quote that ends the cell it begins" };
          isEmpty = false;
          cells.push(cell.text);
          at = cell.end;
          if (at > lineEnd) {
            row += countOf("\n", cell.text);
            lineEnd = lineEndAfter(at);
          }
          skipBlanks();
          if (at < lineEnd && body.charCodeAt(at) !== parting)
            return { row, expected: "nothing behind the quote that ends a cell" };
        } else {
          const from = at;
          while (at < lineEnd && body.charCodeAt(at) !== parting) {
            if (body.charCodeAt(at) === QUOTE && !isInchMark(body, at, from))
              return { row, expected: "quotes only round a whole cell" };
            at++;
          }
          cells.push(body.slice(from, at).trim());
        }
        if (at >= lineEnd) break;
        at++;
        isEmpty = false;
      }
    if (cells.length > 0 && !(isEmpty && cells[0] === "")) take(cells, row);
    at = lineEnd + 1;
    row++;
    lineEnd = lineEndAfter(at);
  }
  return null;
}

/** Whether a quote stands for inches: `9"` and `9½"`. */
function isInchMark(body: string, at: number, from: number): boolean {
  return at > from && /[\d½¼¾⅓⅔⅛⅜⅝⅞]/.test(body[at - 1]);
}

function isBlank(code: number): boolean {
  return code === 32 || (code >= 9 && code <= 13) || (code >= 160 && String.fromCharCode(code).trim() === "");
}

/** The cell that begins with the quote at `from`, and where it ends; null when it does not. */
function quotedCell(body: string, from: number): { text: string; end: number } | null {
  let text = "";
  for (let at = from + 1; ; ) {
    const quote = body.indexOf('"', at);
    if (quote < 0) return null;
    text += body.slice(at, quote);
    if (body.charCodeAt(quote + 1) !== QUOTE) return { text, end: quote + 1 };
    text += '"';
    at = quote + 2;
  }
}

function countOf(mark: string, text: string): number {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count++;
  return count;
}
