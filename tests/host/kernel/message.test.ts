import fc from "fast-check";
import { decode, encode, request } from "slabwright-host";
import { describe, expect, it } from "vitest";

describe("encode and decode", () => {
  it("carry any content there and back", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), fc.string({ minLength: 1 }), (content, key) => {
        const sent = request("shell", "execute_request", JSON.parse(JSON.stringify(content)), "a-session");
        expect(decode(["routing prefix", ...encode(sent, key)], key, "shell")).toEqual(sent);
      }),
    );
  });

  it("refuse a message that was changed on its way or signed with another key", () => {
    const frames = encode(request("shell", "execute_request", { code: "1" }, "a-session"), "key");
    expect(() => decode(frames, "other key", "shell")).toThrow("must fit its connection key");
    const changed = frames.map((frame) => frame.replace('"code":"1"', '"code":"2"'));
    expect(changed).not.toEqual(frames);
    expect(() => decode(changed, "key", "shell")).toThrow("must fit its connection key");
    expect(() => decode(frames.slice(0, 4), "key", "shell")).toThrow("a delimiter and four parts");
  });

  // The signature of the wire protocol: HMAC-SHA256 over the four JSON parts in order
  // (jupyter-client documentation, "The wire protocol"); the digest was made with Python's hmac module.
  it("sign as the protocol says", () => {
    const header = { msg_id: "1", msg_type: "t", session: "s", username: "u", date: "d", version: "5.3" };
    const frames = encode({ channel: "shell", header, parent_header: {}, metadata: {}, content: { a: 1 } }, "key");
    expect(frames[1]).toBe("a4ef8bbd0654d4a70e00b60596cebf75ea0f7eae90d20d461b1f17692c733d74");
  });
});
