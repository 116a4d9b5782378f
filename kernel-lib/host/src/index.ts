// kernel

// build
export { buildPage } from "./build/build-page";
// command
export { cli } from "./command/cli";
export { onSteadyPort } from "./command/steady-port";
export { type ExecuteOptions, type Execution, execute } from "./kernel/execute";
export { type Channel, decode, encode, type Header, type Message, request } from "./kernel/message";
export { describeEnd, type Kernel, type KernelEnd, type KernelOptions, startKernel } from "./kernel/start-kernel";
export type { KitchenPlace } from "./kitchen/open-kitchen";
// notebook
export { errorOutput, failureText, parsedData } from "./notebook/collect-outputs";
export { compareOutputs, type Difference, type Tolerance } from "./notebook/compare-outputs";
export { leadOf } from "./notebook/lead-of";
export {
  type Cell,
  type Notebook,
  notebookText,
  type Output,
  parseNotebook,
  readNotebook,
  type Text,
  tagsOf,
  textOf,
  titleOf,
  writeNotebook,
} from "./notebook/notebook";
export { type CellFailure, type Run, type RunOptions, runNotebook } from "./notebook/run-notebook";
export { terminalText } from "./notebook/terminal-text";
export { writeWhole } from "./notebook/write-whole";
// report
export { renderMarkdown } from "./report/render-markdown";
export { safeHtml } from "./report/safe-html";
export { type ReportOptions, writeReport } from "./report/write-report";
// server
export { confine } from "./server/confine";
export { decodeJson, decodeV1, encodeV1 } from "./server/frames";
export { type HeldStderr, heldStderr } from "./server/held-stderr";
export { type KernelModel, type Kernels, type KernelsOptions, kernels } from "./server/kernels";
export { jupyterDataFolder, register, unregister } from "./server/register";
export { type NotebookServer, type ServeOptions, serveNotebooks } from "./server/serve";
