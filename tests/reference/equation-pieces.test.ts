import fc from "fast-check";
import { expect, it } from "vitest";
import { equationPieces } from "../../kernel-lib/reference/src/equation-pieces";

const written = (text: string): string =>
  equationPieces(text)
    .map(({ at, text: words }) => (at === "line" ? words : `<${at}>${words}</${at}>`))
    .join("");

it.each([
  ["F = ∫10^((T − Tref)/z) dt", "F = ∫10<sup>(T − Tref)/z</sup> dt"],
  ["exp(a₀)·β^−q·σ^(w + w₁·ln Bi)", "exp(a₀)·β<sup>−q</sup>·σ<sup>w + w₁·ln Bi</sup>"],
  ["m_after · p", "m<sub>after</sub> · p"],
  ["(S/m)_ref", "(S/m)<sub>ref</sub>"],
  ["x^(1", "x^(1"],
  ["thicknessMm and _so_", "thicknessMm and _so_"],
])("%s", (text, wanted) => {
  expect(written(text)).toBe(wanted);
});

it("leaves words alone in prose", () => {
  const prose = equationPieces("thickness_in, y = e^(−rate x), T_ref", true);
  expect(prose.filter(({ at }) => at !== "line")).toEqual([
    { at: "sup", text: "−rate x" },
    { at: "sub", text: "ref" },
  ]);
});

it("loses no letter of any text", () => {
  const letters = (text: string): string => text.replace(/[\^_()]/g, "");
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom("a", "Ω", "2", "^", "_", "(", ")", " ", "−", "<") }), (text) => {
      expect(
        letters(
          equationPieces(text)
            .map((piece) => piece.text)
            .join(""),
        ),
      ).toBe(letters(text));
    }),
  );
});
