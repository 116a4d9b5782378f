import { z } from "zod";

/** An id as files use it: up to 100 letters, digits, points and dashes; `what` is the message when it is not one. */
export function idSchema(what: string): z.ZodType<string> {
  return z.string(what).regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,99}$/, what);
}
