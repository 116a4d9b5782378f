import type { Message } from "../kernel/message";
import { failureText } from "../notebook/collect-outputs";

/**
 * Holds back what a cell last wrote to stderr for a moment. tslab tells of a failure only by printing it: held back,
 * it can be sent as the error that front ends expect, and is not shown twice.
 */
export interface HeldStderr {
  /** takes one stderr message; passes on those before it that cannot be the failure */
  readonly hold: (message: Message) => void;
  /** passes on all that is held */
  readonly release: () => void;
  /** the failure's text; what was held besides it is passed on */
  readonly take: () => string;
}

/** Messages not taken within `afterMs` are passed on. */
export function heldStderr(pass: (message: Message) => void, afterMs: number): HeldStderr {
  let held: Message[] = [];
  let timer: NodeJS.Timeout | undefined;
  const texts = (): string[] => held.map(({ content }) => String(content.text ?? ""));
  const release = (): void => {
    clearTimeout(timer);
    for (const message of held.splice(0)) pass(message);
  };
  const passAllBut = (kept: string): void => {
    while (held.length > 0 && texts().join("") !== kept) pass(held.shift() as Message);
  };
  return {
    hold: (message) => {
      held.push(message);
      passAllBut(failureText(texts()));
      clearTimeout(timer);
      timer = setTimeout(release, afterMs);
    },
    release,
    take: () => {
      clearTimeout(timer);
      const text = failureText(texts());
      passAllBut(text);
      held = [];
      return text;
    },
  };
}
