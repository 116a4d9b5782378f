import type { RunSheet } from "../../advice/run-sheet/run-sheet";
import { csvLine } from "../../check/csv-line";

/**
 * A run sheet as a log to be filled in: the headings of a log, a row a trial with its name, product, pan and appliance, blanks for what
 * is measured, and above each row a line that begins with `#` and says what is planned. Filled in, it reads back as a log.
 */
export function runSheetCsv({ name, lines, sheet }: RunSheet): string {
  const headings = sheet.rows.map(({ heading }) => heading);
  const rows = lines.flatMap((line, at) => [
    `# turn ${line.run}, morning ${line.session}, ${line.trialId}: ${oneLine(line.sentence)}`,
    csvLine(
      sheet.rows.map(({ cells, heading }) => cells[at].printed ?? (heading === "note" ? line.purpose : "")),
      ",",
    ),
  ]);
  const cautions = sheet.cautions.map((caution) => `# ${oneLine(caution)}`);
  return `${[`# plan ${name}`, ...cautions, csvLine(headings, ","), ...rows].join("\n")}\n`;
}

function oneLine(text: string): string {
  return text.replaceAll(/[\r\n]+/g, " ");
}
