import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { Application, Configuration, type TypeDocOptions } from "typedoc";
import { declaredDoors } from "./declared-doors.js";
import { DOORS, doorName } from "./doors.js";
import { loadDoors } from "./doors-plugin.js";
import { withEquations, withLinks } from "./markdown.js";
import type { ReferenceOptions } from "./reference-options.js";

/** Writes the reference as pages that need no server. */
export async function makeReference(options: ReferenceOptions): Promise<void> {
  const { library, documents, readme, work, out, doors = DOORS } = options;
  const declared = join(work, "doors");
  declaredDoors(
    join(library, "dist"),
    declared,
    new Map(doors.map(({ room, purpose }) => [join(room, "index.d.ts"), `${purpose}\n\n@module ${doorName(room)}`])),
  );
  const tsconfig = join(work, "tsconfig.json");
  writeFileSync(tsconfig, JSON.stringify({ compilerOptions: COMPILER, include: ["doors"] }));
  const settings: TypeDocOptions = {
    ...OPTIONS,
    tsconfig,
    readme,
    // a name belongs to its room: the cook's door, which comes last, leads there
    entryPoints: [...doors.slice(1), doors[0]].map(({ room }) => join(declared, room, "index.d.ts")),
    projectDocuments: [...documents],
    customCss: fileURLToPath(new URL("../style.css", import.meta.url)),
    customJs: fileURLToPath(new URL("../search.js", import.meta.url)),
  };
  const app = await Application.bootstrap(settings as never);
  const linkOf = loadDoors(app, join(library, "src"), doors);
  app.options.setValue("markdownItLoader", (reader: Parameters<typeof withEquations>[0]) => {
    withEquations(reader);
    withLinks(reader, linkOf);
  });
  const project = await app.convert();
  if (project === undefined) throw new Error("typedoc read no door");
  app.validate(project);
  await app.generateDocs(project, out);
  if (app.logger.hasErrors() || app.logger.hasWarnings()) throw new Error("the reference has the faults above");
}

const COMPILER = {
  target: "es2022",
  lib: ["es2023"],
  module: "commonjs",
  moduleResolution: "node10",
  types: ["node"],
  strict: true,
  skipLibCheck: true,
  noEmit: true,
};

const OPTIONS: TypeDocOptions = {
  name: "slabwright reference",
  lang: "en",
  locales: { en: { kind_module: "Door", kind_plural_module: "Doors" } },
  disableSources: true,
  disableGit: true,
  hideGenerator: true,
  skipErrorChecking: true,
  excludePrivate: true,
  excludeExternals: false,
  jsDocCompatibility: { exampleTag: false },
  blockTags: [...Configuration.OptionDefaults.blockTags, "@range", "@reference"],
  searchInComments: true,
  searchInDocuments: true,
  categorizeByGroup: false,
  sortEntryPoints: false,
  sort: ["source-order"],
  visibilityFilters: {},
  navigation: { includeCategories: true, includeGroups: false, includeFolders: false },
  markdownItOptions: { html: false, linkify: false },
  validation: { notExported: false, invalidLink: true, notDocumented: false },
};
