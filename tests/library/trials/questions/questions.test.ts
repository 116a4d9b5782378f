import { loadKitchen } from "slabwright";
import { groupTrials, panelOf, readingRows, trialsWhere } from "slabwright/trials";
import { describe, expect, it } from "vitest";

const { trials } = loadKitchen();

describe("trialsWhere", () => {
  it("takes the trials that match everything that is asked, in the log's order", () => {
    const found = trialsWhere(trials, {
      applianceId: "fan-oven",
      thicknessMm: [9, 12],
      days: ["2026-02-01", "2026-03-10"],
    });
    const expected = trials.filter(
      ({ applianceId, thicknessMm, date }) =>
        applianceId === "fan-oven" &&
        thicknessMm >= 9 &&
        thicknessMm <= 12 &&
        date >= "2026-02-01" &&
        date <= "2026-03-10",
    );
    expect(found.length).toBeGreaterThan(3);
    expect(found).toEqual(expected);
    expect(trialsWhere(trials, {})).toEqual(trials);
    expect(trialsWhere(trials, { session: trials[0].date }).every(({ date }) => date === trials[0].date)).toBe(true);
  });

  it("refuses a range that runs from high to low", () => {
    expect(() => trialsWhere(trials, { thicknessMm: [12, 9] })).toThrow(
      "trialsWhere: thicknessMm must run from low to high, got [12,9]",
    );
  });
});

describe("groupTrials", () => {
  it("works out by hand: n, mean, standard deviation, and the interval of the mean", () => {
    const of = (values: readonly (number | null)[]) =>
      values.map((coreC, at) => ({ ...trials[0], trialId: `T${at}`, coreC }));
    // R: t.test(c(70, 74, 79)): 95 percent confidence interval 63.13110 85.53557
    const [group] = groupTrials(of([70, null, 74, 79]), { by: ["variant", "session"], of: "coreC" });
    expect(group).toMatchObject({
      key: [trials[0].variantId, trials[0].date],
      n: 3,
      trialIds: ["T0", "T2", "T3"],
      silent: ["T1"],
    });
    expect(group.mean).toBeCloseTo(74.33333, 5);
    expect(group.sd).toBeCloseTo(4.50925, 5);
    expect(group.confidence95?.[0]).toBeCloseTo(63.1317, 3);
    expect(group.confidence95?.[1]).toBeCloseTo(85.535, 3);
    expect(groupTrials(of([70]), { by: ["pan"], of: "coreC" })[0]).toMatchObject({
      n: 1,
      sd: null,
      confidence95: null,
    });
    expect(groupTrials(of([null]), { by: ["pan"], of: "coreC" })).toEqual([]);
  });

  it("puts every trial that tells the number in one group, whatever the grouping", () => {
    const groups = groupTrials(trials, { by: ["variant", "thickness band", "setpoint"], of: "crispScore", bandMm: 3 });
    expect(groups.flatMap(({ trialIds }) => trialIds).sort()).toEqual(
      trials
        .filter(({ crispScores }) => crispScores.length > 0)
        .map(({ trialId }) => trialId)
        .sort(),
    );
    for (const { key, trialIds } of groups) {
      const [from, to] = key[1].replace(" mm", "").split(" to ").map(Number);
      for (const id of trialIds) {
        const mm = trials.find(({ trialId }) => trialId === id)?.thicknessMm as number;
        expect(mm >= from && mm < to).toBe(true);
      }
    }
  });

  it("names what it does not know", () => {
    expect(() => groupTrials(trials, { by: ["colour" as never], of: "coreC" })).toThrow(
      "must be one of variant, pan, appliance",
    );
    expect(() => groupTrials(trials, { by: ["pan"], of: "taste" as never })).toThrow(
      "groupTrials: of must be one of thicknessMm",
    );
  });
});

describe("readingRows", () => {
  it("has a row for every reading and none for what was not measured", () => {
    const [trial] = trials;
    const rows = readingRows([
      { ...trial, coreC: null, coresC: [], looksMin: [5, 6], crispTasters: trial.crispScores.map((_, at) => `T${at}`) },
    ]);
    const count = (what: string): number => rows.filter((row) => row.what === what).length;
    expect(count("core")).toBe(0);
    expect(rows.filter(({ what }) => what === "look").map(({ value, number }) => [number, value])).toEqual([
      [1, 5],
      [2, 6],
    ]);
    expect(count("depth")).toBe(trial.probesMm.length);
    expect(rows.filter(({ what }) => what === "crispness").map(({ taster }) => taster)).toEqual(
      trial.crispScores.map((_, at) => `T${at}`),
    );
    expect(rows.every(({ value }) => Number.isFinite(value))).toBe(true);
  });
});

describe("panelOf", () => {
  const scored = (crispScores: readonly number[], crispTasters: readonly string[], at: number) => ({
    ...trials[at],
    trialId: `T${at}`,
    crispScores,
    crispTasters,
  });

  it("takes a strict taster's habit off, whoever tasted what", () => {
    const { levels, tasters, named, complete, order } = panelOf([
      scored([6, 8], ["AB", "CD"], 0),
      scored([4, 6], ["AB", "CD"], 1),
      scored([3], ["AB"], 2),
      scored([5], ["CD"], 3),
      scored([9, 1], [], 4),
    ]);
    expect({ named, tasters, complete, order }).toEqual({
      named: true,
      tasters: ["AB", "CD"],
      complete: 2,
      order: null,
    });
    expect([...levels.judges].map(([who, { value }]) => [who, +value.toFixed(9)])).toEqual([
      ["AB", -1],
      ["CD", 1],
    ]);
    expect([...levels.things].map(([id, { value }]) => [id, +value.toFixed(9)])).toEqual([
      ["T0", 7],
      ["T1", 5],
      ["T2", 4],
      ["T3", 4],
    ]);
  });

  it("says what is missing where nobody scored together", () => {
    expect(() => panelOf([scored([6], ["AB"], 0), scored([7], ["CD"], 1)])).toThrow(
      "Tasters' habits show once tasters of crispness have scored trials together; these never did.",
    );
    expect(() => panelOf([scored([6], ["AB"], 0)])).toThrow("shows once two of them have scored the same trials");
    expect(() => panelOf([scored([6], ["AB"], 0)])).toThrow(expect.objectContaining({ name: "TooLittle" }));
  });

  it("tells agreement where all scored three trials or more; none about numbers without scatter", () => {
    const alike = panelOf([
      scored([6, 8], ["A", "B"], 0),
      scored([4, 6], ["A", "B"], 1),
      scored([3, 5], ["A", "B"], 2),
    ]);
    expect(alike.order?.w).toBeCloseTo(1, 12);
    expect(alike.numbers).toBeNull();
  });
});
