import { describe, expect, it } from "vitest";
import { z } from "zod";
import { expectedOf } from "../../../kernel-lib/library/src/check/expected-of";

const messageOf = (schema: z.ZodType, value: unknown): string => schema.safeParse(value).error?.issues[0].message ?? "";

describe("expectedOf", () => {
  it.each([
    [z.number().min(0), -1, "number to be >=0"],
    [z.string(), undefined, "string"],
    [z.enum(["a", "b"]), "c", 'one of "a"|"b"'],
    [z.array(z.string()).min(1), [], "array to have >=1 items"],
    [z.number("a depth").min(1, "a depth above 1 mm"), 0, "a depth above 1 mm"],
    [z.string().regex(/x/, "expected an x"), "y", "an x"],
  ])("takes the words out of a schema's message (%#)", (schema, value, expected) => {
    expect(expectedOf(messageOf(schema, value))).toBe(expected);
  });
});
