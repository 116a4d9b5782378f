import { spawn } from "node:child_process";
import { join } from "node:path";
import { buildPage } from "../build/build-page";
import { register, unregister } from "../server/register";
import { serveNotebooks } from "../server/serve";
import type { CommandOptions } from "./command-options";
import { kitchenEnvironment } from "./environment";
import { projectFolder } from "./project";

/** Serves the notebooks in the browser until it is told to stop, or registers the kernel for other Jupyter programs. */
export async function notebookCommand(options: CommandOptions): Promise<number> {
  if (options.register || options.unregister) {
    options.say(await (options.register ? register() : unregister()));
    return 0;
  }
  const project = projectFolder(process.cwd());
  await buildPage();
  const server = await serveNotebooks({
    folder: join(project, "notebooks"),
    trash: join(project, "out", "trash"),
    port: options.port ?? 0,
    environment: kitchenEnvironment(options.kitchen),
    say: options.say,
  });
  options.say(
    `The notebooks are open on this machine only, at\n\n  ${server.address}\n\nCtrl C ends the server and its kernels.`,
  );
  if (options.open) openBrowser(server.address);
  await new Promise<void>((done) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) {
      process.removeAllListeners(signal);
      process.once(signal, () => done());
    }
  });
  await server.close();
  return 0;
}

/** Opens the address in the user's browser, if the machine knows how; the address is printed in any case. */
function openBrowser(address: string): void {
  const program = process.platform === "darwin" ? "open" : process.platform === "win32" ? "explorer" : "xdg-open";
  const opened = spawn(program, [address], { stdio: "ignore", detached: true });
  opened.on("error", () => {});
  opened.unref();
}
