import { closeSync, openSync, readFileSync, realpathSync, rmSync, statSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";
import { fail } from "../../check/check";

/** How long somebody waits for a log before it is said to be held (ms): our judgement; an append takes a few. */
const LONGEST_WAIT_MS = 20_000;
/** A lock from another machine that is older than this was left behind (ms): our judgement. */
const LEFT_BEHIND_MS = 60_000;
/** How long the next in line may take to step in (ms): our judgement. */
const NEXT_MS = 200;

/**
 * Does some work on a file while no other process does: each makes a lock file beside it, which only one can. The lock of
 * a process that has ended is taken over. Who waits is next: a process that asks again and again cannot keep it out.
 *
 * @param path the file, which need not be there yet; a link is followed
 * @returns what the work returns; throws when the file stays locked for 20 s, naming who holds it
 */
export function whileLocked<T>(path: string, work: () => T): T {
  const target = realOf(path);
  const lock = join(dirname(target), `.${basename(target)}.lock`);
  const next = `${lock}.next`;
  const until = Date.now() + LONGEST_WAIT_MS;
  let isNext = false;
  try {
    while ((!isNext && isWaitedFor(next)) || !take(lock)) {
      if (Date.now() > until)
        fail("whileLocked: the log", `must be free within ${LONGEST_WAIT_MS / 1000} s`, holder(lock));
      if (isLeftBehind(lock)) takeOver(lock);
      isNext ||= take(next);
      rest(isNext ? 0.5 : 2);
    }
  } finally {
    if (isNext) rmSync(next, { force: true });
  }
  try {
    return work();
  } finally {
    rmSync(lock, { force: true });
  }
}

function realOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

/** Makes a file that says who made it; false when it is there already. */
function take(file: string): boolean {
  let handle: number;
  try {
    handle = openSync(file, "wx", 0o600);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
  try {
    writeFileSync(handle, `${process.pid} ${hostname()}`);
  } finally {
    closeSync(handle);
  }
  return true;
}

function holder(lock: string): string {
  try {
    const [pid, host] = readFileSync(lock, "utf8").split(" ");
    return `a lock of process ${pid} on ${host}: remove ${basename(lock)} if that has ended`;
  } catch {
    return "a lock";
  }
}

function isWaitedFor(next: string): boolean {
  const age = ageMs(next);
  if (age === null) return false;
  if (age < NEXT_MS) return true;
  rmSync(next, { force: true });
  return false;
}

function ageMs(file: string): number | null {
  const info = statSync(file, { throwIfNoEntry: false });
  return info === undefined ? null : Date.now() - info.mtimeMs;
}

function isLeftBehind(lock: string): boolean {
  const age = ageMs(lock);
  if (age === null) return false;
  let words: string;
  try {
    words = readFileSync(lock, "utf8");
  } catch {
    return false;
  }
  const [pid, host] = words.split(" ");
  // a process may end between making the file and writing its name
  if (words === "") return age > NEXT_MS;
  return host === hostname() ? !isRunning(Number(pid)) : age > LEFT_BEHIND_MS;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}

/** One at a time looks again and removes what was left behind: two could else remove each other's new lock. */
function takeOver(lock: string): void {
  const taking = `${lock}.taking`;
  if (!take(taking)) {
    const age = ageMs(taking);
    if (age !== null && age > NEXT_MS) rmSync(taking, { force: true });
    return;
  }
  try {
    if (isLeftBehind(lock)) rmSync(lock, { force: true });
  } finally {
    rmSync(taking, { force: true });
  }
}

const CLOCK = new Int32Array(new SharedArrayBuffer(4));

function rest(ms: number): void {
  Atomics.wait(CLOCK, 0, 0, ms);
}
