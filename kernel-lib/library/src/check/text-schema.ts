import { z } from "zod";

/** The longest name and the longest note of a kitchen's files: our judgement. */
const LONGEST_NAME = 300;
const LONGEST_NOTE = 2000;

/** A name as files give it: not empty, without control characters, at most a few lines long; `what` says of what. */
export function nameSchema(what: string = "a name"): z.ZodType<string> {
  return z
    .string(what)
    .min(1, what)
    .max(LONGEST_NAME, `${what} of at most ${LONGEST_NAME} characters`)
    .regex(/^\P{Cc}*$/u, `${what} without control characters`);
}

/** A remark as files give it, or none. */
export function noteSchema(): z.ZodType<string | null> {
  return z.string().max(LONGEST_NOTE, `a note of at most ${LONGEST_NOTE} characters`).nullable();
}

/** An id of lower-case words joined by hyphens, as long as the longest name that it can be made from. */
export function kebabSchema(): z.ZodType<string> {
  return z
    .string()
    .max(LONGEST_NAME, `expected at most ${LONGEST_NAME} characters`)
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "expected lower-case words joined by hyphens");
}
