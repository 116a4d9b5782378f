/*
 * Loaded into the kernel's process before tslab: puts bounds on what a cell sends. Lines that follow each other within
 * a moment travel together, so that 50,000 of them are a few messages; what a cell prints or shows beyond its limit is
 * left out, and the cell says so. What tells why a cell failed is always sent, and as a message of its own.
 */
import { performance } from "node:perf_hooks";
import { afterLoad } from "./after-load";

type StreamName = "stdout" | "stderr";
type Print = (name: StreamName, text: string) => void;
type Show = (content: object, update: boolean) => void;

interface Handler {
  handleExecute(request: unknown, print: Print, show: Show): Promise<unknown>;
}

type Words = (...words: unknown[]) => void;
type CreateExecutor = (folder: string, converters: unknown, console: { log: Words; error: Words }) => unknown;

const TOGETHER_MS = 50;
const PRINT_LIMIT = 10_000_000; // characters a cell, for stdout and for stderr
const SHOW_LIMIT = 20_000_000; // bytes of displays a cell; a notebook that holds more is hardly to be opened
const FAILURE_LIMIT = 1_000_000; // characters that tell why a cell failed
const MESSAGE_COST = 100; // what a message counts besides its text: its headers take memory too

let failing = false;
let latest: Outputs | undefined;
process.on("exit", () => latest?.settle());

afterLoad<{ JupyterHandlerImpl?: { prototype: Handler } }>("jupyter", ({ JupyterHandlerImpl }) => {
  const handler = JupyterHandlerImpl?.prototype;
  if (!handler?.handleExecute) return;
  const handle = handler.handleExecute;
  handler.handleExecute = async function (request, print, show) {
    const outputs = boundedOutputs(print, show);
    latest = outputs;
    try {
      return await handle.call(this, request, outputs.print, outputs.show);
    } finally {
      outputs.settle();
    }
  };
});

// tslab prints why a cell failed with the console it gives the executor
afterLoad<{ createExecutor?: CreateExecutor }>("executor", (executor) => {
  const create = executor.createExecutor;
  if (!create) return;
  executor.createExecutor = (folder, converters, console) => {
    const error: Words = (...words) => {
      failing = true;
      try {
        console.error(...words);
      } finally {
        failing = false;
      }
    };
    return create(folder, converters, { ...console, error });
  };
});

interface Outputs {
  readonly print: Print;
  readonly show: Show;
  /** sends what waits and tells what was left out */
  readonly settle: () => void;
}

/** The outputs of one cell, within their limits. */
function boundedOutputs(send: Print, sendDisplay: Show): Outputs {
  const room = { stdout: PRINT_LIMIT, stderr: PRINT_LIMIT, displays: SHOW_LIMIT, failure: FAILURE_LIMIT };
  let waiting = "";
  let name: StreamName = "stdout";
  let sentAt = Number.NEGATIVE_INFINITY;
  let timer: NodeJS.Timeout | undefined;
  let isCut = false;
  let leftOut = 0;
  let leftOutBytes = 0;

  const flush = (): void => {
    clearTimeout(timer);
    timer = undefined;
    if (waiting === "") return;
    const text = waiting;
    waiting = "";
    sentAt = performance.now();
    send(name, text);
  };
  const print: Print = (to, text) => {
    if (failing) return fail(to, text);
    if (waiting !== "" && to !== name) flush();
    if (waiting === "") room[to] -= MESSAGE_COST;
    if (room[to] <= 0) return cut();
    name = to;
    waiting += text.slice(0, room[to]);
    room[to] -= text.length;
    if (room[to] < 0) cut();
    else if (performance.now() - sentAt >= TOGETHER_MS) flush();
    else timer ??= setTimeout(flush, TOGETHER_MS);
  };
  const fail: Print = (to, text) => {
    settle();
    if (room.failure > 0) send(to, text.slice(0, room.failure));
    room.failure -= text.length;
  };
  const cut = (): void => {
    flush();
    if (!isCut)
      send("stderr", `\nThe rest of this cell's output is cut: it printed ${PRINT_LIMIT / 1e6} million characters.\n`);
    isCut = true;
  };
  const show: Show = (content, update) => {
    const bytes = Buffer.byteLength(JSON.stringify(content) ?? "");
    if (bytes + MESSAGE_COST > room.displays) {
      if (leftOut++ === 0)
        print("stderr", `A display of ${megabytes(bytes)} is left out: a cell may show ${SHOW_LIMIT / 1e6} MB.\n`);
      leftOutBytes += bytes;
      return;
    }
    room.displays -= bytes + MESSAGE_COST;
    flush();
    sendDisplay(content, update);
  };
  const settle = (): void => {
    if (leftOut > 1) print("stderr", `${leftOut} displays of this cell, ${megabytes(leftOutBytes)}, are left out.\n`);
    leftOut = 0;
    leftOutBytes = 0;
    flush();
  };
  return { print, show, settle };
}

function megabytes(bytes: number): string {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}
