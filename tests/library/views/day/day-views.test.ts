import { batchDay } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { dayFigure, dayNote, dayPage, dayTable } from "slabwright/views";
import { describe, expect, test } from "vitest";
import { svgOf } from "../../../../kernel-lib/library/src/views/figure/svg-of";
import { noteText } from "../../../../kernel-lib/library/src/views/note/note-text";

const kitchen = loadKitchen();
const plan = batchDay({
  kitchen: { ...kitchen, units: "us" },
  batches: [{ variantId: "beet-lentil", pans: 2 }],
  tries: 20,
});

interface Bars {
  readonly x: readonly number[];
  readonly y: readonly string[];
  readonly base: readonly number[];
}

describe("a batch day's views", () => {
  test("the figure has a bar for every step, at its time, in a row for each pan", () => {
    const bars = dayFigure(plan).data as readonly Bars[];
    const drawn = bars.flatMap(({ x, base }) => x.map((length, at) => [base[at] * 60, (base[at] + length) * 60]));
    const sorted = (list: readonly (readonly number[])[]) =>
      list.map(([from, until]) => `${Math.round(from)} ${Math.round(until)}`).sort();
    expect(sorted(drawn)).toEqual(sorted(plan.steps.map(({ startMin, endMin }) => [startMin, endMin])));
    expect(new Set(bars.flatMap(({ y }) => y)).size).toBe(3);
    expect(svgOf(dayFigure(plan))).toMatch(/^<svg/);
    expect(dayFigure(plan).summary).toMatch(/^\d+ steps from 8:00 am to \d/);
  });

  test("the table holds every step with the range of its wait", () => {
    const { rows, notes } = dayTable(plan);
    expect(rows).toHaveLength(plan.steps.length);
    for (const [at, { readyMin }] of plan.steps.entries()) expect(rows[at][3] === null).toBe(readyMin === null);
    expect(notes.join(" ")).toMatch(/3-501\.14/);
  });

  test("the page holds bars and list, and nothing from elsewhere", () => {
    const page = dayPage(plan);
    expect(page).toMatch(/<svg[\s\S]*<\/svg>[\s\S]*You may leave[\s\S]*Local food codes/);
    expect(page.replaceAll("http://www.w3.org/2000/svg", "")).not.toMatch(/https?:|<script|<img|src=/);
  });

  test("the list says when, what and when you may leave, in the kitchen's clock, with its cautions", () => {
    const text = noteText(dayNote(plan)).replace(/\s+/g, " ");
    expect(text).toMatch(/8:00 am mix: beet and lentil bites/);
    expect(text).toMatch(/You may leave - from \d+:\d\d [ap]m to/);
    expect(text).toMatch(/look from \d+:\d\d [ap]m, done by/);
    expect(text).toMatch(/Local food codes and licensed practice come first/);
    const broken = dayNote({ ...plan, breaches: ["the slab is past its time"] });
    expect(broken.good).toBe(false);
    expect(noteText(broken)).toMatch(/does not fit/);
  });
});
