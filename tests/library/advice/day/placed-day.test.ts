import { describe, expect, test } from "vitest";
import { placedDay } from "../../../../kernel-lib/library/src/advice/day/placed-day";

const tasks = [
  { id: "spread", duration: 10, uses: { hands: 1 } },
  { id: "cut", duration: 10, uses: { hands: 1 } },
];
const resources = [{ id: "hands", capacity: 1 }];

describe("placedDay", () => {
  test("says in words for a cook that a day does not fit, and leaves slips of a call as they are", () => {
    expect(placedDay({ tasks, resources, links: [], tries: 2 }).length).toBe(20);
    expect(() => placedDay({ tasks, resources, links: [], tries: 2, horizon: 15 })).toThrow(
      expect.objectContaining({
        name: "TooLittle",
        message: expect.stringMatching(/^No plan was found that fits into three days/),
      }),
    );
    expect(() => placedDay({ tasks, resources, links: [{ before: "spread", after: "x" }], tries: 2 })).toThrow(
      /must name tasks/,
    );
  });
});
