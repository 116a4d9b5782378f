import { javascript } from "@codemirror/lang-javascript";
import { markdown } from "@codemirror/lang-markdown";
import type { IYText } from "@jupyter/ydoc";
import type { IEditorServices } from "@jupyterlab/codeeditor";
import {
  CodeMirrorEditorFactory,
  CodeMirrorMimeTypeService,
  EditorExtensionRegistry,
  EditorLanguageRegistry,
  EditorThemeRegistry,
  ybinding,
} from "@jupyterlab/codemirror";

/** The editor of cells: TypeScript and markdown, and nothing else to load. */
export function editors(): {
  readonly factory: IEditorServices["factoryService"];
  readonly mimeTypes: IEditorServices["mimeTypeService"];
  readonly text: { lineNumbers: boolean };
} {
  const languages = new EditorLanguageRegistry();
  languages.addLanguage({
    name: "typescript",
    displayName: "TypeScript",
    mime: ["text/typescript", "application/typescript", "text/javascript"],
    extensions: ["ts"],
    support: javascript({ typescript: true }),
  });
  languages.addLanguage({
    name: "markdown",
    displayName: "Markdown",
    mime: ["text/x-markdown", "text/x-ipythongfm"],
    extensions: ["md"],
    support: markdown(),
  });
  const themes = new EditorThemeRegistry();
  for (const theme of EditorThemeRegistry.getDefaultThemes()) themes.addTheme(theme);
  const extensions = new EditorExtensionRegistry();
  for (const extension of EditorExtensionRegistry.getDefaultExtensions({ themes })) extensions.addExtension(extension);
  extensions.addExtension({
    name: "shared-model",
    factory: ({ model }) => {
      const { ysource, undoManager } = model.sharedModel as IYText;
      return EditorExtensionRegistry.createImmutableExtension(
        ybinding({ ytext: ysource, undoManager: undoManager ?? undefined }),
      );
    },
  });
  return {
    factory: new CodeMirrorEditorFactory({ extensions, languages }),
    mimeTypes: new CodeMirrorMimeTypeService(languages),
    text: { lineNumbers: false },
  };
}
