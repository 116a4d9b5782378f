import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import {
  type Application,
  Comment,
  CommentTag,
  type Context,
  Converter,
  type DeclarationReflection,
  PageEvent,
  type ProjectReflection,
  ReferenceReflection,
  type Reflection,
  ReflectionFlag,
  ReflectionKind,
  RendererEvent,
  type RouterTarget,
} from "typedoc";
import { doorHeadings } from "./door-headings.js";
import { type Door, doorName } from "./doors.js";
import { DoorsRouter, doorsTheme, TYPES } from "./doors-theme.js";
import type { LinkOf } from "./markdown.js";

/** Where the page of each public name is, as seen from the reference's folder: what the notebook page opens. */
export const NAMES_FILE = "names.json";

/**
 * Teaches typedoc the library's doors: the cook's door stands first, the headings of a door are its categories, functions stand
 * before types, and an options object is unfolded where a function takes it.
 *
 * @returns where a public name's page is, as seen from the page that is being written
 */
export function loadDoors(app: Application, sources: string, doors: readonly Door[]): LinkOf {
  const headings = new Map(
    doors.map(({ room }) => [doorName(room), doorHeadings(readFileSync(join(sources, room, "index.ts"), "utf8"))]),
  );
  const doorsOf = new Map<string, string[]>();
  for (const [door, found] of headings)
    for (const name of found.flatMap(({ names }) => names)) doorsOf.set(name, [...(doorsOf.get(name) ?? []), door]);

  app.converter.on(Converter.EVENT_RESOLVE_BEGIN, ({ project }) => {
    // every field is readonly: to say so at each of them says nothing
    for (const each of Object.values(project.reflections)) each.setFlag(ReflectionFlag.Readonly, false);
    for (const door of project.children ?? [])
      for (const child of door.children ?? []) {
        const found = headings.get(door.name)?.find(({ names }) => names.includes(child.name));
        if (found === undefined) throw new Error(`${door.name} shows ${child.name} below no heading`);
        child.comment ??= new Comment();
        child.comment.blockTags.push(new CommentTag("@category", [{ kind: "text", text: found.heading }]));
        if (child.kindOf(ReflectionKind.Interface) && child.name.endsWith("Options"))
          child.comment.modifierTags.add("@expand");
      }
  });
  const place = (door: string): number => doors.findIndex(({ room }) => doorName(room) === door);
  const sorted = ({ project }: Context): void => {
    for (const shown of [
      project.children,
      project.childrenIncludingDocuments,
      ...(project.groups ?? []).map(({ children }) => children),
    ])
      shown?.sort((a, b) => place(a.name) - place(b.name));
    for (const door of project.children ?? [])
      for (const category of door.categories ?? []) {
        const { names } = headings.get(door.name)!.find(({ heading }) => heading === category.title)!;
        category.children.sort(
          (a, b) => Number(isType(a)) - Number(isType(b)) || names.indexOf(a.name) - names.indexOf(b.name),
        );
      }
  };
  app.converter.on(Converter.EVENT_RESOLVE_END, sorted, AFTER_CATEGORIES);
  app.options.setValue("categoryOrder", [...new Set([...headings.values()].flat().map(({ heading }) => heading))]);

  app.renderer.defineRouter("doors", DoorsRouter);
  app.renderer.defineTheme("doors", doorsTheme(doorsOf));
  app.options.setValue("router", "doors");
  app.options.setValue("theme", "doors");

  let from: RouterTarget;
  const pages = new Map<string, Reflection>();
  app.renderer.on(RendererEvent.BEGIN, ({ project }) => {
    for (const child of [...(project.children ?? []), ...namesOf(project)])
      if (!pages.has(child.name)) pages.set(child.name, child);
  });
  app.renderer.on(PageEvent.BEGIN, (page: PageEvent<RouterTarget>) => {
    from = page.model;
  });
  app.renderer.on(PageEvent.END, (page) => {
    page.contents = withLandmarks(page.contents ?? "");
  });
  app.renderer.on(RendererEvent.END, ({ outputDirectory }) => {
    const sorted = [...pages].sort(([a], [b]) => (a < b ? -1 : 1));
    const places = Object.fromEntries(sorted.map(([name, page]) => [name, app.renderer.router!.getFullUrl(page)]));
    writeFileSync(join(outputDirectory, NAMES_FILE), `${JSON.stringify(places, null, 1)}\n`);
  });
  return (name) => {
    const page = pages.get(name);
    return page === undefined || page === from ? null : app.renderer.router!.relativeUrl(from, page);
  };
}

/** A page for who does not see it, or has no mouse: what it is about is its main part, and what scrolls can be scrolled by keys. */
function withLandmarks(html: string): string {
  return html
    .replace('<div class="col-content">', '<div class="col-content" role="main">')
    .replace(/<code class="(?:text|txt)"/g, '$& tabindex="0"')
    .replaceAll("<table>", '<table tabindex="0">');
}

/** Lower than the priority of typedoc's own sorting. */
const AFTER_CATEGORIES = -1000;

function isType(name: Reflection): boolean {
  return (name instanceof ReferenceReflection ? name.getTargetReflectionDeep() : name).kindOf(TYPES);
}

/** What the doors show, each name where its page is. */
function namesOf(project: ProjectReflection): readonly DeclarationReflection[] {
  return (project.children ?? [])
    .flatMap((door) => door.children ?? [])
    .filter((child) => !(child instanceof ReferenceReflection));
}
