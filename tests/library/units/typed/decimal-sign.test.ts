import { describe, expect, it } from "vitest";
import { decimalSign } from "../../../../kernel-lib/library/src/units/typed/decimal-sign";

const signOf = (...cells: string[]): string | null =>
  decimalSign(
    cells.map((cell) => ({ cells: [cell] })),
    [0],
  );

describe("decimalSign", () => {
  it.each([
    [["8.1", "12"], "."],
    [["8,1; 8,3", "12"], ","],
    [["0,378"], ","],
    [["0.378"], "."],
    [["1.150"], null],
    [["1,150", "12"], null],
    [["1.150", "12,5"], ","],
    [["1,150.5"], null],
    [["8.1", "8,1"], null],
    [[...Array<string>(9).fill("8.1"), "8,1"], "."],
    [["12:30", "n/a", ""], null],
  ])("of %j is %j", (cells, sign) => expect(signOf(...cells)).toBe(sign));

  it("looks at the columns named alone", () => {
    expect(decimalSign([{ cells: ["1,5", "2.5"] }], [1])).toBe(".");
  });
});
