import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { basename, join } from "node:path";
import { writeWhole } from "../notebook/write-whole";
import { writeReport } from "../report/write-report";
import { CRATE, packBundle } from "../share/bundle";
import { crateText } from "../share/crate";
import { provenanceIn, runBasis } from "../share/provenance";
import { askLibrary } from "./ask-library";
import type { CommandOptions } from "./command-options";
import { headingsOf, type RunStamp } from "./executed-copies";
import { kitchenOf } from "./kitchen";
import { oneLine } from "./printable";
import { isDraft, notebookPaths, projectFolder } from "./project";
import { failureReport, runAll } from "./run-all";

/** What the library gives of a kitchen that is shared. */
interface ToShare {
  readonly name: string;
  readonly files: readonly { readonly file: string; readonly text?: string; readonly base64?: string }[];
  readonly variantIds: readonly string[];
  readonly photos: readonly string[];
  readonly leftOut: readonly string[];
}

/**
 * Writes a bundle for a colleague: the kitchen's files without what is private, the notebooks run on them, their page, a
 * manifest, and how to run it again. Nothing that stands there is overwritten. The notebooks are run anew, on what the
 * colleague gets and on nothing else: where other products' trials stay at home, times may differ from your own page's.
 */
export async function shareCommand(options: CommandOptions): Promise<number> {
  const project = projectFolder(process.cwd());
  const kitchen = kitchenOf(options, project);
  const { variant, ...parameters } = options.set;
  const variantIds = variant === undefined ? undefined : [variant];
  const shared = await askLibrary<ToShare>(project, {
    door: "slabwright/notebook",
    name: "kitchenToShare",
    args: [kitchen.folder, { variantIds, take: options.with }],
  });
  const run = new Date().toISOString();
  const place = join(kitchen.out, "share");
  const name = [slug(shared.name), ...(variantIds ?? []), run.slice(0, 10)].join("-");
  const folder = join(place, name);
  if (existsSync(folder) || existsSync(`${folder}.zip`))
    throw new Error(`a bundle of this name must not exist yet, got ${oneLine(folder)}: rename it or take it away`);
  const draft = join(place, `.${name}.part`);
  rmSync(draft, { recursive: true, force: true });
  const own = join(draft, "kitchen");
  for (const { file, text, base64 } of shared.files)
    await writeWhole(join(own, ...file.split("/")), text ?? new Uint8Array(Buffer.from(base64 ?? "", "base64")));
  if (shared.photos.length > 0) mkdirSync(join(own, "photos"));
  for (const photo of shared.photos) {
    const from = join(kitchen.folder, "photos", basename(photo));
    if (existsSync(from)) copyFileSync(from, join(own, "photos", basename(photo)));
  }
  const paths = options.named.length > 0 ? options.named : await notebookPaths(join(project, "notebooks"));
  const stamp: RunStamp = { kitchen: shared.name, folder: "kitchen", run };
  const runs = await runAll({
    paths: paths.filter((path) => !isDraft(path)),
    copyTo: (path) => join(draft, "notebooks", basename(path)),
    stamp,
    project,
    kitchen: own,
    parameters,
    environment: { SLABWRIGHT_KITCHEN: own },
    say: options.say,
  });
  const failed = runs.find((one) => one.failure);
  if (failed?.failure) {
    options.complain(`\n${failureReport(failed.path, failed.failure)}\nNothing is shared: mend this first.`);
    rmSync(draft, { recursive: true, force: true });
    return 1;
  }
  await writeReport({
    notebooks: runs,
    path: join(draft, "page.html"),
    ...headingsOf(stamp, { ...kitchen, name: shared.name }),
  });
  await writeWhole(join(draft, "README.md"), readmeText(shared, name, run));
  const told = runs.map((one) => provenanceIn(one.notebook)?.parameters ?? {});
  const crate = crateText({
    folder: draft,
    name: `${shared.name}: settings and trials`,
    description: `Notebooks run on ${shared.variantIds.join(", ")}, with the files they read.`,
    run,
    contact: options.by,
    basis: runBasis(project),
    parameters: Object.assign({}, ...told),
  });
  await writeWhole(join(draft, CRATE), crate);
  renameSync(draft, folder);
  if (options.zip) await packBundle(folder, `${folder}.zip`);
  options.say("");
  options.say(
    shared.leftOut.length === 0
      ? "Nothing was left out."
      : `Left at home (--with notes,photos,costs takes them along):\n${shared.leftOut.map((one) => `  ${oneLine(one)}`).join("\n")}`,
  );
  options.say(`The bundle: ${oneLine(options.zip ? `${folder}.zip` : folder)}`);
  return 0;
}

function slug(name: string): string {
  const plain = name
    .toLowerCase()
    .normalize("NFKD")
    .replace(/[^a-z0-9]+/g, "-");
  return plain.replace(/^-|-$/g, "").slice(0, 60) || "kitchen";
}

function readmeText({ name, variantIds, leftOut }: ToShare, folder: string, run: string): string {
  const left = leftOut.length === 0 ? "" : `\nNot in it: ${leftOut.join("; ")}.\n`;
  return `# ${name}

Run on ${run.slice(0, 10)}, for ${variantIds.join(", ")}. Open \`page.html\` to read it, offline, on a phone too.

To run it again and see whether it comes out the same, in a clone of slabwright:

\`\`\`sh
npm ci
npm run check -- path/to/${folder}
\`\`\`

It says *same* for each notebook, or which cell differs, by how much, and what has changed: a file, a parameter, a version.
${left}
Times and temperatures are guidance for a test kitchen. Check the core of the thickest piece with a probe; local food codes and
licensed practice come first. Allergens: check the labels of your own ingredients.
`;
}
