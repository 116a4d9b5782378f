import {
  Completer,
  CompleterModel,
  CompletionHandler,
  KernelCompleterProvider,
  ProviderReconciliator,
} from "@jupyterlab/completer";
import type { NotebookPanel } from "@jupyterlab/notebook";
import type { CommandRegistry } from "@lumino/commands";
import { Widget } from "@lumino/widgets";

/** Completion from the kernel: Tab asks and takes the common part, Enter takes what is marked. */
export function completion(options: { readonly panel: NotebookPanel; readonly commands: CommandRegistry }): void {
  const { panel, commands } = options;
  const notebook = panel.content;
  const completer = new Completer({ editor: null, model: new CompleterModel() });
  const handler = new CompletionHandler({ completer, reconciliator: reconciliator(panel) });
  const follow = (): void => {
    handler.editor = notebook.activeCell?.editor ?? null;
    handler.reconciliator = reconciliator(panel);
  };
  notebook.activeCellChanged.connect((_, cell) => {
    follow();
    void cell?.ready.then(follow);
  });
  panel.sessionContext.sessionChanged.connect(follow);
  panel.sessionContext.kernelChanged.connect(follow);
  completer.hide();
  Widget.attach(completer, document.body);
  commands.addCommand("complete", { label: "complete", execute: () => handler.invoke() });
  commands.addCommand("complete-take", { label: "take the completion", execute: () => completer.selectActive() });
  commands.addKeyBinding({ command: "complete", keys: ["Tab"], selector: ".jp-Notebook .jp-mod-completer-enabled" });
  commands.addKeyBinding({
    command: "complete-take",
    keys: ["Enter"],
    selector: ".jp-Notebook .jp-mod-completer-active",
  });
}

function reconciliator(panel: NotebookPanel): ProviderReconciliator {
  const context = {
    widget: panel,
    editor: panel.content.activeCell?.editor ?? null,
    session: panel.sessionContext.session,
  };
  return new ProviderReconciliator({ context, providers: [new KernelCompleterProvider()], timeout: 3000 });
}
