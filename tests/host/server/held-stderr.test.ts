import { heldStderr, type Message, request } from "slabwright-host";
import { describe, expect, it } from "vitest";

const said = (text: string): Message => request("shell", "stream", { name: "stderr", text }, "a-session");

function holder(): { passed: string[]; stderr: ReturnType<typeof heldStderr> } {
  const passed: string[] = [];
  return { passed, stderr: heldStderr(({ content }) => passed.push(String(content.text)), 60_000) };
}

describe("heldStderr", () => {
  it("holds the last message alone and passes on those before it", () => {
    const { passed, stderr } = holder();
    for (const text of ["one\n", "two\n", "three\n"]) stderr.hold(said(text));
    expect(passed).toEqual(["one\n", "two\n"]);
    expect(stderr.take()).toBe("three\n");
    stderr.release();
    expect(passed).toEqual(["one\n", "two\n"]);
  });

  it("holds the compiler's lines together, and nothing else with them", () => {
    const { passed, stderr } = holder();
    for (const text of ["a notice\n", "1:7 - no\n", "./helper.ts 2:1 - no\n"]) stderr.hold(said(text));
    expect(passed).toEqual(["a notice\n"]);
    expect(stderr.take()).toBe("1:7 - no\n./helper.ts 2:1 - no\n");
    for (const text of ["1:7 - no\n", "2:7 - no\n", "Error: no\n"]) stderr.hold(said(text));
    expect(passed).toEqual(["a notice\n", "1:7 - no\n", "2:7 - no\n"]);
    expect(stderr.take()).toBe("Error: no\n");
  });

  it("passes on in order what nobody took", () => {
    const { passed, stderr } = holder();
    for (const text of ["1:7 - no\n", "2:7 - no\n"]) stderr.hold(said(text));
    stderr.release();
    expect(passed).toEqual(["1:7 - no\n", "2:7 - no\n"]);
    expect(stderr.take()).toBe("");
  });

  // with every line looked at again for each that comes, this takes minutes
  it("holds 50,000 of the compiler's lines", () => {
    const { passed, stderr } = holder();
    for (let line = 0; line < 50_000; line++) stderr.hold(said(`${line}:1 - no\n`));
    expect(passed).toEqual([]);
    expect(stderr.take().split("\n")).toHaveLength(50_001);
  });
});
