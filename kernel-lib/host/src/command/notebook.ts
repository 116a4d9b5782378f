import { join } from "node:path";
import { buildPage } from "../build/build-page";
import { register, unregister } from "../server/register";
import { type NotebookServer, serveNotebooks } from "../server/serve";
import type { CommandOptions } from "./command-options";
import { kitchenOf } from "./kitchen";
import { openBrowser } from "./open-browser";
import { projectFolder } from "./project";
import { onSteadyPort } from "./steady-port";

/** Serves the notebooks in the browser until it is told to stop, or registers the kernel for other Jupyter programs. */
export async function notebookCommand(options: CommandOptions): Promise<number> {
  if (options.register || options.unregister) {
    options.say(await (options.register ? register() : unregister()));
    return 0;
  }
  const project = projectFolder(process.cwd());
  const { name, folder, notebooks, out, environment } = kitchenOf(options, project);
  await buildPage();
  const serve = (port: number): Promise<NotebookServer> =>
    serveNotebooks({
      folder: join(project, "notebooks"),
      trash: join(project, "out", "trash"),
      reference: join(project, "out", "reference"),
      port,
      kitchen: { name, folder, notebooks, report: join(out, "report.html"), project },
      environment,
      say: options.say,
    });
  const server = await (options.port === undefined || options.port === null
    ? onSteadyPort(out, serve)
    : serve(options.port));
  const told = toldToStop();
  options.say(
    `The notebooks are open on this machine only, at\n\n  ${server.address}\n\nCtrl C ends the server and its kernels.`,
  );
  // the address is printed in any case
  const opened = options.open ? await openBrowser(server.address, join(project, "out")).catch(() => null) : null;
  await told;
  await opened?.();
  await server.close();
  return 0;
}

/** Done when the process is told to stop, which no longer ends it by itself. */
function toldToStop(): Promise<void> {
  return new Promise((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) {
      // a signal that comes while none listens is lost: the others leave only after this one has come
      const others = process.rawListeners(signal);
      process.once(signal, () => done());
      for (const other of others) process.removeListener(signal, other as () => void);
    }
  });
}
