import { describe, expect, it } from "vitest";
import { orTooLittle } from "../../../kernel-lib/library/src/check/or-too-little";
import { isTooLittle, tooLittle } from "../../../kernel-lib/library/src/check/too-little";

const caught = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (error) {
    return error;
  }
};

describe("tooLittle", () => {
  it("throws the sentence as it stands, with where it was asked as the cause", () => {
    const error = caught(() => tooLittle("reheatYield", "Log two more.")) as Error;
    expect(isTooLittle(error)).toBe(true);
    expect({ name: error.name, message: error.message, cause: error.cause }).toEqual({
      name: "TooLittle",
      message: "Log two more.",
      cause: "reheatYield",
    });
  });

  it("is told from every other error, and from what is no error", () => {
    for (const other of [new RangeError("TooLittle"), new Error("x"), { name: "TooLittle" }, null, "TooLittle"])
      expect(isTooLittle(other)).toBe(false);
  });
});

describe("orTooLittle", () => {
  it("gives what the work gives, without asking for the sentence", () => {
    const sentence = (): string => expect.fail("asked for");
    expect(orTooLittle("here", sentence, () => 7)).toBe(7);
  });

  it("says the sentence where the data are refused, and lets all else through", () => {
    const refused = caught(() =>
      orTooLittle(
        "here",
        () => "Log more.",
        () => {
          throw new RangeError("fitLinear: y must hold more observations than the 3 coefficients");
        },
      ),
    );
    expect(isTooLittle(refused) && refused.message).toBe("Log more.");
    const broken = new TypeError("undefined is not a function");
    const passed = caught(() =>
      orTooLittle(
        "here",
        () => "Log more.",
        () => {
          throw broken;
        },
      ),
    );
    expect(passed).toBe(broken);
  });
});
