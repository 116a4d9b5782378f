import "./notebook.css";
import { PageConfig } from "@jupyterlab/coreutils";
import { Widget } from "@lumino/widgets";
import { pageCommands } from "./commands";
import { completion } from "./completion";
import { watchDisk } from "./disk";
import { editors } from "./editors";
import { notice } from "./notice";
import { openNotebook } from "./open-notebook";
import { parameterFields } from "./parameter-fields";
import { rendering } from "./rendering";
import { services } from "./services";
import { watchStale } from "./stale/watch-stale";
import { toolbar } from "./toolbar";
import { tooltips } from "./tooltips";

/** Builds the notebook page: the notebook of the address, its kernel, a bar of commands, and what watches over both. */
async function start(): Promise<void> {
  const path = PageConfig.getOption("notebookPath");
  const place = document.getElementById("page") as HTMLElement;
  const manager = services();
  const { factory, mimeTypes, text } = editors();
  const { context, panel } = openNotebook({
    path,
    manager,
    rendermime: rendering(),
    editorFactory: factory,
    mimeTypes,
  });
  const stale = watchStale({ context, panel });
  parameterFields({ context, panel });
  const commands = pageCommands({ context, panel, text, stale });
  completion({ panel, commands });
  tooltips({ panel, commands });
  const bar = toolbar({ context, panel, commands, stale: stale.node });
  place.append(bar);
  Widget.attach(panel, place);
  window.addEventListener("resize", () => panel.update());
  window.addEventListener("keydown", (event) => commands.processKeydownEvent(event), true);
  watchDisk(context);
  await context.initialize(false);
  await context.ready;
  panel.content.activate();
  await context.sessionContext.ready;
  document.body.dataset.ready = "true";
}

start().catch((error: unknown) => {
  console.error(error);
  notice(`The notebook could not be opened: ${error instanceof Error ? error.message : error}`);
});
