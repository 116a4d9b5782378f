import {
  type DeclarationReflection,
  DefaultTheme,
  type DefaultThemeRenderContext,
  JSX,
  type PageEvent,
  type ReferenceReflection,
  type Reflection,
  ReflectionKind,
  StructureRouter,
} from "typedoc";

/** What is imported as a type. */
export const TYPES: ReflectionKind[] = [ReflectionKind.Interface, ReflectionKind.TypeAlias];

/** A function has the page of its own name; a type one in `types/`, as it may be called the same but for a capital. */
export class DoorsRouter extends StructureRouter {
  protected override getIdealBaseName(reflection: Reflection): string {
    const path = super.getIdealBaseName(reflection);
    return reflection.kindOf(TYPES) ? path.replace(/[^/]*$/, "types/$&") : path;
  }
}

/** typedoc's own theme; a page says by which imports its name comes, and a door explains what another door's page holds. */
export function doorsTheme(doorsOf: ReadonlyMap<string, readonly string[]>): typeof DefaultTheme {
  return class extends DefaultTheme {
    override getRenderContext(page: PageEvent<Reflection>): DefaultThemeRenderContext {
      const context = super.getRenderContext(page);
      const { moduleMemberSummary, commentSummary, header } = context;
      context.moduleMemberSummary = (member) =>
        member.isReference() ? ledSummary(context, member) : moduleMemberSummary(member);
      // what an options object is for stands above its fields, once
      context.commentSummary = (model) => (model.isParameter() && !model.comment ? undefined : commentSummary(model));
      context.header = (event) =>
        JSX.createElement(JSX.Fragment, null, header(event), importLines(event.model, doorsOf));
      return context;
    }
  };
}

/** How the name of a page is imported; nothing on other pages. */
function importLines(model: Reflection, doorsOf: ReadonlyMap<string, readonly string[]>): JSX.Element | null {
  if (!model.parent?.parent?.isProject()) return null;
  const type = model.kindOf(TYPES) ? "type " : "";
  const lines = (doorsOf.get(model.name) ?? []).map((door) => `import { ${type}${model.name} } from "${door}";`);
  return lines.length === 0 ? null : JSX.createElement("pre", { class: "import-lines" }, lines.join("\n"));
}

/** A name that another door's page explains, as if it stood here. */
function ledSummary(context: DefaultThemeRenderContext, member: ReferenceReflection): JSX.Element {
  const target = member.getTargetReflectionDeep() as DeclarationReflection;
  const id = context.getAnchor(member);
  const { page, theme } = context;
  page.pageHeadings.push({
    link: `#${id}`,
    text: member.name,
    kind: target.kind,
    icon: theme.getReflectionIcon(target),
  });
  const link = JSX.createElement("a", { href: context.urlTo(target) }, member.name);
  const name = JSX.createElement("span", { class: "tsd-member-summary-name" }, context.reflectionIcon(target), link);
  return JSX.createElement(
    JSX.Fragment,
    null,
    JSX.createElement("dt", { class: "tsd-member-summary", id }, name),
    JSX.createElement("dd", { class: "tsd-member-summary" }, context.commentShortSummary(target)),
  );
}
