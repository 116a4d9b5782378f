import { z } from "zod";
import { readDay } from "../log/cell/read-day";

/** A day of the calendar as people type it, `2026-03-14` or `14 Mar 2026`; kept as `2026-03-14`. */
export function daySchema(): z.ZodType<string, string> {
  return z.string("a day such as 2026-03-14").transform((text, context) => {
    const read = readDay(text.trim(), null);
    if ("day" in read) return read.day;
    context.addIssue({ code: "custom", message: read.expected.replace(/, and the heading .*$/, "") });
    return z.NEVER;
  });
}
