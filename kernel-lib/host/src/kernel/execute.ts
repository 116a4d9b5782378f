import { type Message, request } from "./message";
import { describeEnd, type Kernel } from "./start-kernel";

/** One message of a running cell, as `execute` hands it on. */
export type OnNews = (message: Message) => void;

/** How a cell ended. */
export interface Execution {
  readonly status: "ok" | "error" | "timeout" | "died";
  /** the kernel's own count of executions, null when it gave none */
  readonly executionCount: number | null;
  /** what the host has to say about a timeout or a kernel that died; empty otherwise */
  readonly reason: string;
}

/** What `execute` needs to know. */
export interface ExecuteOptions {
  /** the cell's source */
  readonly code: string;
  /** how long the cell may run, ms */
  readonly limitMs: number;
  /** called with every stream and display message of the cell, in order */
  readonly onNews: OnNews;
}

/**
 * Runs one cell and waits for both its reply and the kernel's "idle". A cell over its limit is interrupted, and when
 * it does not heed that within 3 s the kernel is stopped. One request at a time: a kernel of this kind answers
 * "abort" to whatever reaches it within 200 ms of a failure.
 */
export function execute(kernel: Kernel, options: ExecuteOptions): Promise<Execution> {
  const content = { code: options.code, silent: false, store_history: true, allow_stdin: false, stop_on_error: true };
  const ask = request("shell", "execute_request", content, kernel.session);
  return new Promise((resolve) => {
    let reply: Message | undefined;
    let idle = false;
    let timedOut = false;
    const timers: NodeJS.Timeout[] = [];
    const finish = (status: Execution["status"], reason: string): void => {
      quiet();
      for (const timer of timers) clearTimeout(timer);
      const count = reply?.content.execution_count;
      resolve({ status, executionCount: typeof count === "number" ? count : null, reason });
    };
    const quiet = kernel.listen((message) => {
      if (message.parent_header.msg_id !== ask.header.msg_id) return;
      if (message.header.msg_type === "execute_reply") reply = message;
      else if (message.header.msg_type === "status") idle ||= message.content.execution_state === "idle";
      else options.onNews(message);
      if (!reply || !idle) return;
      if (timedOut) finish("timeout", over(options.limitMs));
      else finish(reply.content.status === "ok" ? "ok" : "error", "");
    });
    timers.push(
      setTimeout(() => {
        timedOut = true;
        kernel.interrupt();
        timers.push(setTimeout(() => void kernel.stop(), 3000));
      }, options.limitMs),
    );
    void kernel.ended.then((end) => {
      if (timedOut) finish("timeout", `${over(options.limitMs)}, and the kernel had to be stopped`);
      else finish("died", `the kernel ended while this cell ran (${describeEnd(end)})`);
    });
    kernel.send(ask).catch(() => {}); // a kernel that is gone is told by `ended`
  });
}

function over(limitMs: number): string {
  return `the cell ran longer than its limit of ${limitMs / 1000} s`;
}
