/*
 * Loaded into the kernel's process before tslab: ends the kernel when the host that started it is gone, even when the
 * host was killed and even when a cell loops for ever (which is why a second thread watches). The folder of the
 * kernel's connection, which its host would have taken away, goes with it.
 */
import { readFileSync } from "node:fs";
import { dirname } from "node:path";
import { isMainThread, Worker } from "node:worker_threads";

const watch = `
const { rmSync } = require("node:fs");
const { host, folder } = require("node:worker_threads").workerData;
const look = () => {
  try { if (process.ppid === host) { process.kill(host, 0); return; } } catch (error) { if (error.code === "EPERM") return; }
  try { rmSync(folder, { recursive: true, force: true }); } catch {}
  process.kill(process.pid, "SIGKILL");
};
look();
setInterval(look, 1000);
`;

const prefix = "--config-path=";
const path = process.argv.find((word) => word.startsWith(prefix))?.slice(prefix.length);

// a thread, and a process that a cell starts, load what this one was told to load: only the kernel follows
if (isMainThread && path !== undefined) {
  const { host } = JSON.parse(readFileSync(path, "utf8"));
  const workerData = { host, folder: dirname(path) };
  new Worker(watch, { eval: true, execArgv: [], stdout: false, stderr: false, workerData }).unref();
}
