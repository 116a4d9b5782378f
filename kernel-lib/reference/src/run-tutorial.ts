import { execFile } from "node:child_process";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { promisify, stripVTControlCharacters } from "node:util";
import ts from "typescript";

/** The kitchen of the tutorial, as its commands name it. */
const KITCHEN = "corner-kitchen";

/** Where a tutorial is run. */
export interface TutorialPlace {
  /** the project's folder */
  readonly project: string;
  /** an empty folder inside it, for the kitchen */
  readonly folder: string;
  /** commands that are shown and not run; none unless given */
  readonly skips?: (command: string) => boolean;
}

/**
 * Does what a page says, block by block, and puts what was printed below each: `sh` holds one command of the project's, `ts` a cell,
 * `csv FILE` a file of the kitchen. `last=3` after the language keeps the last three lines of what is printed. Throws where a
 * command fails; `check-kitchen` may find a problem.
 */
export async function runTutorial(
  page: string,
  { project, folder, skips = () => false }: TutorialPlace,
): Promise<string> {
  const kitchen = join(folder, KITCHEN);
  rmSync(kitchen, { recursive: true, force: true });
  const asTyped = (text: string): string =>
    stripVTControlCharacters(text)
      .replaceAll(kitchen, KITCHEN)
      .replaceAll(relative(project, kitchen), KITCHEN)
      .replaceAll(project.replace(/[\\/]$/, ""), ".")
      // how a run goes on is for the one who waits
      .replace(/^(?:Running \d+|\[\d+\/\d+\]).*\n/gm, "")
      .trim();
  let written = "";
  let from = 0;
  for (const block of page.matchAll(/^```(\w+)(?: (.*))?\n([\s\S]*?)^```\n/gm)) {
    const [whole, language, about = "", code] = block;
    written += page.slice(from, block.index);
    from = block.index + whole.length;
    if (language === "csv") {
      mkdirSync(dirname(join(kitchen, about)), { recursive: true });
      writeFileSync(join(kitchen, about), code);
      written += `\`${about}\`:\n\n\`\`\`txt\n${code}\`\`\`\n`;
      continue;
    }
    if (skips(code.trim())) {
      written += whole;
      continue;
    }
    const words = language === "ts" ? ["-e", cellOf(code)] : commandOf(code.trim(), relative(project, kitchen));
    const printed = asTyped(await run(words, project, kitchen));
    const last = /last=(\d+)/.exec(about);
    const lines = last === null ? printed : printed.split("\n").slice(-Number(last[1])).join("\n").trim();
    written += `\`\`\`${language}\n${code}\`\`\`\n\n\`\`\`text\n${folded(lines)}\n\`\`\`\n`;
  }
  return written + page.slice(from);
}

/** Long lines go on below, as in a terminal of 100 columns. */
function folded(text: string): string {
  return text.replace(/^.{101,}$/gm, (line) => line.replace(/(.{1,100})(?: |$)/g, "$1\n").trimEnd());
}

/** `npm run log -- a "b c"` as the words that its program gets. */
function commandOf(command: string, kitchen: string): readonly string[] {
  const known = /^npm (?:run )?([\w-]+) -- (.*)$/.exec(command);
  if (known === null) throw new Error(`a tutorial's command must be "npm run NAME -- …", got ${command}`);
  const words = [...known[2].matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ""));
  return ["kernel-lib/host/bin/slabwright.js", known[1], ...words.map((word) => (word === KITCHEN ? kitchen : word))];
}

/** A cell as a script, with what `show` prints in a terminal. */
function cellOf(code: string): string {
  return ts.transpileModule(code, {
    compilerOptions: { module: ts.ModuleKind.CommonJS, target: ts.ScriptTarget.ES2022 },
  }).outputText;
}

async function run(words: readonly string[], cwd: string, kitchen: string): Promise<string> {
  const env = { ...process.env, SLABWRIGHT_KITCHEN: kitchen };
  try {
    const { stdout, stderr } = await promisify(execFile)(process.execPath, [...words], { cwd, env });
    return `${stderr}\n${stdout}`;
  } catch (error) {
    const { code, stdout = "", stderr = "" } = error as { code?: number; stdout?: string; stderr?: string };
    if (words.includes("check-kitchen") && code === 1) return `${stderr}\n${stdout}`;
    throw new Error(`the tutorial's "${words.slice(1).join(" ")}" failed: ${stderr || (error as Error).message}`);
  }
}
