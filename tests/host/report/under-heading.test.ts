import { describe, expect, it } from "vitest";
import { underHeading } from "../../../kernel-lib/host/src/report/under-heading";

describe("underHeading", () => {
  it("puts headings one below that above them, and keeps their order among each other", () => {
    expect(underHeading('<h4>a</h4><p>h1</p><h5 lang="en">b</h5>', 1)).toBe('<h2>a</h2><p>h1</p><h3 lang="en">b</h3>');
    expect(underHeading("<h1>a</h1><h6>b</h6>", 3)).toBe("<h4>a</h4><h6>b</h6>");
    expect(underHeading("<hr><header>", 1)).toBe("<hr><header>");
  });
});
