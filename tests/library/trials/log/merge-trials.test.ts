import { readFileSync } from "node:fs";
import fc from "fast-check";
import { mergeTrials, readTrials, type Trial } from "slabwright/trials";
import { describe, expect, it } from "vitest";

const some: readonly Trial[] = readTrials(
  readFileSync("data/trials/beet-lentil.csv", "utf8"),
  "beet-lentil.csv",
).records.slice(0, 6);
const later = (date: string, days: number): string =>
  new Date(Date.parse(date) + days * 86_400_000).toISOString().slice(0, 10);

describe("mergeTrials", () => {
  it("takes what only one holds, and once what both hold alike", () => {
    const found = mergeTrials({ ours: some.slice(0, 4), theirs: some.slice(2) });
    expect(found.trials).toEqual(some);
    expect(found).toMatchObject({
      conflicts: [],
      onlyOurs: ["BL-01", "BL-02"],
      alike: ["BL-03", "BL-04"],
      onlyTheirs: ["BL-05", "BL-06"],
    });
  });

  it("lists what differs under one id, keeps ours unless told, and keeps both under a free id", () => {
    const theirs = [{ ...some[0], timeMin: 10, coreC: 88 }];
    const plain = mergeTrials({ ours: some, theirs });
    expect(plain.trials).toEqual(some);
    expect(plain.conflicts).toMatchObject([
      { kind: "differs", fields: ["timeMin", "coreC"], chosen: "ours", theirs: theirs[0] },
    ]);
    expect(plain.conflicts[0].sentence).toBe(
      `BL-01: ours and theirs have timeMin ${some[0].timeMin} and 10; coreC ${some[0].coreC} and 88. Kept: ours.`,
    );
    expect(mergeTrials({ ours: some, theirs, choose: { "BL-01": "theirs" } }).trials[0]).toEqual(theirs[0]);
    const both = mergeTrials({
      ours: [...some, { ...some[1], trialId: "BL-01-2" }],
      theirs,
      choose: { "BL-01": "both" },
    });
    expect(both.trials.at(-1)).toEqual({ ...theirs[0], trialId: "BL-01-3" });
  });

  it("fills in what the other did not know, and says so", () => {
    const ours = [{ ...some[0], coreC: null, looksMin: [] }];
    const theirs = [{ ...some[0], looksMin: [6, 7], note: "warm", cook: null }];
    const { trials, conflicts } = mergeTrials({ ours, theirs });
    expect(trials).toEqual([{ ...some[0], looksMin: [6, 7], note: "warm" }]);
    expect(conflicts).toMatchObject([{ kind: "fills in", chosen: "both" }]);
  });

  it("sees a trial that was typed twice under two ids, a day apart at most; never two that measured little", () => {
    const twice = { ...some[0], trialId: "X-1", date: later(some[0].date, 1), note: "late" };
    expect(mergeTrials({ ours: some, theirs: [twice] })).toMatchObject({
      trials: some,
      conflicts: [{ kind: "typed twice" }],
      onlyTheirs: [],
    });
    expect(mergeTrials({ ours: some, theirs: [twice], choose: { "X-1": "both" } }).trials).toEqual([...some, twice]);
    expect(mergeTrials({ ours: some, theirs: [{ ...twice, date: later(some[0].date, 2) }] }).onlyTheirs).toEqual([
      "X-1",
    ]);
    const bare = (trialId: string): Trial => ({
      ...some[0],
      trialId,
      probesMm: [],
      notCrispMin: null,
      crispMin: null,
      coreC: null,
      massBeforeG: null,
      massAfterG: null,
      pieces: null,
      crispScores: [],
      brownScores: [],
      loadFraction: null,
    });
    expect(mergeTrials({ ours: [bare("A")], theirs: [bare("B")] }).conflicts).toEqual([]);
  });

  it("refuses an id twice in a log and a choice without a conflict", () => {
    expect(() => mergeTrials({ ours: [some[0], some[0]], theirs: [] })).toThrow(
      'mergeTrials: ours must hold each id once, got "BL-01"',
    );
    expect(() => mergeTrials({ ours: some, theirs: some, choose: { "BL-09": "ours" } })).toThrow(
      'must name trials of theirs that conflict, got "BL-09"',
    );
  });

  it("loses nothing: every trial of either log is in the merged one or in a conflict", () => {
    const pick = fc.record({
      at: fc.nat(5),
      id: fc.nat(7),
      change: fc.constantFrom({}, { timeMin: 11 }, { coreC: null }, { note: "x" }, { massAfterG: 70 }),
    });
    const log = fc
      .uniqueArray(pick, { selector: ({ id }) => id, maxLength: 6 })
      .map((picks): Trial[] => picks.map(({ at, id, change }) => ({ ...some[at], ...change, trialId: `T-${id}` })));
    fc.assert(
      fc.property(log, log, fc.constantFrom("ours", "theirs", "both", null), (ours, theirs, choice) => {
        const first = mergeTrials({ ours, theirs });
        const undecided = first.conflicts.filter(({ kind }) => kind !== "fills in");
        const choose = choice === null ? {} : Object.fromEntries(undecided.map((one) => [one.theirs.trialId, choice]));
        const { trials, conflicts } = mergeTrials({ ours, theirs, choose });
        const kept = [...trials, ...conflicts.flatMap((one) => [one.ours, one.theirs])].map((trial) =>
          JSON.stringify(trial),
        );
        for (const trial of [...ours, ...theirs]) expect(kept).toContain(JSON.stringify(trial));
        expect(new Set(trials.map(({ trialId }) => trialId)).size).toBe(trials.length);
        if (choice === "both")
          expect(trials.length).toBeGreaterThanOrEqual(
            new Set([...ours, ...theirs].map(({ trialId }) => trialId)).size,
          );
      }),
    );
  });
});
