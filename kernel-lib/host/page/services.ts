import { ContentsManager, ServiceManager } from "@jupyterlab/services";
import { checkedDrive } from "./checked-saves";

/** The connection to this page's own server. */
export function services(): ServiceManager {
  const contents = new ContentsManager({ defaultDrive: checkedDrive() });
  return new ServiceManager({ contents, standby: "when-hidden" });
}
