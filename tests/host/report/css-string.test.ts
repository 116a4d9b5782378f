import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cssString } from "../../../kernel-lib/host/src/report/css-string";

/** A string of a style sheet as CSS Syntax Module Level 3 reads it (4.3.5 and 4.3.7). */
const read = (css: string): string =>
  css.slice(1, -1).replace(/\\([0-9a-f]{1,6}) ?/g, (_, hex) => String.fromCodePoint(Number.parseInt(hex, 16)));

describe("cssString", () => {
  it("cannot end the string, the style sheet or its element", () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: "binary" }), fc.constant('</style><script>"\\\n}')), (text) => {
        const css = cssString(text);
        expect(css.slice(1, -1)).not.toMatch(/["'<>{}\n\r\f]|\\(?![0-9a-f]{1,6} )/);
        expect(read(css)).toBe(text);
      }),
    );
  });
});
