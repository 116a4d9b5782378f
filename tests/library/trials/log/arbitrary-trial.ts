import fc from "fast-check";
import type { Trial } from "../../../../kernel-lib/library/src/trials/trial";

/** A number as instruments show it, or one with all the digits that there are. */
const number = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value)),
    fc.integer({ min: Math.ceil(min * 10), max: Math.floor(max * 10) }).map((tenths) => tenths / 10 + 0),
  );
const maybe = <T>(of: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(of, { nil: null, freq: 2 });
const id = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,12}$/);
const letters = "aé \"',;:#=/+-09½\t";
/** A text that is none of the marks for what is not known, without blanks at its ends. */
const name = fc
  .string({ unit: fc.constantFrom(...letters.replace("\t", "")), maxLength: 12 })
  .map((text) => `w${text}w`);
const note = fc.string({ unit: fc.constantFrom(...letters, "\n", "漢"), maxLength: 30 }).map((text) => `${text}.`);
const initials = fc.stringMatching(/^[A-Z]{1,3}$/);
const score = fc.oneof(
  fc.integer({ min: 0, max: 18 }).map((half) => half / 2),
  number(0, 9),
);

const panel = fc.uniqueArray(initials, { maxLength: 5 }).chain((tasters) => {
  const scores = fc.array(score, { minLength: tasters.length, maxLength: tasters.length > 0 ? tasters.length : 5 });
  return scores.map((list) => ({ scores: list, tasters }));
});

const cores = fc.oneof(
  fc.constant({ coreC: null, coresC: [] }),
  number(-30, 115).map((coreC) => ({ coreC, coresC: [] })),
  fc
    .array(number(-30, 115), { minLength: 2, maxLength: 4 })
    .map((coresC) => ({ coreC: Math.min(...coresC.slice(0, 4)), coresC })),
);

/** Any trial that a log may hold. */
export const arbitraryTrial: fc.Arbitrary<Trial> = fc
  .record({
    trialId: id,
    date: fc
      .date({ min: new Date("1990-01-01"), max: new Date("2090-01-01"), noInvalidDate: true })
      .map((day) => day.toISOString().slice(0, 10)),
    variantId: id,
    panId: id,
    applianceId: id,
    batchG: number(1, 20_000),
    probesMm: fc.array(number(0.1, 60), { maxLength: 5 }),
    setpointC: number(100, 290),
    loadFraction: maybe(number(0.1, 1.2)),
    startC: number(-40, 40),
    timeMin: number(100, 180),
    flipMin: maybe(number(0, 90)),
    notCrispMin: maybe(number(0, 49)),
    crispMin: maybe(number(50, 90)),
    restMin: maybe(number(0, 60)),
    before: maybe(number(50, 10_000)),
    share: maybe(fc.double({ min: 0.3, max: 1, noNaN: true })),
    pieces: maybe(fc.integer({ min: 1, max: 10_000 })),
    crisp: panel,
    brown: panel,
    slab: maybe(name),
    session: maybe(name),
    cook: maybe(name),
    sides: maybe(fc.tuple(number(5, 700), number(5, 700))),
    looksMin: fc.array(number(0, 180), { maxLength: 3 }),
    card: maybe(name),
    note: maybe(note),
    cores,
    rested: maybe(number(-30, 115)),
    preheated: maybe(fc.boolean()),
    place: maybe(name),
    frost: maybe(name),
    more: fc.array(fc.record({ setpointC: number(20, 290), timeMin: number(0.1, 180) }), { maxLength: 3 }),
    oilG: maybe(number(0.1, 100)),
    barePieceG: maybe(number(0.1, 100)),
    coatedPieceG: maybe(number(0.1, 100)),
    ageDays: maybe(number(0, 3000)),
    photos: fc.array(fc.stringMatching(/^[a-z][a-z0-9 _-]{0,8}\.jpg$/), { maxLength: 2 }),
    extra: fc.dictionary(fc.constantFrom("weather", "Door opened", "x y z"), name, { maxKeys: 3 }),
  })
  .map(({ before, share, crisp, brown, sides, cores: core, rested, more, ...plain }) => ({
    ...plain,
    ...core,
    restedCoreC: core.coreC === null ? null : rested,
    massBeforeG: before,
    massAfterG: before === null || share === null ? null : share * before,
    crispScores: crisp.scores,
    crispTasters: crisp.tasters,
    brownScores: brown.scores,
    brownTasters: brown.tasters,
    pieceLengthMm: sides?.[0] ?? null,
    pieceWidthMm: sides?.[1] ?? null,
    programme: more.length === 0 ? [] : [{ setpointC: plain.setpointC, timeMin: 3 }, ...more],
  }));
