import fc from "fast-check";
import type { ScheduleProblem, ScheduleTask } from "slabwright/plan";

/** Small kitchens: a few products, each spread, frozen, cut and packed, with one or two pans, shelves and hands. */
export const smallKitchens: fc.Arbitrary<ScheduleProblem> = fc
  .record({
    products: fc.array(
      fc.record({
        spread: fc.integer({ min: 1, max: 2 }),
        freeze: fc.integer({ min: 1, max: 4 }),
        cut: fc.integer({ min: 1, max: 2 }),
        most: fc.option(fc.integer({ min: 0, max: 2 }), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    pans: fc.integer({ min: 1, max: 2 }),
    shelves: fc.integer({ min: 1, max: 2 }),
    hands: fc.integer({ min: 1, max: 2 }),
    away: fc.option(fc.record({ from: fc.integer({ min: 1, max: 6 }), lasts: fc.integer({ min: 1, max: 3 }) }), {
      nil: undefined,
    }),
  })
  .map(
    ({ products, pans, shelves, hands, away }): ScheduleProblem => ({
      tasks: products.flatMap(({ spread, freeze, cut }, at): ScheduleTask[] => [
        { id: `spread ${at}`, duration: spread, uses: { hands: 1 } },
        // hands put it in, and take it out
        {
          id: `freeze ${at}`,
          duration: freeze + 1,
          uses: { shelf: 1 },
          parts:
            at === 0
              ? []
              : [
                  { resource: "hands", from: 0, until: 1 },
                  { resource: "hands", from: freeze, until: freeze + 1 },
                ],
        },
        { id: `cut ${at}`, duration: cut, uses: { hands: 1, pan: 1 } },
      ]),
      resources: [
        { id: "pan", capacity: pans },
        { id: "shelf", capacity: shelves },
        {
          id: "hands",
          capacity: hands,
          less: away === undefined ? [] : [{ from: away.from, until: away.from + away.lasts, capacity: 0 }],
        },
      ],
      links: products.flatMap(({ most }, at) => [
        { before: `spread ${at}`, after: `freeze ${at}` },
        { before: `freeze ${at}`, after: `cut ${at}`, ...(most === undefined ? {} : { most }) },
      ]),
      holds: products.map((_, at) => ({ resource: "pan", from: `spread ${at}`, until: `cut ${at}` })),
    }),
  );
