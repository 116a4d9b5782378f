import { errorOutput } from "slabwright-host";
import { expect, it } from "vitest";
import { errorWords, type KernelError } from "../../../kernel-lib/host/src/notebook/error-words";

const wordsOf = (text: string): ReturnType<typeof errorWords> =>
  errorWords(errorOutput(text, "") as unknown as KernelError);

it("gives the whole message first, also of several lines and of an error with a name of its own", () => {
  const text = [
    "evalmachine.<anonymous>:6",
    "throw e;",
    "^",
    "",
    "TooLittle: Log two more trials.",
    "One of them thicker.",
    "    at evalmachine.<anonymous>:3:11",
  ].join("\n");
  const { sentence, where } = wordsOf(text);
  expect(sentence).toBe("Log two more trials.\nOne of them thicker.");
  expect(where).toBe(text);
});

it("has nothing to fold where the kernel said no more than the sentence", () => {
  expect(wordsOf("just words")).toEqual({ sentence: "just words", where: "" });
  expect(wordsOf("RangeError: too thick")).toEqual({ sentence: "too thick", where: "" });
});

it("reads what other kernels store, colours and all", () => {
  const stored = { ename: "E", evalue: "", traceback: ["\u001b[31mE\u001b[0m", "line 1"] };
  expect(errorWords(stored)).toEqual({ sentence: "E", where: "E\nline 1" });
});
