/*
 * Loaded into the kernel's process before tslab: ends the kernel when the host that started it is gone, even when the
 * host was killed and even when a cell loops for ever (which is why a second thread watches).
 */
import { Worker } from "node:worker_threads";

const watch = `
const host = process.ppid;
setInterval(() => {
  try { if (process.ppid === host) { process.kill(host, 0); return; } } catch (error) { if (error.code === "EPERM") return; }
  process.kill(process.pid, "SIGKILL");
}, 1000);
`;

new Worker(watch, { eval: true, stdout: false, stderr: false }).unref();
