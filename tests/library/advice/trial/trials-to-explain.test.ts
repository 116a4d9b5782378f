import { describe, expect, it } from "vitest";
import { explainTrial } from "../../../../kernel-lib/library/src/advice/trial/explain-trial";
import { measuredFailures } from "../../../../kernel-lib/library/src/advice/trial/measured-failures";
import { trialTraceFit } from "../../../../kernel-lib/library/src/advice/trial/trial-trace-fit";
import { trialsToExplain } from "../../../../kernel-lib/library/src/advice/trial/trials-to-explain";
import { isTooLittle } from "../../../../kernel-lib/library/src/check/too-little";
import { readProbeTrace } from "../../../../kernel-lib/library/src/heat/probe/probe-trace";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Kitchen, KitchenTrial } from "../../../../kernel-lib/library/src/trials/kitchen";

const kitchen = loadKitchen("data");
const good = kitchen.trials.find(({ trialId }) => trialId === "BL-08") as KitchenTrial;
const measured = (changed: Partial<KitchenTrial>): unknown =>
  measuredFailures({ kitchen, trial: { ...good, ...changed } });

describe("measuredFailures", () => {
  it("tells each clock by its own measurement", () => {
    expect(measured({})).toEqual({ core: false, crust: false, browning: false, drying: false });
    expect(measured({ coreC: 73.9 })).toMatchObject({ core: true });
    expect(measured({ crispMin: null })).toMatchObject({ crust: true });
    expect(measured({ brownScores: [7, 7] })).toMatchObject({ browning: true });
    expect(measured({ massBeforeG: 100, massAfterG: 75 })).toMatchObject({ drying: true });
    expect(measured({ massBeforeG: 100, massAfterG: 75.1 })).toMatchObject({ drying: false });
  });

  it("says null where nobody measured, and goes by scores where nobody looked", () => {
    const blind = { coreC: null, notCrispMin: null, crispMin: null, massAfterG: null, brownScores: [] };
    expect(measured({ ...blind, crispScores: [] })).toEqual({ core: null, crust: null, browning: null, drying: null });
    expect(measured({ ...blind, crispScores: [2, 3] })).toMatchObject({ crust: true });
    expect(measured({ ...blind, crispScores: [8, 9] })).toMatchObject({ crust: false });
  });
});

describe("trialsToExplain", () => {
  const { failed, early, doubtful } = trialsToExplain({ kitchen });
  const ids = (trials: readonly KitchenTrial[]): string[] => trials.map(({ trialId }) => trialId);

  it("parts those that failed from those that were only early, and says each once", () => {
    expect(failed.length).toBeGreaterThan(0);
    expect(ids(failed).filter((id) => ids(early).includes(id))).toEqual([]);
    for (const { coreC, crispMin } of early) expect([coreC !== null && coreC < 74, crispMin]).toEqual([true, null]);
  });

  it("takes trials that explainTrial calls failed, the latest first", () => {
    for (const { trialId } of [...failed.slice(0, 2), early[0]])
      expect(explainTrial({ kitchen, trialId }).failed).toBe(true);
    const dates = failed.map(({ date }) => date);
    expect(dates).toEqual(dates.toSorted().toReversed());
  });

  it("names slabs whose probes and mass disagree, as the notices do", () => {
    expect(ids(doubtful)).toEqual(kitchen.notices.flatMap((notice) => /^trial (\S+):/.exec(notice)?.[1] ?? []));
  });

  it("keeps to one variant when asked", () => {
    const { variantId } = failed[0];
    const own = trialsToExplain({ kitchen, variantId });
    expect(own.failed).toEqual(failed.filter((trial) => trial.variantId === variantId));
  });
});

describe("trialTraceFit", () => {
  const [{ trialId }] = kitchen.traces;

  it("finds how fast the appliance heats: the slab of the log, the trace's own air or else the setpoint, the core by its name or else the first", () => {
    const { trial, trace, fit } = trialTraceFit({ kitchen, trialId });
    expect([trial.trialId, fit.run.thicknessMm, fit.converged]).toEqual([trialId, trial.thicknessMm, true]);
    expect(fit.residualSdK).toBeLessThan(1.5);
    const rows = trace.timeMin.map((min, at) => `${min},${trace.channels[0].temperatureC[at]}`);
    const bare = readProbeTrace(`time_min,probe_c\n${rows.join("\n")}\n`, { file: "traces/one.csv" });
    const other = trialTraceFit({ kitchen: { ...kitchen, traces: [{ trialId, trace: bare }] }, trialId });
    expect(other.fit.coefficientWm2K / fit.coefficientWm2K).toBeCloseTo(1, 1);
  }, 120_000);

  it("says what a trace must hold where it holds too little, and refuses a trial without one", () => {
    const trace = readProbeTrace("time_s,core_c\n0,-18\n15,-17\n30,-16\n", { file: "traces/one.csv" });
    const short: Kitchen = { ...kitchen, traces: [{ trialId, trace }] };
    try {
      trialTraceFit({ kitchen: short, trialId });
      expect.fail("it must be too little");
    } catch (error) {
      expect(isTooLittle(error)).toBe(true);
    }
    expect(() => trialTraceFit({ kitchen, trialId: good.trialId })).toThrow("must be one with a trace");
  });
});
