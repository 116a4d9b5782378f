import { ServiceManager } from "@jupyterlab/services";

/** The connection to this page's own server. */
export function services(): ServiceManager {
  const manager = new ServiceManager({ standby: "when-hidden" });
  return manager;
}
