import { afterEach, describe, expect, it, vi } from "vitest";
import { tooLittle } from "../../../kernel-lib/library/src/check/too-little";
import { chosenVariants } from "../../../kernel-lib/library/src/notebook/chosen-variants";
import { eachVariant } from "../../../kernel-lib/library/src/notebook/each-variant";
import { kernelDisplay } from "../../../kernel-lib/library/src/notebook/kernel-display";
import { whereEnough } from "../../../kernel-lib/library/src/notebook/where-enough";
import type { Kitchen } from "../../../kernel-lib/library/src/trials/kitchen";

vi.mock("../../../kernel-lib/library/src/notebook/kernel-display", () => ({ kernelDisplay: vi.fn(() => null) }));

afterEach(() => {
  vi.unstubAllEnvs();
  vi.mocked(kernelDisplay).mockReturnValue(null);
});

const kitchenOf = (...ids: string[]): Kitchen =>
  ({ variants: ids.map((variantId) => ({ variantId, name: `the <${variantId}>` })) }) as unknown as Kitchen;

/** What the work shows in a kernel, as HTML. */
function shownBy(work: () => void): unknown[] {
  const shown: unknown[] = [];
  vi.mocked(kernelDisplay).mockReturnValue((bundle) => shown.push(bundle["text/html"]));
  work();
  return shown;
}

describe("eachVariant", () => {
  it("runs the part for every variant in order, each under its name", () => {
    const ids: string[] = [];
    const shown = shownBy(() => eachVariant({ kitchen: kitchenOf("a", "b") }, (one) => ids.push(one.variantId)));
    expect(ids).toEqual(["a", "b"]);
    expect(shown).toEqual(["<h3>the &lt;a&gt;</h3>", "<h3>the &lt;b&gt;</h3>"]);
  });

  it("needs no heading for a single variant", () => {
    expect(shownBy(() => eachVariant({ kitchen: kitchenOf("a") }, () => {}))).toEqual([]);
  });

  it("says what to log where there is too little, and goes on with the next", () => {
    const done: string[] = [];
    const shown = shownBy(() =>
      eachVariant({ kitchen: kitchenOf("a", "b") }, ({ variantId }) => {
        if (variantId === "a") tooLittle("here", "Log two more.");
        done.push(variantId);
      }),
    );
    expect(done).toEqual(["b"]);
    expect(shown[1]).toBe("<p>Too little yet. Log two more.</p>");
  });

  it("lets every other error pass", () => {
    const broken = (): void => {
      throw new RangeError("a slip");
    };
    expect(() => shownBy(() => eachVariant({ kitchen: kitchenOf("a") }, broken))).toThrow("a slip");
  });
});

describe("chosenVariants", () => {
  const ids = (kitchen: Kitchen, variantId?: string): string[] =>
    chosenVariants({ kitchen, variantId }).map((variant) => variant.variantId);

  it("takes all, the one given, or the one that the environment names; what is given wins", () => {
    const kitchen = kitchenOf("oat", "rye");
    expect(ids(kitchen)).toEqual(["oat", "rye"]);
    expect(ids(kitchen, "rye")).toEqual(["rye"]);
    vi.stubEnv("SLABWRIGHT_VARIANT", "oat");
    expect(ids(kitchen)).toEqual(["oat"]);
    expect(ids(kitchen, "rye")).toEqual(["rye"]);
    vi.stubEnv("SLABWRIGHT_VARIANT", "");
    expect(ids(kitchen)).toEqual(["oat", "rye"]);
  });

  it("refuses an unknown name with those that are known, and says where it was given", () => {
    expect(() => ids(kitchenOf("oats", "rye"), "oat")).toThrow(
      'chosenVariants: variantId must be one of the kitchen\'s variants, oats, rye (nearest: oats), got "oat"',
    );
    vi.stubEnv("SLABWRIGHT_VARIANT", "barley");
    expect(() => ids(kitchenOf("oats"))).toThrow("SLABWRIGHT_VARIANT must be one of");
  });
});

describe("whereEnough", () => {
  it("gives what the part gives, and null where there was too little", () => {
    expect(whereEnough(() => 3)).toBe(3);
    expect(shownBy(() => expect(whereEnough(() => tooLittle("here", "Log one."))).toBeNull())).toHaveLength(1);
  });
});
