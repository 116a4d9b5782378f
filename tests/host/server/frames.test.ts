import fc from "fast-check";
import { decodeJson, decodeV1, encodeV1, request } from "slabwright-host";
import { describe, expect, it } from "vitest";

describe("encodeV1 and decodeV1", () => {
  it("carry any content there and back", () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (content) => {
        const message = request("shell", "execute_request", JSON.parse(JSON.stringify(content)), "ünïcode");
        expect(decodeV1(encodeV1(message))).toEqual(message);
      }),
    );
  });

  it("refuse whatever was damaged, and never anything but an error comes of it", () => {
    const frame = encodeV1(request("shell", "execute_request", { code: "1" }, "s"));
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(frame.length - 1), fc.nat(255)), { minLength: 1 }),
        fc.nat(frame.length),
        (changes, cut) => {
          const damaged = frame.slice(0, cut);
          for (const [at, byte] of changes) if (at < cut) damaged[at] = byte;
          try {
            const { header, content } = decodeV1(damaged);
            expect([typeof header.msg_id, typeof header.msg_type, typeof content]).toEqual([
              "string",
              "string",
              "object",
            ]);
          } catch (error) {
            expect(error).toBeInstanceOf(Error);
          }
        },
      ),
      { numRuns: 2000 },
    );
    expect(() => decodeV1(new Uint8Array(0))).toThrow("must hold its table");
    expect(() => decodeV1(frame.slice(0, 60))).toThrow("offsets must rise within the frame");
    expect(() => decodeV1(new Uint8Array(64).fill(255))).toThrow("at least six offsets");
  });

  it.each([
    "",
    "null",
    "[]",
    "1",
    '{"channel":"shell"}',
    '{"channel":"iopub","header":{"msg_id":"1","msg_type":"x"},"content":{}}',
    '{"channel":"shell","header":{"msg_id":1,"msg_type":"x"},"content":{}}',
  ])("decodeJson refuses %j", (text) => expect(() => decodeJson(text)).toThrow());
});
