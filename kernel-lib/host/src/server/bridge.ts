import { type Message, request } from "../kernel/message";
import type { Kernel } from "../kernel/start-kernel";
import { errorOutput, parsedData } from "../notebook/collect-outputs";
import { type HeldStderr, heldStderr } from "./held-stderr";
import { LANGUAGE_INFO } from "./kernelspec";
import type { Digests } from "./noted-reads";

/** A page that is connected to a kernel. */
export interface Client {
  readonly send: (message: Message) => void;
}

/**
 * Stands between pages and one kernel and mends where tslab departs from Jupyter's protocol: one execution at a time
 * with `execute_input` and a numeric count, `error` messages made from what was printed, `aborted` for what waited
 * behind a failure, answers to what the kernel would leave unanswered.
 */
export interface Bridge {
  /** the kernel to talk to, from its start or after a restart */
  readonly connect: (kernel: Kernel) => void;
  /** the kernel is gone: the running cell ends with `reason`, what waited is aborted, pages are told `state` if any */
  readonly lose: (reason: string, state: "restarting" | "dead" | null) => void;
  readonly join: (client: Client) => () => void;
  readonly receive: (client: Client, message: Message) => void;
  readonly state: () => { execution_state: string; connections: number; last_activity: string };
}

interface Waiting {
  readonly client: Client;
  readonly message: Message;
}

interface Running extends Waiting {
  readonly stderr: HeldStderr;
  count: number;
  started: boolean;
  reply?: Message;
  idle?: Message;
}

const FORWARDED = new Set(
  ["kernel_info", "complete", "inspect", "is_complete", "comm_info"].map((name) => `${name}_request`),
);
const AFTER_FAILURE_MS = 250; // the kernel refuses work for 200 ms

/**
 * A bridge for one kernel; `interrupt` is called when a page asks for it over the control channel, `reads` after each cell: what
 * it gives goes along with the reply as metadata.
 */
export function bridge(interrupt: () => void, reads?: () => Digests): Bridge {
  const clients = new Set<Client>();
  const asked = new Map<string, Client>();
  let kernel: Kernel | null = null;
  let early: Waiting[] = [];
  let queue: Waiting[] = [];
  let running: Running | null = null;
  let resting = false;
  let count = 0;
  let state = "starting";
  let lastActivity = new Date();

  const broadcast = (message: Message): void => {
    for (const client of clients) client.send(message);
  };
  const make = (
    channel: Message["channel"],
    type: string,
    content: Record<string, unknown>,
    parent?: Message,
  ): Message => ({
    ...request(channel, type, content, kernel?.session ?? ""),
    parent_header: parent?.header ?? {},
  });
  const news = (type: string, content: Record<string, unknown>, parent?: Message): void => {
    if (type === "status") state = String(content.execution_state);
    broadcast(make("iopub", type, content, parent));
  };

  const next = (): void => {
    if (running || resting || !kernel) return;
    const waiting = queue.shift();
    if (!waiting) return;
    const stderr = heldStderr(broadcast, 300);
    running = { ...waiting, stderr, count: ++count, started: false };
    const cell = running;
    kernel.send({ ...waiting.message, channel: "shell" }).catch((error) => {
      if (running !== cell) return;
      fail(cell, `the kernel could not be asked: ${(error as Error).message}`);
      next();
    });
  };

  const finish = (done: Running, reply: Message, idle: Message): void => {
    running = null;
    const failed = reply.content.status !== "ok";
    if (reads) reply.metadata = { ...reply.metadata, slabwright: { reads: reads() } };
    if (!failed) done.stderr.release();
    else {
      const { output_type: _, ...error } = errorOutput(done.stderr.take(), "", String(done.message.content.code));
      news("error", error, done.message);
      reply.content = { ...reply.content, status: "error", execution_count: done.count, ...error };
      if (done.message.content.stop_on_error !== false) abort(queue.splice(0));
      resting = true;
      setTimeout(() => {
        resting = false;
        next();
      }, AFTER_FAILURE_MS);
    }
    done.client.send(reply);
    state = queue.length > 0 ? "busy" : "idle";
    broadcast(idle);
    next();
  };

  const abort = (waiting: readonly Waiting[]): void => {
    for (const { client, message } of waiting) {
      news("status", { execution_state: "busy" }, message);
      client.send(make("shell", "execute_reply", { status: "aborted", execution_count: null }, message));
      news("status", { execution_state: "idle" }, message);
    }
  };

  /** ends the running cell for a reason of the host's own */
  const fail = ({ client, message, count, stderr }: Running, reason: string): void => {
    running = null;
    stderr.release();
    const { output_type: _, ...error } = errorOutput("", reason);
    news("error", error, message);
    client.send(make("shell", "execute_reply", { status: "error", execution_count: count, ...error }, message));
    news("status", { execution_state: "idle" }, message);
  };

  const ofRunningCell = (cell: Running, message: Message): void => {
    const { msg_type } = message.header;
    if (msg_type === "execute_reply") cell.reply = message;
    else if (msg_type === "status" && message.content.execution_state === "idle") cell.idle = message;
    else if (msg_type === "status") {
      state = "busy";
      broadcast(message);
      if (!cell.started)
        news("execute_input", { code: cell.message.content.code, execution_count: cell.count }, cell.message);
      cell.started = true;
    } else if (msg_type === "stream" && message.content.name === "stderr") cell.stderr.hold(message);
    else {
      cell.stderr.release();
      broadcast(mendedNews(message));
    }
    if (cell.reply && cell.idle) finish(cell, cell.reply, cell.idle);
  };

  const fromKernel = (message: Message): void => {
    lastActivity = new Date();
    const parent = String(message.parent_header.msg_id ?? "");
    if (running && parent === running.message.header.msg_id) ofRunningCell(running, message);
    else if (message.channel === "iopub") {
      if (message.parent_header.session === kernel?.session) return; // the host's own questions
      if (message.header.msg_type === "status" && running) return; // a completion in the middle of a cell
      if (message.header.msg_type === "status") state = String(message.content.execution_state);
      broadcast(message);
    } else {
      asked.get(parent)?.send(mendedReply(message));
      asked.delete(parent);
    }
  };

  const receive = (client: Client, message: Message): void => {
    lastActivity = new Date();
    const type = message.header.msg_type;
    if (state === "dead") {
      if (type === "execute_request") abort([{ client, message }]);
      news("status", { execution_state: "dead" });
    } else if (type === "interrupt_request") {
      interrupt();
      client.send(make("control", "interrupt_reply", { status: "ok" }, message));
    } else if (type === "history_request") {
      client.send(make("shell", "history_reply", { status: "ok", history: [] }, message));
    } else if (type === "execute_request" && typeof message.content.code === "string") {
      if (queue.length >= 1000) abort([{ client, message }]);
      else queue.push({ client, message });
      next();
    } else if (FORWARDED.has(type)) {
      if (!kernel) {
        if (early.length < 1000) early.push({ client, message });
        return;
      }
      if (asked.size > 1000) asked.clear();
      asked.set(message.header.msg_id, client);
      void kernel.send(message).catch(() => {});
    }
  };

  return {
    connect: (started) => {
      kernel = started;
      count = 0;
      state = "idle";
      started.listen((message) => {
        if (kernel === started) fromKernel(message);
      });
      for (const { client, message } of early.splice(0)) receive(client, message);
      next();
    },
    lose: (reason, how) => {
      if (running) fail(running, reason);
      abort(queue.splice(0));
      early = [];
      asked.clear();
      kernel = null;
      state = how ?? "starting";
      if (how) news("status", { execution_state: how });
    },
    join: (client) => {
      clients.add(client);
      return () => {
        clients.delete(client);
        for (const [id, asker] of asked) if (asker === client) asked.delete(id);
        queue = queue.filter((waiting) => waiting.client !== client);
      };
    },
    receive,
    state: () => ({ execution_state: state, connections: clients.size, last_activity: lastActivity.toISOString() }),
  };
}

/** A display whose JSON kinds are values, not text. */
function mendedNews(message: Message): Message {
  if (!message.content.data) return message;
  return { ...message, content: { ...message.content, data: parsedData(message.content.data) } };
}

/** A reply with the fields and the type that the protocol asks for. */
function mendedReply(message: Message): Message {
  const content: Record<string, unknown> = { status: "ok", ...message.content };
  const asked = message.parent_header.msg_type;
  if (asked === "comm_info_request")
    return { ...message, content, header: { ...message.header, msg_type: "comm_info_reply" } };
  if (asked === "kernel_info_request") content.language_info = LANGUAGE_INFO;
  return { ...message, content };
}
