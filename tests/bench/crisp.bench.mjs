/** Speed of the crisp window. */
import { loadKitchen } from "slabwright";
import { windowCalibration } from "slabwright/advice";
import { windowMapOverSetpoint, windowMapOverTime } from "slabwright/crisp";

const RUNS = 5;
const NO_PEER = { peer: null, peerValue: null, ratio: null };

/** Median time of a few runs after one to warm up (ms). */
function medianMs(work) {
  work();
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[Math.floor(RUNS / 2)];
}

export async function rows() {
  const kitchen = loadKitchen();
  const own = kitchen.trials.filter((trial) => trial.variantId === "beet-lentil");
  const again = own.map((trial) => ({ ...trial, trialId: `${trial.trialId}-again`, timeMin: trial.timeMin + 0.5 }));
  const sixty = { ...kitchen, trials: [...own, ...again].slice(0, 60) };
  const calibrate = medianMs(() => windowCalibration({ kitchen: sixty, variantId: "beet-lentil" }));

  const calibration = windowCalibration({ kitchen, variantId: "beet-lentil" });
  const axis = (from, to) => Array.from({ length: 60 }, (_, at) => from + (at * (to - from)) / 59);
  const common = { calibration, applianceId: "small-basket", thicknessesMm: axis(4, 20), draws: 200 };
  const overSetpoint = medianMs(() => windowMapOverSetpoint({ ...common, setpointsC: axis(150, 220) }));
  const overTime = medianMs(() => windowMapOverTime({ ...common, setpointC: 200, timesMin: axis(2, 30) }));

  return [
    {
      name: "crisp.calibrate60.ms",
      value: calibrate,
      unit: "ms",
      ...NO_PEER,
      note: `${sixty.trials.length} trials, ${calibration.constants.length} constants, median of ${RUNS}; no peer`,
    },
    {
      name: "crisp.map60x60x200.ms",
      value: overSetpoint,
      unit: "ms",
      ...NO_PEER,
      note: `thickness × setpoint, one thread, median of ${RUNS}; thickness × time takes ${overTime.toFixed(0)} ms; no peer`,
    },
  ];
}
