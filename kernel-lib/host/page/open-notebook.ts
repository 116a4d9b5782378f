import type { IEditorServices } from "@jupyterlab/codeeditor";
import { Context } from "@jupyterlab/docregistry";
import {
  type INotebookModel,
  NotebookModelFactory,
  NotebookPanel,
  NotebookWidgetFactory,
  runCell,
  StaticNotebook,
  setCellExecutor,
} from "@jupyterlab/notebook";
import type { RenderMimeRegistry } from "@jupyterlab/rendermime";
import type { ServiceManager } from "@jupyterlab/services";

/** What `openNotebook` needs. */
export interface OpenOptions {
  readonly path: string;
  readonly manager: ServiceManager;
  readonly rendermime: RenderMimeRegistry;
  readonly editorFactory: IEditorServices["factoryService"];
  readonly mimeTypes: IEditorServices["mimeTypeService"];
}

/** An open notebook: `context` is its file and its kernel, `panel` what is seen. */
export interface OpenNotebook {
  readonly context: Context<INotebookModel>;
  readonly panel: NotebookPanel;
}

/** Prepares a notebook and its kernel; nothing is read before `context.initialize`. */
export function openNotebook(options: OpenOptions): OpenNotebook {
  setCellExecutor({ runCell });
  const editorConfig = {
    ...StaticNotebook.defaultEditorConfig,
    code: { lineNumbers: false, autoClosingBrackets: true, matchBrackets: true },
    markdown: { lineNumbers: false, lineWrap: true, matchBrackets: false },
  };
  const factory = new NotebookWidgetFactory({
    name: "Notebook",
    modelName: "notebook",
    fileTypes: ["notebook"],
    defaultFor: ["notebook"],
    preferKernel: true,
    canStartKernel: true,
    rendermime: options.rendermime,
    contentFactory: new NotebookPanel.ContentFactory({ editorFactory: options.editorFactory.newInlineEditor }),
    mimeTypeService: options.mimeTypes,
    editorConfig,
    notebookConfig: {
      ...StaticNotebook.defaultNotebookConfig,
      enableKernelInitNotification: false,
      scrollPastEnd: false,
      showInputPlaceholder: false,
      windowingMode: "none",
    },
    toolbarFactory: () => [], // the page has a bar of its own
  });
  const context = new Context<INotebookModel>({
    manager: options.manager,
    factory: new NotebookModelFactory({}),
    path: options.path,
    kernelPreference: { autoStartDefault: true, canStart: true, shouldStart: true, name: "tslab" },
  });
  const panel = factory.createNew(context);
  panel.toolbar.hide();
  return { context, panel };
}
