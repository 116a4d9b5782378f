import { resolve } from "node:path";
import { decode, encode, type Kernel, type Message, request, startKernel } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Dealer } from "zeromq";
import { type RegisteredKernel, startRegistered } from "./wire";

type Ask = (type: string, code: string, cursor: number) => Promise<Message["content"]>;

/** What every kernel with the mend answers, whoever started it. */
function answers(ask: () => Ask): void {
  /** Asks at the `|`, counted in code points as the protocol does. */
  const at = (type: string, marked: string): Promise<Message["content"]> =>
    ask()(type, marked.replace("|", ""), [...marked.slice(0, marked.indexOf("|"))].length);
  const completed = async (marked: string): Promise<{ matches: string[]; line: string }> => {
    const { matches, cursor_start, cursor_end } = (await at("complete_request", marked)) as never as {
      matches: string[];
      cursor_start: number;
      cursor_end: number;
    };
    const points = [...marked.replace("|", "")];
    const line = [...points.slice(0, cursor_start), matches[0], ...points.slice(cursor_end)].join("");
    return { matches, line };
  };
  const inspected = async (marked: string): Promise<string> =>
    ((await at("inspect_request", marked)).data as Record<string, string>)["text/plain"] ?? "";

  it("completes an import that is not finished, and its door", async () => {
    expect((await completed("import { lo|")).line).toBe("import { loadKitchen");
    expect((await completed("import { loadKitchen, va|")).matches).toContain("variantOf");
    expect((await completed("import { loadKitchen, variantOf| }")).line).toBe(
      'import { loadKitchen, variantOf } from "slabwright";',
    );
    expect((await completed("import { simulateSlab|")).line).toBe('import { simulateSlab } from "slabwright/heat";');
    expect((await completed('import { loadK| } from "slabwright"')).matches).toEqual(["loadKitchen"]);
    expect((await completed('import { readFileS| } from "node:fs"')).matches).toEqual(["readFileSync"]);
  });

  it("counts the cursor in code points", async () => {
    expect((await completed("// 😀🍞\nMath.hyp|;")).line).toBe("// 😀🍞\nMath.hypot;");
    expect((await completed("// 😀🍞\nimport { loadKit|")).line).toBe("// 😀🍞\nimport { loadKitchen");
    expect(await inspected("const 温 = '😀😀😀'; Math.hyp|ot")).toContain("square root of the sum of squares");
  });

  it("tells of the function whose call is under way, imported or not", async () => {
    const told = "The reheat card of a variant";
    expect(await inspected('import { reheatCard } from "slabwright";\nreheatCard({ |')).toContain(told);
    expect(await inspected("reheatCard({ |")).toContain(told);
    expect(await inspected("const card = reheat|Card")).toContain(told);
    const both = await inspected('import { reheatCard } from "slabwright";\nreheatCard({ variant|Id: "a" })');
    expect(both).toMatch(/variantId: string[\s\S]*The reheat card of a variant/);
    expect(await inspected("1 + |")).toBe("");
  });
}

describe("a kernel that the host starts", () => {
  let kernel: Kernel;
  beforeAll(async () => {
    kernel = await startKernel({ folder: resolve("notebooks") });
  }, 60_000);
  afterAll(() => kernel?.stop());
  answers(() => (type, code, cursor_pos) => {
    const asked = request("shell", type, { code, cursor_pos, detail_level: 0 }, kernel.session);
    return new Promise((answer) => {
      const quiet = kernel.listen(({ channel, parent_header, content }) => {
        if (channel !== "shell" || parent_header.msg_id !== asked.header.msg_id) return;
        quiet();
        answer(content);
      });
      void kernel.send(asked);
    });
  });
});

describe("a kernel that another Jupyter program starts", () => {
  let kernel: RegisteredKernel;
  let shell: Dealer;
  beforeAll(async () => {
    kernel = await startRegistered(resolve("notebooks"));
    shell = new Dealer({ linger: 0 });
    shell.connect(`tcp://127.0.0.1:${kernel.connection.shell_port}`);
  }, 60_000);
  afterAll(() => {
    shell?.close();
    kernel?.child.kill("SIGKILL");
  });
  answers(() => async (type, code, cursor_pos) => {
    const { key } = kernel.connection;
    const asked = request("shell", type, { code, cursor_pos, detail_level: 0 }, "a-session");
    await shell.send(encode(asked, key));
    for await (const frames of shell) {
      const { parent_header, content } = decode(frames.map(String), key, "shell");
      if (parent_header.msg_id === asked.header.msg_id) return content;
    }
    throw new Error("the kernel must answer");
  });
});
