/*
 * Loaded into the kernel's process before tslab: ends the kernel when the host that started it is gone, even when the
 * host was killed and even when a cell loops for ever (which is why a second thread watches).
 */
import { isMainThread, Worker } from "node:worker_threads";

const watch = `
const host = process.ppid;
setInterval(() => {
  try { if (process.ppid === host) { process.kill(host, 0); return; } } catch (error) { if (error.code === "EPERM") return; }
  process.kill(process.pid, "SIGKILL");
}, 1000);
`;

// a thread loads what the process was told to load: only the first may start another
if (isMainThread) new Worker(watch, { eval: true, execArgv: [], stdout: false, stderr: false }).unref();
