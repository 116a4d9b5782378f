import type { Message } from "../kernel/message";
import { isCompilerLine } from "../notebook/collect-outputs";

/**
 * Holds back what a cell last wrote to stderr for a moment. tslab tells of a failure only by printing it: held back,
 * it can be sent as the error that front ends expect, and is not shown twice.
 */
export interface HeldStderr {
  /** takes one stderr message; passes on those before it that cannot be the failure */
  readonly hold: (message: Message) => void;
  /** passes on all that is held */
  readonly release: () => void;
  /** the failure's text, which is what is held */
  readonly take: () => string;
}

/** Messages not taken within `afterMs` are passed on. */
export function heldStderr(pass: (message: Message) => void, afterMs: number): HeldStderr {
  const held: Message[] = [];
  let timer: NodeJS.Timeout | undefined;
  const textOf = ({ content }: Message): string => String(content.text ?? "");
  const release = (): void => {
    clearTimeout(timer);
    for (const message of held.splice(0)) pass(message);
  };
  return {
    hold: (message) => {
      // the compiler's lines belong together; any other failure is one message, the last
      const together = held.length > 0 && [held[0], message].every((one) => isCompilerLine(textOf(one)));
      if (!together) release();
      held.push(message);
      clearTimeout(timer);
      timer = setTimeout(release, afterMs);
    },
    release,
    take: () => {
      clearTimeout(timer);
      return held.splice(0).map(textOf).join("");
    },
  };
}
