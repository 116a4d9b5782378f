import { expect, it } from "vitest";
import { counted } from "../../../kernel-lib/library/src/check/counted";

it("counts one thing apart from none and several", () => {
  expect([0, 1, 2].map((count) => counted(count, "trial"))).toEqual(["0 trials", "1 trial", "2 trials"]);
});
